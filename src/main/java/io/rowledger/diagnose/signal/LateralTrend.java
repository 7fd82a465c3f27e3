package io.rowledger.diagnose.signal;

import io.rowledger.stats.RobustStatistics;

/**
 * What rises from one end of the bar to the other at a time: rows' ratios that swing on the left as they swing back on the
 * right tell of steering, or of a coarse track's idea of it, and of no row. The slope is the median of the slopes between
 * rows and their mirror rows, so that one row that swings by itself does not make one.
 */
public final class LateralTrend {
    /** With fewer pairs one row would be a third of the answer. */
    private static final int MIN_PAIRS = 3;

    private final FlowRatios s;
    private final float[] slopePerM;

    public LateralTrend(FlowRatios s) {
        this.s = s;
        int rows = s.rows();
        slopePerM = new float[s.work.n];
        double[] slope = new double[rows / 2];
        for (int j = 0; j < slopePerM.length; j++) {
            int pairs = 0;
            for (int r = 0; r < rows / 2; r++) {
                int mirror = rows - 1 - r;
                double rise = s.ratio[mirror][j] - s.ratio[r][j];
                if (!Double.isNaN(rise)) {
                    slope[pairs++] = rise / (s.work.atM[mirror] - s.work.atM[r]);
                }
            }
            slopePerM[j] = pairs < MIN_PAIRS ? 0 : (float) RobustStatistics.median(slope, pairs);
        }
    }

    /** Row r's ratios less what rises across the bar; NaN where the row is not evaluated. */
    public float[] detrended(int r) {
        float[] left = s.ratio[r].clone();
        for (int j = 0; j < left.length; j++) {
            left[j] -= (float) (slopePerM[j] * s.work.atM[r]);
        }
        return left;
    }
}
