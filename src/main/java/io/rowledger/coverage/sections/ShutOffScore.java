package io.rowledger.coverage.sections;

/**
 * Score of section control, in swept area and in liquid of the first product.
 *
 * @param offOverCoveredM2 area swept while off over ground that another visit covers, m²: right
 * @param offOverUncoveredM2 area swept while off over ground that stayed uncovered, m²: a skip
 * @param onOverCoveredM2 area swept while on over ground covered before, m²: an overlap
 * @param savedL target volume of the first area, L; NaN without a target
 * @param skippedL target volume of the second area, L; NaN without a target
 * @param overlapL metered volume on the third area, L
 */
public record ShutOffScore(
        double offOverCoveredM2,
        double offOverUncoveredM2,
        double onOverCoveredM2,
        double savedL,
        double skippedL,
        double overlapL) {
    /** The score where rows and passes are unknown: NaN throughout. */
    public static final ShutOffScore UNKNOWN =
            new ShutOffScore(Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
}
