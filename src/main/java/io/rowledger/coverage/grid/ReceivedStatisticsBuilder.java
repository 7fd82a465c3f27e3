package io.rowledger.coverage.grid;

import io.rowledger.rate.Delivery;
import io.rowledger.rate.DeviationLimits;
import io.rowledger.stats.WeightedMoments;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;

/** Computes the {@link ReceivedStatistics} of a grid. */
public final class ReceivedStatisticsBuilder {
    /**
     * Smallest covered fraction of a cell that counts: along edges, the outline simplified within 5 mm and the driven
     * strip differ by up to a hundredth of a cell.
     */
    public static final double MIN_COVERED_SHARE = 0.01;
    /** Relative rounding error of the grid's float values: rates exactly on a limit may lie this much beside it. */
    public static final double FLOAT_SLACK = 1e-6;

    private static final double CLASS_WIDTH = 0.05;
    private static final int CLASSES = 41;

    private ReceivedStatisticsBuilder() {}

    /** Returns the statistics of product p. */
    public static ReceivedStatistics of(
            ReceivedGrid grid, int p, double coveredAreaM2, Strips strips, Delivery delivery) {
        return of(grid, p, coveredAreaM2, logVolumeL(p, strips, delivery));
    }

    /**
     * Returns the statistics of product p.
     *
     * @param logVolumeL the volume that the log has, without geometry, L
     */
    public static ReceivedStatistics of(ReceivedGrid grid, int p, double coveredAreaM2, double logVolumeL) {
        double gridVolumeL = 0;
        WeightedMoments rates = new WeightedMoments();
        TargetShares shares = new TargetShares();
        double minCoveredM2 = MIN_COVERED_SHARE * grid.cellM() * grid.cellM();
        for (int i = 0; i < grid.coveredM2().length; i++) {
            double v = grid.volumeL()[p][i];
            double c = grid.coveredM2()[i];
            gridVolumeL += v;
            if (c >= minCoveredM2) {
                rates.add(v / c, c);
                shares.add(v / grid.targetL()[p][i], c);
            }
        }
        return new ReceivedStatistics(
                logVolumeL / coveredAreaM2,
                100 * rates.variation(),
                shares.pct(shares.within5M2),
                shares.pct(shares.within10M2),
                shares.pct(shares.within20M2),
                shares.pct(shares.underM2),
                shares.pct(shares.overM2),
                shares.classesM2,
                gridVolumeL,
                logVolumeL);
    }

    /** Returns the volume by flow × time over the working steps, without geometry, L. */
    private static double logVolumeL(int p, Strips strips, Delivery delivery) {
        Poses poses = strips.poses();
        double sum = 0;
        for (int k = 0; k < poses.steps(); k++) {
            if (poses.working(k)) {
                double flow = 0;
                for (int r = 0; r < strips.rows(); r++) {
                    flow += delivery.flowLPerS(p, r, k);
                }
                sum += flow * poses.durationS(k);
            }
        }
        return sum;
    }

    /** Covered area by the ratio of received rate to target. */
    private static final class TargetShares {
        private double evaluatedM2;
        private double within5M2;
        private double within10M2;
        private double within20M2;
        private double underM2;
        private double overM2;
        private final double[] classesM2 = new double[CLASSES];

        void add(double ratio, double groundM2) {
            if (!Double.isFinite(ratio)) {
                return;
            }
            evaluatedM2 += groundM2;
            double off = Math.abs(ratio - 1) - FLOAT_SLACK;
            within5M2 += off <= DeviationLimits.WATCH ? groundM2 : 0;
            within10M2 += off <= DeviationLimits.ACT ? groundM2 : 0;
            within20M2 += off <= DeviationLimits.FAR ? groundM2 : 0;
            underM2 += off > DeviationLimits.ACT && ratio < 1 ? groundM2 : 0;
            overM2 += off > DeviationLimits.ACT && ratio > 1 ? groundM2 : 0;
            int c = (int) Math.floor((ratio + FLOAT_SLACK) / CLASS_WIDTH);
            classesM2[Math.max(0, Math.min(CLASSES - 1, c))] += groundM2;
        }

        double pct(double groundM2) {
            return evaluatedM2 == 0 ? Double.NaN : 100 * groundM2 / evaluatedM2;
        }
    }
}
