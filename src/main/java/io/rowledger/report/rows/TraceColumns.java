package io.rowledger.report.rows;

import java.util.Arrays;

/**
 * A line over time thinned for paper: the lowest and the highest sample of each slice in the order in which they come, so that
 * no dip is lost; NaN between two samples where the line breaks.
 *
 * @param timeS time of each point, epoch seconds
 * @param value value of each point
 */
record TraceColumns(double[] timeS, double[] value) {
    /** Slices of time across a chart. */
    private static final int SLICES = 300;
    /** A line breaks where samples are missing for longer than this many mean intervals. */
    private static final double MAX_GAP_INTERVALS = 5;

    /** Thins a column; samples that are NaN are left out. */
    static TraceColumns of(double[] timeS, double[] value) {
        int n = timeS.length;
        double maxGapS = n < 2 ? 0 : MAX_GAP_INTERVALS * (timeS[n - 1] - timeS[0]) / (n - 1);
        int slice = Math.max(1, n / SLICES);
        double[] t = new double[3 * n + 3];
        double[] y = new double[t.length];
        int m = 0;
        double lastS = Double.NaN;
        for (int i = 0; i < n; i += slice) {
            int low = -1;
            int high = -1;
            for (int j = i; j < Math.min(n, i + slice); j++) {
                if (Double.isFinite(value[j])) {
                    low = low < 0 || value[j] < value[low] ? j : low;
                    high = high < 0 || value[j] > value[high] ? j : high;
                }
            }
            if (low < 0) {
                lastS = Double.NaN;
                continue;
            }
            int first = Math.min(low, high);
            if (m > 0 && !(timeS[first] - lastS <= maxGapS * slice)) {
                t[m] = timeS[first];
                y[m++] = Double.NaN;
            }
            t[m] = timeS[first];
            y[m++] = value[first];
            if (low != high) {
                t[m] = timeS[Math.max(low, high)];
                y[m++] = value[Math.max(low, high)];
            }
            lastS = t[m - 1];
        }
        return new TraceColumns(Arrays.copyOf(t, m), Arrays.copyOf(y, m));
    }
}
