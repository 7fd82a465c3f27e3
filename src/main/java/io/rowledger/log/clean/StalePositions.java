package io.rowledger.log.clean;

import io.rowledger.log.read.DropCount;
import io.rowledger.log.read.DropReason;
import io.rowledger.log.read.RawLog;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Finds positions that stood still while the machine moved: a receiver that lost its satellites and repeats its last fix,
 * or one slower than the logger. The first record of such a run is the fix, the others only repeat it and are left out.
 *
 * <p>That a position repeats says nothing by itself: a machine may stand. It moved where the position after the run lies
 * farther off than the next fixes' speed makes of one interval, as if the machine had leapt to catch up; or where the log's
 * own speed says so and the way to the next position does not deny it.
 */
final class StalePositions {
    /** A hold up to this long leaves the path whole: a receiver that gives a fix a second, or one that hiccups. */
    static final double SHORT_HOLD_S = 2;
    /** Clocks are written to the ms. */
    private static final double CLOCK_S = 0.001;
    /** A way shorter than this may be a step of a standing receiver, m. */
    private static final double MIN_M = 0.5;
    /** So many steps of the last figure written may be rounding. */
    private static final double ROUNDINGS = 3;
    /** The leap after a run against the speed that follows it; two records on one position make 2. */
    private static final double LEAP = 1.6;
    /** Slower than this a machine may be said to stand (1.1 mph): what fix noise can pretend. */
    private static final double MOVING_MPS = 0.5;
    /** A logged speed is believed where the next position shows at least this share of its way. */
    private static final double BORNE_OUT = 0.5;
    /** Share of the records from which the receiver is said to be slower than the logger. */
    private static final double MANY = 0.2;

    /** Records that show how many digits are written. */
    private static final int SAMPLE = 200;
    /** Eight decimals of a degree are a millimeter: rounding beyond them matters to nobody. */
    private static final double FINEST_DEG = 1e-8;
    /** A figure this near a whole number of steps is one: doubles of 180 degrees hold fifteen digits. */
    private static final double ROUNDED = 1e-4;

    private static final double METRES_PER_DEGREE = 111_195;

    private final RawLog log;
    private final double[] speedMps;
    private final byte[] down;
    private final double leastM;

    private StalePositions(RawLog log, double[] speedMps, byte[] down) {
        this.log = log;
        this.down = down;
        this.speedMps = speedMps;
        this.leastM = Math.max(MIN_M, ROUNDINGS * resolutionM(log));
    }

    /**
     * Flags the records to keep and carries the gaps of the others on.
     *
     * @param log records whose times rise strictly
     * @param speedMps logged speed, or an empty array
     * @param down work states, or an empty array
     */
    static boolean[] live(RawLog log, double[] speedMps, byte[] down, DropCount drops, List<String> notes) {
        boolean[] kept = new boolean[log.records];
        Arrays.fill(kept, true);
        int[] count = {0, 0, 0};
        double shortS = new StalePositions(log, speedMps, down).find(kept, drops, count);
        if (count[0] > 0) {
            notes.add(note(log.records, count, shortS, drops));
        }
        return kept;
    }

    private static String note(int records, int[] count, double shortS, DropCount drops) {
        if (count[2] > MANY * records) {
            return String.format(
                    Locale.ROOT,
                    "The receiver gives a new position every %.1f s only, and %,d records repeat the one before: the path runs "
                            + "through the new ones, and the flows count at those.",
                    shortS / Math.max(1, count[1]),
                    count[0]);
        }
        return String.format(
                Locale.ROOT,
                "%,d %s while the machine moved, the first at line %d: %s left out, and %s.",
                count[0],
                count[0] == 1 ? "record repeats the position before it" : "records repeat the position before them",
                drops.firstLine(DropReason.FROZEN),
                count[0] == 1 ? "it was" : "they were",
                count[2] == count[0]
                        ? "the path runs on through the new ones"
                        : "the path is broken where that lasted long");
    }

