package io.rowledger.rate;

import java.util.List;

/**
 * Totals of one outlet over the whole job (in {@link Rates#passRows}, over one pass). Products in rig order.
 *
 * @param row from 1 at the left
 * @param sweptAreaM2 forward area its band passed over while working
 * @param appliedAreaM2 swept area of the delivering steps
 * @param turn the turn error a row would see with uniform flow
 * @param turnRemaining the turn error that remained in the metered flows, over intervals of a few seconds away from switching
 *     valves, without the row's own level on straight ground
 * @param products per product
 */
public record RowTotals(
        int row,
        double sweptAreaM2,
        double appliedAreaM2,
        TurnError turn,
        TurnError turnRemaining,
        List<ProductTotals> products) {
    /** Copies the products. */
    public RowTotals {
        products = List.copyOf(products);
    }

    /** Returns volume ÷ applied area of a product, L/m²; NaN if the row never delivered. */
    public double meanRateLPerM2(int product) {
        return appliedAreaM2 > 0 ? products.get(product).volumeL() / appliedAreaM2 : Double.NaN;
    }

    /**
     * One product of a row. Flow that is blank, not a number or negative in the log is unknown, never zero.
     *
     * @param volumeL metered while working, L, without what flowed while the flow is unknown; NaN if it is always unknown
     * @param targetVolumeL target × swept area, L; NaN without a target
     * @param meteredTargetL target × area swept with a known flow, L; NaN without a target
     * @param unknownAreaM2 area swept with an unknown flow, m²
     */
    public record ProductTotals(double volumeL, double targetVolumeL, double meteredTargetL, double unknownAreaM2) {
        /** Returns volume against the target volume of the area with a known flow, percent; NaN without either. */
        public double deviationPct() {
            return RowTotals.deviationPct(volumeL, meteredTargetL);
        }
    }

    static double deviationPct(double volumeL, double targetL) {
        return targetL > 0 ? (volumeL / targetL - 1) * 100 : Double.NaN;
    }

    /**
     * Relative errors as fractions (0.1 is 10 %), weighted by swept area; NaN if no step could be evaluated.
     *
     * @param meanAbs mean of |ε|
     * @param maxOver largest ε where the row moves at more than a fifth of the bar's speed, at least 0
     * @param maxUnder smallest ε there, at most 0
     * @param beyond5M2 area with |ε| above 5 %, m²
     * @param beyond10M2 area with |ε| above 10 %, m²
     */
    public record TurnError(double meanAbs, double maxOver, double maxUnder, double beyond5M2, double beyond10M2) {
        /** Where one meter serves the whole bar. */
        public static final TurnError UNKNOWN =
                new TurnError(Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
    }
}
