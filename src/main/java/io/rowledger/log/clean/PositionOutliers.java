package io.rowledger.log.clean;

import io.rowledger.log.read.DropCount;
import io.rowledger.log.read.DropReason;
import io.rowledger.log.read.RawLog;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import java.util.Arrays;
import java.util.List;

/**
 * Finds positions that the machine could not have reached.
 *
 * <p>Consecutive records at a possible speed form a chain. A stray fix is a short chain between two that fit each other.
 * The largest sequence of chains that fit is kept; the rest are jumps. One bad fix, even the first, does not cost the
 * records after it. Two long chains that don't fit are both kept with a break between them: the receiver re-acquired with
 * an offset, or the log continues elsewhere.
 */
public final class PositionOutliers {
    /** Highest speed of a machine with the log on, m/s: 35 mph (15.6 m/s) on the road. */
    public static final double MAX_SPEED_MPS = 16;
    /** Longest step that is checked, s; after it the machine may have been trailered. */
    static final double MAX_CHECKED_STEP_S = 60;
    /** Mean radius of the Earth (IUGG R₁), m. */
    private static final double EARTH_M = 6_371_008.8;
    /** Fewest records of a long chain, which is not a stray fix. */
    private static final int MIN_LONG_CHAIN_RECORDS = 30;

    private static final double MIN_LONG_CHAIN_S = 10;
    /** Chains searched backward for one that fits. */
    private static final int MAX_LOOK_BACK_CHAINS = 200;

    private PositionOutliers() {}

    /** Returns flags of the records to keep; sets gapBefore between two long chains that don't fit. */
    static boolean[] reachable(RawLog log, byte[] fix, DropCount drops, List<Message> notes) {
        boolean[] kept = new boolean[log.records];
        Arrays.fill(kept, true);
        int[] starts = chainStarts(log, fix);
        if (starts.length <= 2) {
            return kept;
        }
        int[] previous = bestPath(log, fix, starts);
        int chains = starts.length - 1;
        boolean[] chosen = new boolean[chains];
        for (int c = previous[chains]; c >= 0; c = previous[c]) {
            chosen[c] = true;
            int before = previous[c];
            if (before >= 0 && !fits(log, fix, starts, before, c)) {
                log.gapBefore[starts[c]] = true;
                log.downBefore[starts[c]] = false;
                notes.add(Message.of(
                        "notes.log.shift",
                        Message.value(QuantityKind.LENGTH, distanceM(log, starts[before + 1] - 1, starts[c])),
                        log.line[starts[c]]));
            }
        }
        for (int c = 0; c < chains; c++) {
            for (int i = starts[c]; i < starts[c + 1] && !chosen[c]; i++) {
                kept[i] = false;
                drops.add(DropReason.JUMP, log.line[i]);
            }
        }
        return kept;
    }

    /** Returns the first record of each chain, then the number of records. */
    private static int[] chainStarts(RawLog log, byte[] fix) {
        int[] starts = new int[16];
        int chains = 0;
        for (int i = 0; i < log.records; i++) {
            if (i == 0 || !possible(log, fix, i - 1, i)) {
                if (chains + 2 > starts.length) {
                    starts = Arrays.copyOf(starts, starts.length * 2);
                }
                starts[chains++] = i;
            }
        }
        starts[chains] = log.records;
        return Arrays.copyOf(starts, chains + 1);
    }

    /** Returns for each chain its predecessor on the best path or −1, then the last chain of the best path. */
    private static int[] bestPath(RawLog log, byte[] fix, int[] starts) {
        int chains = starts.length - 1;
        int[] previous = new int[chains + 1];
        int[] best = new int[chains];
        int last = 0;
        for (int c = 0; c < chains; c++) {
            previous[c] = -1;
            int most = 0;
            for (int b = c - 1; b >= 0 && b >= c - MAX_LOOK_BACK_CHAINS; b--) {
                if (best[b] > most
                        && (fits(log, fix, starts, b, c) || (isLong(log, starts, b) && isLong(log, starts, c)))) {
                    most = best[b];
                    previous[c] = b;
                }
            }
            best[c] = most + starts[c + 1] - starts[c];
            if (best[c] > best[last]) {
                last = c;
            }
        }
        previous[chains] = last;
        return previous;
    }

    private static boolean fits(RawLog log, byte[] fix, int[] starts, int before, int after) {
        return possible(log, fix, starts[before + 1] - 1, starts[after]);
    }

    private static boolean isLong(RawLog log, int[] starts, int chain) {
        int first = starts[chain];
        int last = starts[chain + 1] - 1;
        return last - first + 1 >= MIN_LONG_CHAIN_RECORDS && log.timeS[last] - log.timeS[first] >= MIN_LONG_CHAIN_S;
    }

    private static boolean possible(RawLog log, byte[] fix, int from, int to) {
        double dtS = log.timeS[to] - log.timeS[from];
        if (dtS > MAX_CHECKED_STEP_S) {
            return true;
        }
        double noiseM = fix.length == 0 ? noiseM(-1) : Math.max(noiseM(fix[from]), noiseM(fix[to]));
        return distanceM(log, from, to) <= MAX_SPEED_MPS * dtS + noiseM;
    }

    /** Returns the largest distance between two fixes of a standing receiver, m; allows for rounding to 1 m. */
    public static double noiseM(int fix) {
        return switch (fix) {
            case 4 -> 2;
            case 5 -> 3;
            case 2 -> 5;
            default -> 10;
        };
    }

    private static double distanceM(RawLog log, int i, int j) {
        return distanceM(log.latDeg[i], log.lonDeg[i], log.latDeg[j], log.lonDeg[j]);
    }

    /** Returns the distance between two near points on a sphere, m. */
    public static double distanceM(double lat1Deg, double lon1Deg, double lat2Deg, double lon2Deg) {
        double middleRad = Math.toRadians((lat1Deg + lat2Deg) / 2);
        double eastRad = Math.toRadians(Math.IEEEremainder(lon2Deg - lon1Deg, 360)) * Math.cos(middleRad);
        double northRad = Math.toRadians(lat2Deg - lat1Deg);
        return EARTH_M * Math.hypot(eastRad, northRad);
    }
}
