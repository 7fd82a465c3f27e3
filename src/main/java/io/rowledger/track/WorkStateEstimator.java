package io.rowledger.track;

import io.rowledger.log.LogTable;
import io.rowledger.rig.Rig;
import java.util.Arrays;

/** Lowered or lifted per record: the log's work state, or derived from the flows if the log has none. */
final class WorkStateEstimator {
    /** Flow of an outlet, relative to its 90th percentile, above which the bar is taken as lowered; as for delivering. */
    private static final double MIN_RELATIVE_FLOW = 0.05;

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

    private static boolean[] fromFlow(LogTable log, Rig rig) {
        int n = log.records();
        boolean[] lowered = new boolean[n];
        for (int p = 0; p < log.products().size(); p++) {
            double lagS = rig.products().get(p).flowLagS();
            for (int r = 0; r < log.outlets(); r++) {
                double[] flow = log.flowColumn(p, r);
                double limit = MIN_RELATIVE_FLOW * highFlow(flow);
                if (limit > 0) {
                    mark(log, flow, limit, lagS, lowered);
                }
            }
        }
        return lowered;
    }

    private static void mark(LogTable log, double[] flow, double limit, double lagS, boolean[] lowered) {
        int n = lowered.length;
        int j = 0;
        for (int i = 0; i < n; i++) {
            double shown = log.timeS(i) + lagS;
            while (j + 1 < n && Math.abs(log.timeS(j + 1) - shown) <= Math.abs(log.timeS(j) - shown)) {
                j++;
            }
            lowered[i] |= flow[j] > limit;
        }
    }

    /** Returns the 90th percentile of the positive flows, L/s; 0 without any. */
    private static double highFlow(double[] flow) {
        double[] positive = Arrays.stream(flow).filter(f -> f > 0).sorted().toArray();
        return positive.length == 0 ? 0 : positive[(int) (0.9 * (positive.length - 1))];
    }
}