    /** Counts records left out, short runs, and records left out in those; returns how long the short runs last in all. */
    private double find(boolean[] kept, DropCount drops, int[] count) {
        double shortS = 0;
        int first = 0;
        while (first < log.records) {
            int next = endOfRun(first);
            if (next - first > 1 && moved(first, next)) {
                boolean isShort = next < log.records && log.timeS[next] - log.timeS[first] <= SHORT_HOLD_S + CLOCK_S;
                boolean gap = !isShort;
                for (int i = first + 1; i < next; i++) {
                    kept[i] = false;
                    gap |= log.gapBefore[i];
                    drops.add(DropReason.FROZEN, log.line[i]);
                }
                if (next < log.records) {
                    log.downBefore[next] = Cleaner.downThrough(log, down, first + 1, next);
                    log.gapBefore[next] |= gap;
                }
                count[0] += next - first - 1;
                if (isShort) {
                    count[1]++;
                    count[2] += next - first - 1;
                    shortS += log.timeS[next] - log.timeS[first];
                }
            }
            first = next;
        }
        return shortS;
    }

    /** The first record after {@code first} at another position. */
    private int endOfRun(int first) {
        int next = first + 1;
        while (next < log.records && log.latDeg[next] == log.latDeg[first] && log.lonDeg[next] == log.lonDeg[first]) {
            next++;
        }
        return next;
    }

    private boolean moved(int first, int next) {
        if (next == log.records) {
            double wayM = loggedM(first, next - 1);
            return wayM > leastM && wayM > MOVING_MPS * (log.timeS[next - 1] - log.timeS[first]);
        }
        double wayM = distanceM(first, next);
        double lastsS = log.timeS[next] - log.timeS[first];
        if (wayM <= leastM || wayM > PositionOutliers.MAX_SPEED_MPS * lastsS + leastM) {
            return false;
        }
        double loggedM = loggedM(first, next - 1);
        if (loggedM > MOVING_MPS * lastsS && wayM > BORNE_OUT * loggedM) {
            return true;
        }
        int after = endOfRun(next);
        double leapMps = wayM / (log.timeS[next] - log.timeS[next - 1]);
        return after < log.records && leapMps > LEAP * distanceM(next, after) / (log.timeS[after] - log.timeS[next]);
    }

    /** The way the logged speed makes from one record to another, m; 0 where it is not known. */
    private double loggedM(int from, int to) {
        double wayM = 0;
        for (int i = from + 1; i <= to && speedMps.length > 0; i++) {
            wayM += Double.isNaN(speedMps[i]) ? 0 : speedMps[i] * (log.timeS[i] - log.timeS[i - 1]);
        }
        return wayM;
    }

    private double distanceM(int i, int j) {
        return PositionOutliers.distanceM(log.latDeg[i], log.lonDeg[i], log.latDeg[j], log.lonDeg[j]);
    }

    /** What the last digit written is worth, m: of degrees with decimals, or of degrees and minutes with decimals. */
    private static double resolutionM(RawLog log) {
        for (double stepDeg = 1.0 / 60; stepDeg > FINEST_DEG; stepDeg /= 10) {
            // Of the two, hundredths of a degree come before thousandths of a minute, and so on down.
            double decimalDeg = stepDeg * 0.6;
            if (areMultiples(log, stepDeg)) {
                return stepDeg * METRES_PER_DEGREE;
            }
            if (areMultiples(log, decimalDeg)) {
                return decimalDeg * METRES_PER_DEGREE;
            }
        }
        return 0;
    }

    private static boolean areMultiples(RawLog log, double stepDeg) {
        int records = Math.min(log.records, SAMPLE);
        for (int i = 0; i < records; i++) {
            double lat = log.latDeg[i] / stepDeg;
            double lon = log.lonDeg[i] / stepDeg;
            if (Math.abs(lat - Math.rint(lat)) > ROUNDED || Math.abs(lon - Math.rint(lon)) > ROUNDED) {
                return false;
            }
        }
        return true;
    }
}
