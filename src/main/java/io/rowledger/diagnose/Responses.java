package io.rowledger.diagnose;

import io.rowledger.finding.FindingKind;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;

/**
 * How fast each row follows speed and target: for every pass, row and time constant the squared error of the row's flux
 * about the demand that a controller with this time constant would follow, the amplitude left free.
 */
final class Responses {
    /** Changes of level that are no response. */
    private static final Set<FindingKind> OF_LEVEL =
            EnumSet.of(FindingKind.PLUGGED, FindingKind.RESTRICTED, FindingKind.LEAKING);

    private static final double LEAST_RATIO = 0.5;
    private static final double MOST_RATIO = 1.8;

    private final Evidence e;
    /** [row][pass], sums over the entries. */
    private final double[][] squares;

    private final int[][] counts;
    /** [row][pass][τ]. */
    private final double[][][] cross;

    private final double[][][] own;
    /** The same for the demand run backwards in time. */
    private final double[][][] crossBack;

    private final double[][][] ownBack;

    Responses(Evidence e) {
        this.e = e;
        int rows = e.rows();
        int passes = e.work.passes();
        squares = new double[rows][passes];
        counts = new int[rows][passes];
        cross = new double[rows][passes][Demand.TAU_S.length];
        own = new double[rows][passes][Demand.TAU_S.length];
        crossBack = new double[rows][passes][Demand.TAU_S.length];
        ownBack = new double[rows][passes][Demand.TAU_S.length];
        boolean[] limited = new boolean[e.work.n];
        for (Case found : e.cases()) {
            if (found.kind() == FindingKind.SUPPLY_LIMITED) {
                Arrays.fill(limited, e.work.at(found.fromS()), e.work.at(found.toS()), true);
            }
        }
        for (int r = 0; r < rows; r++) {
            boolean[] left = limited.clone();
            for (Case found : e.cases()) {
                if (!found.rows().isEmpty() && found.concerns(r) && OF_LEVEL.contains(found.kind())) {
                    Arrays.fill(left, e.work.at(found.fromS()), e.work.at(found.toS()), true);
                }
            }
            for (int q = 0; q < passes; q++) {
                sum(r, q, left);
            }
        }
    }

    private void sum(int r, int q, boolean[] leftOut) {
        float[][] asked = e.demand().askedPerM;
        float[][] foreseen = e.demand().foreseenPerM;
        float[] ratio = e.signals.ratio[r];
        double ff = 0;
        int n = 0;
        double[] fg = cross[r][q];
        double[] gg = own[r][q];
        double[] fb = crossBack[r][q];
        double[] bb = ownBack[r][q];
        for (int j = e.work.passFrom[q]; j < e.work.passFrom[q + 1]; j++) {
            float x = ratio[j];
            if (!(x > LEAST_RATIO && x < MOST_RATIO) || leftOut[j]) {
                continue;
            }
            double f = x * e.signals.siblingFlux[j];
            ff += f * f;
            n++;
            for (int t = 0; t < fg.length; t++) {
                float g = asked[t][j];
                fg[t] += f * g;
                gg[t] += g * g;
                float back = foreseen[t][j];
                fb[t] += f * back;
                bb[t] += back * back;
            }
        }
        squares[r][q] = ff;
        counts[r][q] = n;
    }

    int count(int r, int q) {
        return counts[r][q];
    }

    /** Squared error of row r in pass q with time constant t. */
    double error(int r, int q, int t) {
        return own[r][q][t] > 0 ? Math.max(0, squares[r][q] - cross[r][q][t] * cross[r][q][t] / own[r][q][t]) : 0;
    }

    /** The same where the row would foresee the demand instead of following it. */
    double errorForeseen(int r, int q, int t) {
        return ownBack[r][q][t] > 0
                ? Math.max(0, squares[r][q] - crossBack[r][q][t] * crossBack[r][q][t] / ownBack[r][q][t])
                : 0;
    }

    /** Index of the time constant that fits row r best over the passes from (inclusive) to end (exclusive). */
    int best(int r, int from, int end) {
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int t = 0; t < Demand.TAU_S.length; t++) {
            double error = 0;
            for (int q = from; q < end; q++) {
                error += error(r, q, t);
            }
            if (error < least) {
                least = error;
                best = t;
            }
        }
        return best;
    }
}
