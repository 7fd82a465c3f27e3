package io.rowledger.report.common;

import io.rowledger.coverage.Coverage;
import io.rowledger.rate.Rates;
import io.rowledger.rate.RowTotals;
import io.rowledger.rate.RowTotals.ProductTotals;

/**
 * One product over the whole job: sums over sums, never a mean of ratios.
 *
 * @param volumeL metered while working, L; NaN if the log tells no row's flow
 * @param targetVolumeL target × swept area, L; NaN without a target
 * @param meteredTargetL target × area swept with a known flow, L; NaN without a target
 * @param shutOffCreditL target volume of ground that rows passed over shut off because it was covered, L
 * @param sweptAreaM2 all rows, m²
 * @param appliedAreaM2 all rows, m²
 */
public record ProductSums(
        double volumeL,
        double targetVolumeL,
        double meteredTargetL,
        double shutOffCreditL,
        double sweptAreaM2,
        double appliedAreaM2) {
    /** Sums product p over the rows of a job. */
    public static ProductSums of(Rates rates, Coverage coverage, int p) {
        double sweptM2 = 0;
        double appliedM2 = 0;
        for (RowTotals row : rates.rows()) {
            sweptM2 += row.sweptAreaM2();
            appliedM2 += row.appliedAreaM2();
        }
        return new ProductSums(
                rates.volumeL(p),
                rates.targetVolumeL(p),
                rates.meteredTargetL(p),
                coverage.shutOffCredit().ofJobL(p),
                sweptM2,
                appliedM2);
    }

    /** True if there is a target rate. */
    public boolean hasTarget() {
        return targetVolumeL > 0;
    }

    /** Target volume of the ground to be covered at a known flow, less what was rightly left off, L. */
    public double owedL() {
        return meteredTargetL - shutOffCreditL;
    }

    /** Volume against what was owed, percent; NaN without a target. */
    public double deviationPct() {
        return offPct(volumeL, owedL());
    }

    /** Volume against owed volume, percent; NaN where nothing was owed. */
    public static double offPct(double volumeL, double owedL) {
        return owedL > 0 ? (volumeL / owedL - 1) * 100 : Double.NaN;
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
     * Deviation of one row, percent: from the volume it owed; without a target from the mean of all rows per swept area.
     */
    public double deviationPct(Coverage coverage, RowTotals row, int p) {
        ProductTotals product = row.products().get(p);
        if (hasTarget()) {
            return offPct(
                    product.volumeL(),
                    product.meteredTargetL() - coverage.shutOffCredit().ofRowL(p, row.row()));
        }
        return row.sweptAreaM2() > 0 && volumeL > 0
                ? (product.volumeL() / row.sweptAreaM2() / meanSweptRateLPerM2() - 1) * 100
                : Double.NaN;
    }
}
