package io.rowledger.log.clean;

import io.rowledger.log.read.DropCount;
import io.rowledger.log.read.DropReason;
import io.rowledger.log.read.RawLog;
import io.rowledger.text.Message;
import java.util.Arrays;
import java.util.List;

/**
 * Finds stale positions: repeated although the machine moved, because the receiver lost its satellites or is slower than
 * the logger. The first record of such a run is kept, the repetitions are removed.
 *
 * <p>A repeated position alone is no evidence: the machine may stand. It moved if the step after the run is longer than
 * the speed of the next fixes allows for one interval, or if the logged speed shows motion and the next position confirms
 * it.
 */
final class StalePositions {
    /** Longest hold without a break in the path, s: a receiver at 1 Hz, or a hiccup. */
    static final double MAX_SHORT_HOLD_S = 2;
    /** Resolution of the clock, s. */
    private static final double CLOCK_S = 0.001;
    /** Shortest step of a moving machine, m. */
    private static final double MIN_M = 0.5;
    /** Steps of the last digit that may be rounding. */
    private static final double ROUNDINGS = 3;
    /** Ratio of the step after a run to the speed that follows; two records on one position give 2. */
    private static final double LEAP = 1.6;
    /** Slowest moving speed, m/s (1.1 mph); fix noise stays below. */
    private static final double MOVING_MPS = 0.5;
    /** Share of the logged distance that the next position must confirm. */
    private static final double MIN_CONFIRMED_SHARE = 0.5;
    /** Share of repetitions from which the note says that the receiver is slower than the logger. */
    private static final double MANY = 0.2;

    /** Records examined for the resolution of positions. */
    private static final int SAMPLE = 200;
    /** Finest resolution examined, degrees: about 1 mm. */
    private static final double MIN_STEP_DEG = 1e-8;
    /** Tolerance for a whole number of steps. */
    private static final double ROUNDED = 1e-4;

    private static final double METERS_PER_DEGREE = 111_195;

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
     * Returns flags of the records to keep; moves the gap flags of the others to the next record.
     *
     * @param log records whose times rise strictly
     * @param speedMps logged speed, or an empty array
     * @param down work states, or an empty array
     */
    static boolean[] fresh(RawLog log, double[] speedMps, byte[] down, DropCount drops, List<Message> notes) {
        boolean[] kept = new boolean[log.records];
        Arrays.fill(kept, true);
        int[] count = {0, 0, 0};
        double shortS = new StalePositions(log, speedMps, down).find(kept, drops, count);
        if (count[0] > 0) {
            notes.add(note(log.records, count, shortS, drops));
        }
        return kept;
    }

    private static Message note(int records, int[] count, double shortS, DropCount drops) {
        if (count[2] > MANY * records) {
            return Message.of("notes.log.slowReceiver", Message.decimal(shortS / Math.max(1, count[1]), 1), count[0]);
        }
        return Message.of(
                count[2] == count[0] ? "notes.log.stale.bridged" : "notes.log.stale.broken",
                count[0],
                drops.firstLine(DropReason.FROZEN));
    }

    /** Counts records removed, short runs, and records removed in short runs; returns the total duration of short runs, s. */
    private double find(boolean[] kept, DropCount drops, int[] count) {
        double shortS = 0;
        int first = 0;
        while (first < log.records) {
            int next = endOfRun(first);
            if (next - first > 1 && moved(first, next)) {
                boolean isShort =
                        next < log.records && log.timeS[next] - log.timeS[first] <= MAX_SHORT_HOLD_S + CLOCK_S;
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

    /** Returns the first record after {@code first} at another position. */
    private int endOfRun(int first) {
        int next = first + 1;
        while (next < log.records && log.latDeg[next] == log.latDeg[first] && log.lonDeg[next] == log.lonDeg[first]) {
            next++;
        }
        return next;
    }

    private boolean moved(int first, int next) {
        if (next == log.records) {
            double distanceM = loggedM(first, next - 1);
            return distanceM > leastM && distanceM > MOVING_MPS * (log.timeS[next - 1] - log.timeS[first]);
        }
        double distanceM = distanceM(first, next);
        double lastsS = log.timeS[next] - log.timeS[first];
        if (distanceM <= leastM || distanceM > PositionOutliers.MAX_SPEED_MPS * lastsS + leastM) {
            return false;
        }
        double loggedM = loggedM(first, next - 1);
        if (loggedM > MOVING_MPS * lastsS && distanceM > MIN_CONFIRMED_SHARE * loggedM) {
            return true;
        }
        int after = endOfRun(next);
        double leapMps = distanceM / (log.timeS[next] - log.timeS[next - 1]);
        return after < log.records && leapMps > LEAP * distanceM(next, after) / (log.timeS[after] - log.timeS[next]);
    }

    /** Returns the distance by the logged speed between two records, m; unknown speeds count as 0. */
    private double loggedM(int from, int to) {
        double distanceM = 0;
        for (int i = from + 1; i <= to && speedMps.length > 0; i++) {
            distanceM += Double.isNaN(speedMps[i]) ? 0 : speedMps[i] * (log.timeS[i] - log.timeS[i - 1]);
        }
        return distanceM;
    }

    private double distanceM(int i, int j) {
        return PositionOutliers.distanceM(log.latDeg[i], log.lonDeg[i], log.latDeg[j], log.lonDeg[j]);
    }

    /** Returns the size of the last digit of the positions, m: decimal degrees, or degrees and decimal minutes. */
    private static double resolutionM(RawLog log) {
        for (double stepDeg = 1.0 / 60; stepDeg > MIN_STEP_DEG; stepDeg /= 10) {
            // In each round the step in minutes is larger than the decimal step, so it is tried first.
            double decimalDeg = stepDeg * 0.6;
            if (areMultiples(log, stepDeg)) {
                return stepDeg * METERS_PER_DEGREE;
            }
            if (areMultiples(log, decimalDeg)) {
                return decimalDeg * METERS_PER_DEGREE;
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
