package io.rowledger.report.record;

import io.rowledger.coverage.grid.ReceivedGrid;
import io.rowledger.report.common.Limits;
import io.rowledger.report.map.RateClasses;
import io.rowledger.rig.Product;
import java.util.Arrays;
import java.util.List;

/**
 * What each cell of the received grid got, all products summed: nitrogen in kg if every product's density and analysis are
 * known, else liters of the first product.
 *
 * <p>Symbols: g_i what cell i got, c_i its covered area (m²), b earlier applications and credits (per m²). Compared with a
 * plan p (per m²) the ratio of cell i is (g_i / c_i + b) / p; compared with targets it is g_i / t_i with t_i the sum of the
 * products' targets in the cell. Shares are of the covered ground.
 */
final class NitrogenGrid {
    /** Largest deviation from plan or target, percent, at which ground counts as on it. */
    static final int ON_PLAN_PCT = Math.toIntExact(Math.round(Limits.ACT_PCT));
    /** The same as a share. */
    static final double ON_PLAN_SHARE = ON_PLAN_PCT / 100.0;
    /** Smallest covered share of a cell that counts, as in the statistics of the received grid. */
    private static final double MIN_COVERED_SHARE = 0.01;

    private final ReceivedGrid grid;
    private final boolean nitrogen;
    private final double[] contentPerL;
    private final float[] received;

    private NitrogenGrid(ReceivedGrid grid, boolean nitrogen, double[] contentPerL) {
        this.grid = grid;
        this.nitrogen = nitrogen;
        this.contentPerL = contentPerL;
        this.received = new float[grid.coveredM2().length];
        for (int i = 0; i < received.length; i++) {
            double sum = 0;
            for (int p = 0; p < contentPerL.length; p++) {
                sum += contentPerL[p] == 0 ? 0 : contentPerL[p] * grid.volumeL()[p][i];
            }
            received[i] = (float) sum;
        }
    }

    /**
     * The ground of a job.
     *
     * @param volumeL volume of each product over the whole job, L; a product that was not applied needs no analysis
     */
    static NitrogenGrid of(ReceivedGrid grid, List<Product> products, List<Double> volumeL) {
        double[] perL = new double[products.size()];
        boolean known = true;
        for (int p = 0; p < perL.length; p++) {
            perL[p] = volumeL.get(p) == 0 ? 0 : products.get(p).nitrogenKgPerL();
            known &= Double.isFinite(perL[p]);
        }
        if (!known) {
            Arrays.fill(perL, 0);
            perL[0] = 1;
        }
        return new NitrogenGrid(grid, known, perL);
    }

    /** True if the cells hold kg of nitrogen, false if they hold liters of the first product. */
    boolean isNitrogen() {
        return nitrogen;
    }

    /** What each cell got, kg N or L. The array itself, not a copy: read only. */
    float[] received() {
        return received;
    }

    /**
     * Shares of the covered ground, percent; NaN if there is nothing to compare.
     *
     * @param within within {@link #ON_PLAN_PCT} % of plan or target
     * @param under more below
     * @param over more above
     */
    record Shares(double within, double under, double over) {}

    /** Shares against one plan for all ground, earlier nitrogen included; both per m². */
    Shares against(double planPerM2, double earlierPerM2) {
        return shares(i -> (received[i] / grid.coveredM2()[i] + earlierPerM2) / planPerM2);
    }

    /** Shares against the products' targets, cell by cell. */
    Shares againstTarget() {
        return shares(i -> {
            double target = 0;
            for (int p = 0; p < contentPerL.length; p++) {
                target += contentPerL[p] == 0 ? 0 : contentPerL[p] * grid.targetL()[p][i];
            }
            return received[i] / target;
        });
    }

    /** Mean over the covered ground, kg/m² or L/m². */
    double meanPerM2() {
        double sum = 0;
        double areaM2 = 0;
        for (int i = 0; i < received.length; i++) {
            sum += received[i];
            areaM2 += grid.coveredM2()[i];
        }
        return sum / areaM2;
    }

    /** Share of the covered ground that got more than this, percent. */
    double abovePct(double limitPerM2) {
        double[] areas = areaPerClass(new double[] {limitPerM2});
        return 100 * areas[1] / (areas[0] + areas[1]);
    }

    /** Covered area per class of the rate, m²: class k lies above {@code boundsPerM2[k - 1]} and up to {@code [k]}. */
    double[] areaPerClass(double[] boundsPerM2) {
        double[] areas = new double[boundsPerM2.length + 1];
        for (int i = 0; i < received.length; i++) {
            if (isGround(i)) {
                areas[RateClasses.classOf(received[i] / grid.coveredM2()[i], boundsPerM2)] += grid.coveredM2()[i];
            }
        }
        return areas;
    }

    private boolean isGround(int i) {
        return grid.coveredM2()[i] >= MIN_COVERED_SHARE * grid.cellM() * grid.cellM();
    }

    /** What a cell got ÷ what it should get. */
    private interface Ratio {
        double of(int i);
    }

    private Shares shares(Ratio ratio) {
        double evaluatedM2 = 0;
        double underM2 = 0;
        double overM2 = 0;
        for (int i = 0; i < received.length; i++) {
            double r = isGround(i) ? ratio.of(i) : Double.NaN;
            if (Double.isFinite(r)) {
                double areaM2 = grid.coveredM2()[i];
                boolean off = Math.abs(r - 1) - RateClasses.FLOAT_SLACK > ON_PLAN_SHARE;
                evaluatedM2 += areaM2;
                underM2 += off && r < 1 ? areaM2 : 0;
                overM2 += off && r > 1 ? areaM2 : 0;
            }
        }
        return new Shares(
                100 * (evaluatedM2 - underM2 - overM2) / evaluatedM2,
                100 * underM2 / evaluatedM2,
                100 * overM2 / evaluatedM2);
    }
}
