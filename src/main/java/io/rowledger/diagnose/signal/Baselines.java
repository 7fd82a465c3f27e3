package io.rowledger.diagnose.signal;

import io.rowledger.finding.FindingKind;
import io.rowledger.stats.RobustStatistics;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/** What the rows are like where no case concerns them. */
public final class Baselines {
    private Baselines() {}

    /** One a row, from the left; call it after the detectors. */
    public static List<RowBaseline> of(Evidence e, List<Case> cases) {
        int rows = e.rows();
        double[] median = new double[rows];
        double[] spread = new double[rows];
        double[] evaluatedS = new double[rows];
        boolean rounded = e.limits.resolution() >= FlowRatios.FINE;
        for (int r = 0; r < rows; r++) {
            double[] healthy = healthy(e, cases, r);
            median[r] =
                    healthy.length == 0 ? Double.NaN : rounded ? ofSums(e, cases, r) : RobustStatistics.median(healthy);
            spread[r] = healthy.length == 0 ? Double.NaN : RobustStatistics.sigma(healthy);
            evaluatedS[r] = healthy.length * Bins.BIN_S;
        }
        double[] known = Arrays.stream(median).filter(x -> !Double.isNaN(x)).toArray();
        List<RowBaseline> baselines = new ArrayList<>();
        for (int r = 0; r < rows; r++) {
            boolean outlier = Math.abs(median[r] - 1) > LevelShifts.MAX_METER_DIFFERENCE
                    && Math.abs(RobustStatistics.modifiedZ(median[r], known)) > RobustStatistics.OUTLIER_Z;
            baselines.add(new RowBaseline(
                    e.ratios.product, r + 1, median[r], spread[r], responseS(e, cases, r), evaluatedS[r], outlier));
        }
        return baselines;
    }

    /** Flow over what the other rows imply, as sums: a median of rounded readings stays on one step. */
    private static double ofSums(Evidence e, List<Case> cases, int r) {
        BitSet concerned = new BitSet(e.work.n);
        for (Case found : cases) {
            if (!found.rows().isEmpty() && found.concerns(r)) {
                int from = e.work.entryAt(found.fromS());
                concerned.set(from, Math.max(from, e.work.entryAt(Math.nextUp(found.toS()))));
            }
        }
        double own = 0;
        double implied = 0;
        for (int j = concerned.nextClearBit(0); j < e.work.n; j = concerned.nextClearBit(j + 1)) {
            if (!Float.isNaN(e.ratios.ratio[r][j])) {
                own += e.ratios.flowLPerS[r][j] * e.work.durationS[j];
                implied += e.ratios.impliedLPerS(r, j) * e.work.durationS[j];
            }
        }
        return implied > 0 ? own / implied : Double.NaN;
    }

    private static double[] healthy(Evidence e, List<Case> cases, int r) {
        float[] medians = e.medians(r).clone();
        for (Case found : cases) {
            if (!found.rows().isEmpty() && found.concerns(r)) {
                for (int b = 0; b < medians.length; b++) {
                    boolean within = e.bins.endS(b) > found.fromS() && e.bins.startS(b) < found.toS();
                    medians[b] = within ? Float.NaN : medians[b];
                }
            }
        }
        double[] healthy = new double[medians.length];
        int n = 0;
        for (float bin : medians) {
            if (!Float.isNaN(bin)) {
                healthy[n++] = bin;
            }
        }
        return Arrays.copyOf(healthy, n);
    }

    /** A slow row's own time constant, the bar's where the row goes with its other rows. */
    private static double responseS(Evidence e, List<Case> cases, int r) {
        for (Case found : cases) {
            if (found.kind() == FindingKind.SLOW_RESPONSE && found.concerns(r)) {
                return found.figures().get(0).value();
            }
        }
        Responses bar = e.barResponses();
        int evaluated = 0;
        for (int q = 0; q < bar.passes(); q++) {
            evaluated += bar.count(q);
        }
        return evaluated == 0 ? Double.NaN : Demand.tauS(bar.best());
    }
}
