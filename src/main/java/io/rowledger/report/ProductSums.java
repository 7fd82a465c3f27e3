package io.rowledger.report;

import io.rowledger.rate.RowTotals;
import io.rowledger.rate.RowTotals.ProductTotals;
import java.util.List;

/**
 * One product over the whole job: sums over sums, never a mean of ratios.
 *
 * @param volumeL metered while working, L
 * @param targetVolumeL target × swept area, L; NaN without a target
 * @param sweptAreaM2 all rows, m²
 * @param appliedAreaM2 all rows, m²
 */
public record ProductSums(double volumeL, double targetVolumeL, double sweptAreaM2, double appliedAreaM2) {
    /** Sums product p over the rows. */
    public static ProductSums of(List<RowTotals> rows, int p) {
        double volumeL = 0;
        double targetL = 0;
        double sweptM2 = 0;
        double appliedM2 = 0;
        for (RowTotals row : rows) {
            ProductTotals product = row.products().get(p);
            volumeL += product.volumeL();
            targetL += product.targetVolumeL();
            sweptM2 += row.sweptAreaM2();
            appliedM2 += row.appliedAreaM2();
        }
        return new ProductSums(volumeL, targetL, sweptM2, appliedM2);
    }

    /** True where somebody gave a target rate. */
    public boolean hasTarget() {
        return targetVolumeL > 0;
    }

    /** Volume against target volume, percent; NaN without a target. */
    public double deviationPct() {
        return hasTarget() ? (volumeL / targetVolumeL - 1) * 100 : Double.NaN;
    }

    /** Mean target over the swept area, L/m²; NaN without a target. */
    public double meanTargetLPerM2() {
        return hasTarget() && sweptAreaM2 > 0 ? targetVolumeL / sweptAreaM2 : Double.NaN;
    }

    /** Volume ÷ swept area, L/m². */
    public double meanSweptRateLPerM2() {
        return sweptAreaM2 > 0 ? volumeL / sweptAreaM2 : Double.NaN;
    }

    /**
     * How far one row is off, percent: against its target volume; without a target against the mean of all rows per swept
     * area.
     */
    public double deviationPct(RowTotals row, int p) {
        ProductTotals product = row.products().get(p);
        if (hasTarget()) {
            return product.deviationPct();
        }
        return row.sweptAreaM2() > 0 && volumeL > 0
                ? (product.volumeL() / row.sweptAreaM2() / meanSweptRateLPerM2() - 1) * 100
                : Double.NaN;
    }
}
