package io.rowledger.track;

import io.rowledger.log.LogTable;
import io.rowledger.rig.Rig;
import java.util.Arrays;

/** Lowered or lifted, per record: from the log, or from the flows where the log doesn't say. */
final class WorkStateEstimator {
    /** An outlet with more than this share of its usual flow is taken as lowered: the limit for delivering too. */
    private static final double FLOWING = 0.05;

    private WorkStateEstimator() {}

    /** Lowered per record of the log. A record that doesn't say keeps what the record before said. */
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
                double limit = FLOWING * usual(flow);
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

    /** The flow that nine of ten flowing records stay under. */
    private static double usual(double[] flow) {
        double[] positive = Arrays.stream(flow).filter(f -> f > 0).sorted().toArray();
        return positive.length == 0 ? 0 : positive[(int) (0.9 * (positive.length - 1))];
    }
}
