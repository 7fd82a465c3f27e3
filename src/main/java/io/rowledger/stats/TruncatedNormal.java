package io.rowledger.stats;

/**
 * A value that is known to lie between two bounds and no closer, of which something else says that it is normal about a mean:
 * how likely that is, and its first two derivatives by the mean.
 *
 * <p>With a = (low − μ)/s and b = (high − μ)/s: Z = Φ(b) − Φ(a), d ln Z/dμ = (φ(a) − φ(b))/(s Z) and
 * d² ln Z/dμ² = (a φ(a) − b φ(b))/(s² Z) − (d ln Z/dμ)². Φ is summed by M. Abramowitz, I. A. Stegun, Handbook of Mathematical
 * Functions, 1964, 26.2.11 near the middle and 26.2.14 in the tails.
 *
 * @param logZ ln Z
 * @param slope first derivative by the mean
 * @param bend second derivative by the mean, never above 0
 */
public record TruncatedNormal(double logZ, double slope, double bend) {
    /** From here on the tail's continued fraction is the quicker of the two. */
    private static final double TAIL_Z = 2.5;

    /** Beyond, tails are less than doubles can tell from nothing. */
    private static final double MAX_Z = 30;

    private static final double ROOT_2_PI = Math.sqrt(2 * Math.PI);

    public static TruncatedNormal of(double low, double high, double mean, double sigma) {
        double a = (low - mean) / sigma;
        double b = (high - mean) / sigma;
        // Looked at from the side on which the bounds lie, so that small tails are not differences of ones.
        boolean mirrored = a + b < 0;
        double near = Math.min(mirrored ? -b : a, MAX_Z);
        double far = Math.min(mirrored ? -a : b, MAX_Z + 1);
        double z = Math.max(Double.MIN_NORMAL, tail(near) - tail(far));
        double slope = (density(near) - density(far)) / z;
        double bend = (near * density(near) - far * density(far)) / z - slope * slope;
        return new TruncatedNormal(
                Math.log(z), (mirrored ? -slope : slope) / sigma, Math.min(0, bend) / (sigma * sigma));
    }

    private static double density(double z) {
        return Math.exp(-z * z / 2) / ROOT_2_PI;
    }

    /** 1 − Φ(z). */
    static double tail(double z) {
        if (z < 0) {
            return 1 - tail(-z);
        }
        if (z < TAIL_Z) {
            double term = z;
            double sum = z;
            for (int n = 3; term > 1e-17 * sum; n += 2) {
                term *= z * z / n;
                sum += term;
            }
            return 0.5 - density(z) * sum;
        }
        double fraction = z;
        for (int n = 60; n >= 1; n--) {
            fraction = z + n / fraction;
        }
        return density(z) / fraction;
    }
}
