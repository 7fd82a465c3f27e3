package io.rowledger.coverage;

import org.locationtech.jts.geom.Geometry;

/**
 * Ground with one applied rate, as a map hands it in.
 *
 * @param ground polygon or multipolygon in the job's plane, valid
 * @param rateLPerM2 per product, L/m²; NaN if it is unknown. Shared, read only.
 * @param targetLPerM2 per product, L/m²; NaN without a target. Shared, read only.
 */
public record AppliedArea(Geometry ground, double[] rateLPerM2, double[] targetLPerM2) {
    /** Share of the target above which ground counts as applied (1): as for an outlet that delivers. */
    private static final double DELIVERING_SHARE = 0.05;

    /** Returns true if a product was applied: at more than 5 % of its target, or at all without a target. */
    public boolean applied() {
        for (int p = 0; p < rateLPerM2.length; p++) {
            double limit = Double.isNaN(targetLPerM2[p]) ? 0 : DELIVERING_SHARE * targetLPerM2[p];
            if (rateLPerM2[p] > limit && rateLPerM2[p] > 0) {
                return true;
            }
        }
        return false;
    }

    /** Returns true if no product is known to be applied and the rate of one is unknown. */
    public boolean unknown() {
        for (double rate : rateLPerM2) {
            if (Double.isNaN(rate)) {
                return !applied();
            }
        }
        return false;
    }
}
