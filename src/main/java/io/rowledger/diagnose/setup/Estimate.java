package io.rowledger.diagnose.setup;

/**
 * A value with a normal error.
 *
 * @param value best estimate, SI
 * @param sigma its standard deviation
 * @param min smallest difference that counts: less is within what a tape measure and a day's work allow
 */
record Estimate(double value, double sigma, double min) {
    /** Φ⁻¹(0.95): 90 % of a normal distribution lie within this many sigmas. */
    static final double Z90 = 1.6448536269514722;

    /** Sigmas beyond which a difference is significant: by chance in about one of a thousand measurements. */
    static final double SIGNIFICANT = 3.3;

    boolean differsFrom(double given) {
        return Math.abs(value - given) > Math.max(min, SIGNIFICANT * sigma);
    }
}
