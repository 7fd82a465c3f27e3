package io.rowledger.stats;

import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * A straight line y = a + b·x through points of known standard deviation, by weighted least squares (P. R. Bevington and D. K.
 * Robinson, Data Reduction and Error Analysis for the Physical Sciences, 3rd ed., chapter 6; formulas from memory). With weights
 * w = 1/σ² and weighted means x̄ and ȳ
 *
 * <pre>b = Σ w (x − x̄)(y − ȳ) ÷ Σ w (x − x̄)²,   σ_b = 1 ÷ √Σ w (x − x̄)²</pre>
 *
 * <p>Where the points scatter more than their σ say, σ_b is multiplied by √(χ²/(n − 2)) (the ratio of R. T. Birge, Physical Review
 * 40, 1932, 207), and Student's t takes the place of the normal distribution. It is never made smaller.
 *
 * @param slope b; NaN with fewer than three points or only one x
 * @param slopeSigma standard error of b
 * @param points number of points n
 * @param scattered true if the points scatter more than their σ say
 */
public record WeightedLine(double slope, double slopeSigma, int points, boolean scattered) {
    private static final WeightedLine UNKNOWN = new WeightedLine(Double.NaN, Double.NaN, 0, false);
    /** Parameters of a line. */
    private static final int PARAMETERS = 2;

    /** The line through the points whose x, y and σ are finite and whose σ is positive. */
    public static WeightedLine through(double[] x, double[] y, double[] sigma) {
        int n = 0;
        double weights = 0;
        double meanX = 0;
        double meanY = 0;
        for (int i = 0; i < x.length; i++) {
            double w = weight(x[i], y[i], sigma[i]);
            if (w > 0) {
                n++;
                weights += w;
                meanX += w * x[i];
                meanY += w * y[i];
            }
        }
        if (n <= PARAMETERS) {
            return UNKNOWN;
        }
        meanX /= weights;
        meanY /= weights;
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (int i = 0; i < x.length; i++) {
            double w = weight(x[i], y[i], sigma[i]);
            if (w > 0) {
                xx += w * (x[i] - meanX) * (x[i] - meanX);
                xy += w * (x[i] - meanX) * (y[i] - meanY);
                yy += w * (y[i] - meanY) * (y[i] - meanY);
            }
        }
        if (!(xx > 0)) {
            return UNKNOWN;
        }
        double slope = xy / xx;
        double chiSquared = Math.max(0, yy - slope * xy);
        double birge = Math.sqrt(chiSquared / (n - PARAMETERS));
        return new WeightedLine(slope, Math.max(1, birge) / Math.sqrt(xx), n, birge > 1);
    }

    private static double weight(double x, double y, double sigma) {
        boolean known = Double.isFinite(x) && Double.isFinite(y) && Double.isFinite(sigma) && sigma > 0;
        return known ? 1 / (sigma * sigma) : 0;
    }

    /**
     * Half-width of the slope's interval with this coverage (0 to 1): by the normal distribution where the σ of the points hold, by
     * Student's t with n − 2 degrees of freedom where they had to be widened.
     */
    public double uncertainty(double coverage) {
        if (Double.isNaN(slope)) {
            return Double.NaN;
        }
        double p = (1 + coverage) / 2;
        return slopeSigma
                * (scattered
                        ? TDistribution.of(points - PARAMETERS).inverseCumulativeProbability(p)
                        : NormalDistribution.of(0, 1).inverseCumulativeProbability(p));
    }
}
