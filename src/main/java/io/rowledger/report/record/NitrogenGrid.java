package io.rowledger.report.record;

import io.rowledger.analysis.Analysis;
import io.rowledger.coverage.grid.ReceivedGrid;
import io.rowledger.report.common.ProductSums;
import io.rowledger.report.map.RateClasses;
import io.rowledger.rig.Product;
import java.util.List;

/**
 * What every cell of the received grid got of one thing, all products summed: nitrogen in kg where every product's density and
 * analysis are known, else liters of the first product.
 *
 * <p>A place is judged by its total against the plan: total = what this job put there + what came before. Symbols: g_i what
 * cell i got, c_i its covered area, b what came before (per m²), w_i what was wanted in the cell. The ratio of cell i is
 * (g_i + b c_i) ÷ w_i with w_i = plan × c_i where a plan is given, else g_i ÷ w_i with w_i = the sum of the products' targets.
 */
public final class NitrogenGrid {
    /** Cells with less of their ground covered are left out, as in the product's own statistics. */
    private static final double MIN_COVERED_SHARE = 0.01;
    /** What counts as "on plan": the share the issue and the review use. */
    private static final double ON_PLAN = 0.10;

    private final ReceivedGrid grid;
    private final boolean nitrogen;
    private final double[] perL;
    private final float[] got;

    private NitrogenGrid(ReceivedGrid grid, boolean nitrogen, double[] perL) {
        this.grid = grid;
        this.nitrogen = nitrogen;
        this.perL = perL;
        this.got = new float[grid.coveredM2().length];
        for (int i = 0; i < got.length; i++) {
            double sum = 0;
            for (int p = 0; p < perL.length; p++) {
                sum += perL[p] == 0 ? 0 : perL[p] * grid.volumeL()[p][i];
            }
            got[i] = (float) sum;
        }
    }

    /** The job's ground: nitrogen where it is known, else liters of the first product. */
    public static NitrogenGrid of(Analysis a) {
        List<Product> products = a.rig().products();
        double[] perL = new double[products.size()];
        boolean known = true;
        for (int p = 0; p < perL.length; p++) {
            // Nothing holds nothing, whatever is unknown of it.
            boolean none = ProductSums.of(a, p).volumeL() == 0;
            perL[p] = none ? 0 : products.get(p).nitrogenKgPerL();
            known &= Double.isFinite(perL[p]);
        }
        if (!known) {
            java.util.Arrays.fill(perL, 0);
            perL[0] = 1;
        }
        return new NitrogenGrid(a.coverage().grid(), known, perL);
    }

    /** True where the cells hold kg of nitrogen; false where they hold liters of the first product. */
    public boolean isNitrogen() {
        return nitrogen;
    }

    /** Per cell, kg N or L. Shared, not copied: read only. */
    public float[] got() {
        return got;
    }

    /**
     * Shares of the judged ground, percent; NaN where nothing could be judged.
     *
     * @param within within 10 % of the plan
     * @param under more than 10 % below
     * @param over more than 10 % above
     */
    public record Shares(double within, double under, double over) {}

    /** Shares against one amount for every place, what came before included; both per m². */
    public Shares against(double planPerM2, double beforePerM2) {
        return shares(i -> (got[i] / grid.coveredM2()[i] + beforePerM2) / planPerM2);
    }

    /** Shares against the products' targets, place by place. */
    public Shares againstTarget() {
        return shares(i -> {
            double wanted = 0;
            for (int p = 0; p < perL.length; p++) {
                wanted += perL[p] == 0 ? 0 : perL[p] * grid.targetL()[p][i];
            }
            return got[i] / wanted;
        });
    }

    /** Mean over the covered ground, kg/m² or L/m². */
    public double meanPerM2() {
        double sum = 0;
        double areaM2 = 0;
        for (int i = 0; i < got.length; i++) {
            sum += got[i];
            areaM2 += grid.coveredM2()[i];
        }
        return sum / areaM2;
    }

    /** Share of the covered ground that got more than this, percent. */
    public double aboveShare(double limitPerM2) {
        double[] areas = areaPerClass(new double[] {limitPerM2});
        return 100 * areas[1] / (areas[0] + areas[1]);
    }

    /** Covered area per class of the rate, m²: class k lies above {@code boundsPerM2[k - 1]} and up to {@code [k]}. */
    public double[] areaPerClass(double[] boundsPerM2) {
        double[] areas = new double[boundsPerM2.length + 1];
        for (int i = 0; i < got.length; i++) {
            if (isGround(i)) {
                areas[RateClasses.classOf(got[i] / grid.coveredM2()[i], boundsPerM2)] += grid.coveredM2()[i];
            }
        }
        return areas;
    }

    private boolean isGround(int i) {
        return grid.coveredM2()[i] >= MIN_COVERED_SHARE * grid.cellM() * grid.cellM();
    }

    /** The ratio of a cell. */
    private interface Ratio {
        double of(int i);
    }

    private Shares shares(Ratio ratio) {
        double evaluatedM2 = 0;
        double underM2 = 0;
        double overM2 = 0;
        for (int i = 0; i < got.length; i++) {
            double r = isGround(i) ? ratio.of(i) : Double.NaN;
            if (Double.isFinite(r)) {
                double areaM2 = grid.coveredM2()[i];
                boolean off = Math.abs(r - 1) - RateClasses.FLOAT_SLACK > ON_PLAN;
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
