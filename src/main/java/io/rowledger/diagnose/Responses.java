package io.rowledger.diagnose;

/**
 * How fast a flow follows speed and target: for every pass and time constant the squared error about the demand that a
 * controller with this time constant would follow, the amplitude left free.
 */
final class Responses {
    private static final int TAUS = Demand.TAU_S.length;

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

    /** Of a flux, L/s a metre of band at the bar's centre; NaN where it can't be judged. */
    Responses(Work work, Demand demand, float[] flux) {
        passes = work.passes();
        squares = new double[passes];
        counts = new int[passes];
        cross = new double[passes][TAUS];
        own = new double[passes][TAUS];
        crossBack = new double[passes][TAUS];
        ownBack = new double[passes][TAUS];
        for (int q = 0; q < passes; q++) {
            for (int j = work.passFrom[q]; j < work.passFrom[q + 1]; j++) {
                if (!Float.isNaN(flux[j])) {
                    add(q, flux[j], demand, j);
                }
            }
        }
    }

    private void add(int q, double f, Demand demand, int j) {
        squares[q] += f * f;
        counts[q]++;
        double[] fg = cross[q];
        double[] gg = own[q];
        double[] fb = crossBack[q];
        double[] bb = ownBack[q];
        for (int t = 0; t < TAUS; t++) {
            float g = demand.askedPerM[t][j];
            fg[t] += f * g;
            gg[t] += g * g;
            float back = demand.foreseenPerM[t][j];
            fb[t] += f * back;
            bb[t] += back * back;
        }
    }

    int passes() {
        return passes;
    }

    int count(int q) {
        return counts[q];
    }

    /** Squared error in pass q with time constant t. */
    double error(int q, int t) {
        return left(squares[q], cross[q][t], own[q][t]);
    }

    /** The same where the flow would foresee the demand instead of following it. */
    double errorForeseen(int q, int t) {
        return left(squares[q], crossBack[q][t], ownBack[q][t]);
    }

    private static double left(double squares, double cross, double own) {
        return own > 0 ? Math.max(0, squares - cross * cross / own) : 0;
    }

    /** Index of the time constant that fits best over all passes. */
    int best() {
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int t = 0; t < TAUS; t++) {
            double error = 0;
            for (int q = 0; q < passes; q++) {
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
