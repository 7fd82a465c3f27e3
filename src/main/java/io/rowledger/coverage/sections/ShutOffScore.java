package io.rowledger.coverage.sections;

/**
 * How well single rows were shut off, in swept area and in liquid at the target rate of the first product.
 *
 * @param offOverCoveredM2 off over ground done by another visit: right
 * @param offOverUncoveredM2 off over ground that stayed bare: a skip
 * @param onOverCoveredM2 on over ground already done: a double
 * @param savedL liquid the right shut-offs saved, L; NaN without a target
 * @param skippedL liquid the skips lack, L; NaN without a target
 * @param overlapL liquid the doubles cost, L (metered)
 */
public record ShutOffScore(
        double offOverCoveredM2,
        double offOverUncoveredM2,
        double onOverCoveredM2,
        double savedL,
        double skippedL,
        double overlapL) {}
