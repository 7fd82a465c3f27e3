package io.rowledger.diagnose.setup;

/**
 * A value with a normal error.
 *
 * @param value best estimate, SI
 * @param sigma its standard deviation
 * @param least smaller differences are within what a tape measure and a day's work allow
 */
record Estimate(double value, double sigma, double least) {
    /** Φ⁻¹(0.95): 90 % of a normal distribution lie within so many sigmas. */
    static final double Z90 = 1.6448536269514722;

    /** A right setup is called wrong by chance once in about a thousand measures. */
    private static final double SIGNIFICANT = 3.3;

    boolean differsFrom(double was) {
        return Math.abs(value - was) > Math.max(least, SIGNIFICANT * sigma);
    }
}
