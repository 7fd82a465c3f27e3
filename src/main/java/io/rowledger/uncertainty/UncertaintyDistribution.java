package io.rowledger.uncertainty;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The doubt about a figure: a normal part, a rectangular part, and, for figures that noise biases, two places where its
 * middle may lie.
 *
 * <p>The interval of a figure whose middle is only known to lie in [from, to] is from − x to to + x with the least x for
 * which either end holds the truth with the level asked for: F(x + to − from) − F(−x) = level (G. Imbens, C. Manski,
 * "Confidence intervals for partially identified parameters", Econometrica 72 (2004) 1845-1857). F is the distribution of
 * a normal plus a rectangular error; for from = to and no rectangular part x is the usual 1.645 u, for a rectangular part
 * alone 0.9 of its half width (GUM G.6.6 warns of k = 1.645 there).
 *
 * @param from least middle
 * @param to largest middle
 * @param sigma standard uncertainty of the normal part
 * @param rectangle half width of the rectangular part
 */
record UncertaintyDistribution(double from, double to, double sigma, double rectangle) {
    private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);
    private static final double LEVEL = Intervals.LEVEL_PCT / 100.0;

    /** Doubt with one middle. */
    static UncertaintyDistribution about(double middle, double sigma, double rectangle) {
        return new UncertaintyDistribution(middle, middle, sigma, rectangle);
    }

    /** The interval of a figure with this doubt. */
    Interval interval(double value) {
        if (!Double.isFinite(value) || !Double.isFinite(from + to + sigma + rectangle)) {
            return Interval.unknown(value);
        }
        double x = beyond();
        return new Interval(value, from - x, to + x);
    }

    /** How far beyond the middles the interval reaches. */
    double beyond() {
        double gap = to - from;
        double low = 0;
        double high = 5 * sigma + rectangle;
        for (int i = 0; i < 60 && high > low; i++) {
            double x = (low + high) / 2;
            if (below(x + gap) - below(-x) < LEVEL) {
                low = x;
            } else {
                high = x;
            }
        }
        return high;
    }

    /** F(x). */
    private double below(double x) {
        if (rectangle < 1e-9 * sigma) {
            return normalBelow(x / sigma);
        }
        if (sigma < 1e-6 * rectangle) {
            return rectangle == 0 ? x >= 0 ? 1 : 0 : Math.max(0, Math.min(1, (x / rectangle + 1) / 2));
        }
        // The normal's distribution averaged over the rectangle; the integral of Φ is zΦ(z) + φ(z).
        return sigma / (2 * rectangle) * (integral((x + rectangle) / sigma) - integral((x - rectangle) / sigma));
    }

    private static double integral(double z) {
        return z * normalBelow(z) + STANDARD.density(z);
    }

    /** Φ(z). */
    static double normalBelow(double z) {
        return STANDARD.cumulativeProbability(z);
    }
}
