package io.rowledger.stats;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Log-likelihood of a normal variable known only to lie in [low, high], and its first two derivatives by the mean.
 *
 * <p>With a = (low − μ)/σ and b = (high − μ)/σ: Z = Φ(b) − Φ(a), d ln Z/dμ = (φ(a) − φ(b))/(σ Z) and
 * d² ln Z/dμ² = (a φ(a) − b φ(b))/(σ² Z) − (d ln Z/dμ)². Φ and φ are those of Commons Statistics.
 *
 * @param logZ ln Z
 * @param slope first derivative by the mean
 * @param bend second derivative by the mean, at most 0
 */
public record TruncatedNormal(double logZ, double slope, double bend) {
    /** Bounds farther than this from the mean are taken to lie here, where the tail still is a normal double, σ. */
    private static final double MAX_Z = 30;

    private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

    /** Of a normal with this mean and standard deviation, between these bounds. */
    public static TruncatedNormal of(double low, double high, double mean, double sigma) {
        double a = (low - mean) / sigma;
        double b = (high - mean) / sigma;
        // The bounds are mirrored to the upper tail, where a difference of small tails loses no digits.
        boolean mirrored = a + b < 0;
        double near = Math.min(mirrored ? -b : a, MAX_Z);
        double far = Math.min(mirrored ? -a : b, MAX_Z + 1);
        double z = Math.max(Double.MIN_NORMAL, STANDARD.survivalProbability(near) - STANDARD.survivalProbability(far));
        double slope = (STANDARD.density(near) - STANDARD.density(far)) / z;
        double bend = (near * STANDARD.density(near) - far * STANDARD.density(far)) / z - slope * slope;
        return new TruncatedNormal(
                Math.log(z), (mirrored ? -slope : slope) / sigma, Math.min(0, bend) / (sigma * sigma));
    }
}
