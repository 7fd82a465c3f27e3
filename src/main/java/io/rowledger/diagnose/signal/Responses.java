package io.rowledger.diagnose.signal;

import org.jspecify.annotations.Nullable;

/**
 * How fast a flow follows speed and target: for every pass and time constant the squared error about the demand that a
 * controller with this time constant would follow, the amplitude left free.
 */
public final class Responses {
    private static final int TAUS = Demand.taus();

    /** Time constants of seconds need no finer samples, s. */
    private static final double FINEST_S = 0.5;

    private final int passes;
    /** [pass], sums over the entries. */
    private final double[] squares;

    private final int[] counts;
    /** [pass][τ], following. */
    private final double[][] cross;

    private final double[][] own;
    /** [pass][τ], the demand run backwards in time. */
    private final double[][] crossBack;

    private final double[][] ownBack;

    /**
     * Of a series.
     *
     * @param series flux, L/s a meter of band at the bar's center, or its ratio to {@code over}; NaN where not evaluated
     * @param over what demand is divided by, or null: a row's ratio to its other rows goes with demand over what they follow
     */
    public Responses(WorkingSamples work, Demand demand, float[] series, float @Nullable [] over) {
        passes = work.passes();
        squares = new double[passes];
        counts = new int[passes];
        cross = new double[passes][TAUS];
        own = new double[passes][TAUS];
        crossBack = new double[passes][TAUS];
        ownBack = new double[passes][TAUS];
        int stride = (int) Math.max(1, Math.floor(FINEST_S / work.intervalS + 1e-6));
        for (int q = 0; q < passes; q++) {
            for (int j = work.passFrom[q]; j + stride <= work.passFrom[q + 1]; j += stride) {
                float sum = 0;
                for (int i = j; i < j + stride; i++) {
                    sum += series[i];
                }
                int middle = j + stride / 2;
                double unit = over == null ? 1 : over[middle];
                if (!Float.isNaN(sum) && unit > 0) {
                    add(q, sum / stride, demand, middle, 1 / unit);
                }
            }
        }
    }

    private void add(int q, double f, Demand demand, int j, double perUnit) {
        squares[q] += f * f;
        counts[q]++;
        double[] fg = cross[q];
        double[] gg = own[q];
        double[] fb = crossBack[q];
        double[] bb = ownBack[q];
        for (int t = 0; t < TAUS; t++) {
            double g = demand.demandPerM[t][j] * perUnit;
            fg[t] += f * g;
            gg[t] += g * g;
            double back = demand.reversedDemandPerM[t][j] * perUnit;
            fb[t] += f * back;
            bb[t] += back * back;
        }
    }

    public int passes() {
        return passes;
    }

    public int count(int q) {
        return counts[q];
    }

    /** Squared error in pass q with time constant t. */
    public double error(int q, int t) {
        return left(squares[q], cross[q][t], own[q][t]);
    }

    /** The same where the flow would foresee the demand instead of following it. */
    public double errorReversed(int q, int t) {
        return left(squares[q], crossBack[q][t], ownBack[q][t]);
    }

    private static double left(double squares, double cross, double own) {
        return own > 0 ? Math.max(0, squares - cross * cross / own) : 0;
    }

    /** Index of the time constant that fits best over all passes. */
    public int best() {
        return best(0, passes);
    }

    /** Index of the time constant that fits best in pass q. */
    public int best(int q) {
        return best(q, q + 1);
    }

    private int best(int from, int end) {
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int t = 0; t < TAUS; t++) {
            double error = 0;
            for (int q = from; q < end; q++) {
                error += error(q, t);
            }
            if (error < least) {
                least = error;
                best = t;
            }
        }
        return best;
    }
}
