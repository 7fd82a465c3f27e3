package io.rowledger.diagnose.signal;

import io.rowledger.parallel.ParallelTasks;
import io.rowledger.stats.RobustStatistics;
import java.util.Arrays;

/**
 * Flow of the bar over what target and speed call for, by working entry: 1 on target. The median of the rows, so that single
 * faulty rows don't move it. Without a target the bar's own
 * usual flow at its speed stands for the target. NaN while the bar is slow, while valves move at the ends of a pass, and over
 * covered ground; NaN throughout where readings are rounded so coarsely that the usual flow may read zero.
 */
public final class BarShare {
    /** Slower than this, flow follows the controller's minimum and not the speed, m/s. */
    private static final double MIN_SPEED_MPS = 0.8;

    /** Valves and controller settle in this time at the start of a pass, s. */
    private static final double SETTLING_S = 4;

    private static final double ENDING_S = 1;

    /** Share of the largest shares from which the bar delivers (1). */
    private static final double DELIVERS = 0.3;

    /** Share below which a bar gives nothing (1). */
    private static final double NOTHING = 0.1;

    /** Quantile of the delivering bins' shares that is usual (1): a supply that fails for most of a job leaves it where it was. */
    private static final double USUAL = 0.93;

    private final float[] share;
    private final double usual;

    BarShare(Evidence e) {
        share = new float[e.work.n];
        if (e.limits.usualShowsZero()) {
            e.demand();
            ParallelTasks.inBlocks(e.work.n, e.ratios.threads, (from, end) -> fill(e, from, end));
        } else {
            Arrays.fill(share, Float.NaN);
        }
        usual = usual(e.bins.medians(share));
    }

    private void fill(Evidence e, int from, int end) {
        WorkingSamples work = e.work;
        float[] perM = e.demand().demandPerM[Demand.PROMPT];
        double settlingS = SETTLING_S + e.limits.smearS();
        double[] ofRow = new double[e.rows()];
        for (int j = from; j < end; j++) {
            int q = work.pass[j] - 1;
            boolean settled = work.timeS[j] - work.timeS[work.passFrom[q]] >= settlingS
                    && work.timeS[work.passFrom[q + 1] - 1] - work.timeS[j] >= ENDING_S
                    && work.speedMps[j] > MIN_SPEED_MPS
                    && perM[j] > 0;
            int meant = 0;
            for (int r = 0; r < e.rows() && settled; r++) {
                if (!e.ratios.evaluated.rightlyOff(r, j)) {
                    ofRow[meant++] = e.ratios.flowLPerS[r][j] / (perM[j] * work.bandM[r]);
                }
            }
            share[j] = 2 * meant > e.rows() ? (float) RobustStatistics.median(ofRow, meant) : Float.NaN;
            // Without a work state a bar that gives nothing, but for a row that never stops, is taken as lifted.
            share[j] = !e.log.hasDown() && share[j] < NOTHING ? Float.NaN : share[j];
        }
    }

    private static double usual(float[] shares) {
        double[] known = new double[shares.length];
        int n = 0;
        for (float x : shares) {
            if (!Float.isNaN(x)) {
                known[n++] = x;
            }
        }
        if (n == 0) {
            return Double.NaN;
        }
        Arrays.sort(known, 0, n);
        double delivers = DELIVERS * known[(int) (0.98 * (n - 1))];
        int first = 0;
        while (first < n - 1 && known[first] < delivers) {
            first++;
        }
        return known[first + (int) (USUAL * (n - 1 - first))];
    }

    /** Share of the target in entry j (1); NaN if not known. */
    public double share(int j) {
        return share[j];
    }

    /** The bar's usual share while nothing fails (1). */
    public double usualShare() {
        return usual;
    }

    /** Share over the usual share, as the medians of bins; NaN for bins with few known entries. */
    public float[] ofUsual(Bins bins) {
        float[] relative = new float[share.length];
        for (int j = 0; j < relative.length; j++) {
            relative[j] = (float) (share[j] / usual);
        }
        return bins.medians(relative);
    }

    /** Median of known values in [from, end); NaN for none. */
    public static double median(float[] values, int from, int end) {
        double[] some = new double[Math.max(0, end - from)];
        int n = 0;
        for (int b = Math.max(0, from); b < Math.min(values.length, end); b++) {
            if (!Float.isNaN(values[b])) {
                some[n++] = values[b];
            }
        }
        return RobustStatistics.median(some, n);
    }
}
