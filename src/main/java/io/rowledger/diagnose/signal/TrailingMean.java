package io.rowledger.diagnose.signal;

import java.util.ArrayDeque;

/** Means of several series over the last seconds, as a console averages its readings. Of no length it passes values on. */
final class TrailingMean {
    private final double lengthS;
    private final double[] sum;
    private final ArrayDeque<double[]> values = new ArrayDeque<>();
    private double heldS;

    /**
     * An empty mean.
     *
     * @param series number of series
     * @param lengthS time averaged over, s
     */
    TrailingMean(int series, double lengthS) {
        this.lengthS = lengthS;
        sum = new double[series + 1];
    }

    /** Adds a value of each series that held for so long, s. */
    void add(double[] y, double durationS) {
        if (lengthS <= 0) {
            return;
        }
        double[] kept = new double[y.length + 1];
        for (int t = 0; t < y.length; t++) {
            kept[t] = y[t] * durationS;
            sum[t] += kept[t];
        }
        kept[y.length] = durationS;
        heldS += durationS;
        values.addLast(kept);
        while (values.size() > 1 && heldS - values.getFirst()[y.length] >= lengthS) {
            double[] old = values.removeFirst();
            for (int t = 0; t < y.length; t++) {
                sum[t] -= old[t];
            }
            heldS -= old[y.length];
        }
    }

    /** Mean of series t; its last value if nothing is averaged. */
    double of(int t, double[] last) {
        return lengthS <= 0 || heldS <= 0 ? last[t] : sum[t] / heldS;
    }

    /** Forgets all values. */
    void clear() {
        values.clear();
        java.util.Arrays.fill(sum, 0);
        heldS = 0;
    }
}
