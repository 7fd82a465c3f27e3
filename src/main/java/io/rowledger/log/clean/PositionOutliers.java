package io.rowledger.log.clean;

import io.rowledger.log.read.DropCount;
import io.rowledger.log.read.DropReason;
import io.rowledger.log.read.RawLog;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Finds positions the machine could not have reached.
 *
 * <p>Records that follow each other at a possible speed form a chain. A stray fix is a short chain between two that fit
 * each other; so the largest set of chains that fit, one after the other, is what the machine drove, and the rest are
 * jumps. One bad fix, even the first, can't cost the records after it. Two long chains that don't fit each other are
 * both kept, with a break between them: a receiver that re-acquired with an offset, or a log taken up elsewhere.
 */
public final class PositionOutliers {
    /** No tractor with a bar on, and no truck that carries it between fields, outruns 35 mph (15.6 m/s) with the log on. */
    public static final double MAX_SPEED_MPS = 16;
    /** After this the machine may have been trailered to another field: any place is possible. */
    static final double ANY_PLACE_AFTER_S = 60;
    /** Mean radius of the Earth (IUGG R₁), m: close enough to judge a jump. */
    private static final double EARTH_M = 6_371_008.8;
    /** A chain this long in records and time is no stray fix. */
    private static final int LONG_CHAIN_RECORDS = 30;

    private static final double LONG_CHAIN_S = 10;
    /** How many chains back a fitting one is looked for; a log with more strays than this in a row has no path. */
    private static final int LOOK_BACK_CHAINS = 200;

    private PositionOutliers() {}

    /** Flags the records to keep; sets gapBefore where two long chains are kept that don't fit. */
    static boolean[] reachable(RawLog log, byte[] fix, DropCount drops, List<String> notes) {
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
                notes.add(String.format(
                        Locale.ROOT,
                        "The position shifts by %.0f m at line %d and stays there: both sides are used, with a break "
                                + "between them.",
                        distanceM(log, starts[before + 1] - 1, starts[c]),
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

    /** First record of each chain, and the number of records at the end. */
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

    /** For each chain the one before it on its best path, −1 for none; at the end the last chain of the best path. */
    private static int[] bestPath(RawLog log, byte[] fix, int[] starts) {
        int chains = starts.length - 1;
        int[] previous = new int[chains + 1];
        int[] best = new int[chains];
        int last = 0;
        for (int c = 0; c < chains; c++) {
            previous[c] = -1;
            int most = 0;
            for (int b = c - 1; b >= 0 && b >= c - LOOK_BACK_CHAINS; b--) {
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
        return last - first + 1 >= LONG_CHAIN_RECORDS && log.timeS[last] - log.timeS[first] >= LONG_CHAIN_S;
    }

    private static boolean possible(RawLog log, byte[] fix, int from, int to) {
        double dtS = log.timeS[to] - log.timeS[from];
        if (dtS > ANY_PLACE_AFTER_S) {
            return true;
        }
        double noiseM = fix.length == 0 ? noiseM(-1) : Math.max(noiseM(fix[from]), noiseM(fix[to]));
        return distanceM(log, from, to) <= MAX_SPEED_MPS * dtS + noiseM;
    }

    /** How far two fixes of a standing receiver may lie apart, with room for positions rounded to 1 m. */
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

    /** Distance on a sphere between near points, m. */
    public static double distanceM(double lat1Deg, double lon1Deg, double lat2Deg, double lon2Deg) {
        double middleRad = Math.toRadians((lat1Deg + lat2Deg) / 2);
        double eastRad = Math.toRadians(Math.IEEEremainder(lon2Deg - lon1Deg, 360)) * Math.cos(middleRad);
        double northRad = Math.toRadians(lat2Deg - lat1Deg);
        return EARTH_M * Math.hypot(eastRad, northRad);
    }
}
