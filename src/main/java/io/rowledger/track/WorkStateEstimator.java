package io.rowledger.track;

import io.rowledger.log.LogTable;
import io.rowledger.rig.Rig;
import java.util.Arrays;
import java.util.BitSet;

/** Lowered or lifted per record: the log's work state, or derived from the flows if the log has none. */
final class WorkStateEstimator {
    /** Flow of an outlet, relative to its 90th percentile, above which the bar is taken as lowered; as for delivering. */
    private static final double MIN_RELATIVE_FLOW = 0.05;

    /** On a narrower bar one outlet alone is no exception. */
    private static final int MIN_OUTLETS = 4;

    /** Shortest time in which an outlet flows alone for it to count, s: a turn takes longer. */
    private static final double MIN_ALONE_S = 8;

    /** In one place a driver may shut all but one. */
    private static final int MIN_ALONE = 2;

    private WorkStateEstimator() {}

    /** Returns lowered per record; a record without a work state keeps the state of the record before. */
    static boolean[] of(LogTable log, Rig rig) {
        return log.hasDown() ? logged(log) : fromFlow(log, rig);
    }

    private static boolean[] logged(LogTable log) {
        boolean[] lowered = new boolean[log.records()];
        for (int i = 0; i < lowered.length; i++) {
            int down = log.down(i);
            lowered[i] = down < 0 ? i > 0 && lowered[i - 1] : down == 1;
        }
        return lowered;
    }

    /** Lowered where an outlet flows, but for one that flows alone through turns as its meter or valve sticks. */
    private static boolean[] fromFlow(LogTable log, Rig rig) {
        int n = log.records();
        BitSet[] flows = new BitSet[log.outlets()];
        int[] together = new int[n];
        for (int r = 0; r < flows.length; r++) {
            flows[r] = new BitSet(n);
            for (int p = 0; p < log.products().size(); p++) {
                double[] flow = log.flowColumn(p, r);
                double limit = MIN_RELATIVE_FLOW * highFlow(flow);
                if (limit > 0) {
                    mark(log, flow, limit, rig.products().get(p).flowLagS(), flows[r]);
                }
            }
            for (int i = flows[r].nextSetBit(0); i >= 0; i = flows[r].nextSetBit(i + 1)) {
                together[i]++;
            }
        }
        boolean[] lowered = new boolean[n];
        for (int i = 0; i < n; i++) {
            lowered[i] = together[i] > 0;
        }
        for (int r = 0; r < flows.length && flows.length >= MIN_OUTLETS; r++) {
            liftWhereAlone(log, flows[r], together, lowered);
        }
        return lowered;
    }

    /**
     * Takes the bar as lifted where an outlet flows alone, in each stretch without a stop in which it does so {@value #MIN_ALONE} times or
     * more for {@value #MIN_ALONE_S} s or longer between times in which others flow as well: at point rows the last outlet stops, too.
     */
    private static void liftWhereAlone(LogTable log, BitSet flows, int[] together, boolean[] lowered) {
        int from = flows.nextSetBit(0);
        while (from >= 0) {
            int end = flows.nextClearBit(from);
            BitSet alone = new BitSet();
            int times = 0;
            boolean others = false;
            int i = from;
            while (i < end) {
                int to = i;
                while (to < end && (together[to] == 1) == (together[i] == 1)) {
                    to++;
                }
                if (together[i] == 1 && others && to < end && log.timeS(to) - log.timeS(i) >= MIN_ALONE_S) {
                    alone.set(i, to);
                    times++;
                }
                others |= together[i] > 1;
                i = to;
            }
            for (int k = times >= MIN_ALONE ? alone.nextSetBit(0) : -1; k >= 0; k = alone.nextSetBit(k + 1)) {
                lowered[k] = false;
            }
            from = flows.nextSetBit(end);
        }
    }

    private static void mark(LogTable log, double[] flow, double limit, double lagS, BitSet flows) {
        int n = log.records();
        int j = 0;
        for (int i = 0; i < n; i++) {
            double shown = log.timeS(i) + lagS;
            while (j + 1 < n && Math.abs(log.timeS(j + 1) - shown) <= Math.abs(log.timeS(j) - shown)) {
                j++;
            }
            if (flow[j] > limit) {
                flows.set(i);
            }
        }
    }

    /** Returns the 90th percentile of the positive flows, L/s; 0 without any. */
    private static double highFlow(double[] flow) {
        double[] positive = Arrays.stream(flow).filter(f -> f > 0).sorted().toArray();
        return positive.length == 0 ? 0 : positive[(int) (0.9 * (positive.length - 1))];
    }
}
