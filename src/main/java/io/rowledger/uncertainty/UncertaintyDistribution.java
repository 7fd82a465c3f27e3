package io.rowledger.uncertainty;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The distribution of a value's error: a normal and a rectangular part about a middle that lies anywhere in [from, to].
 *
 * <p>The interval of a quantity whose middle is only known to lie in [from, to] is [from − x, to + x] with the smallest x for
 * which either end holds the truth with the level wanted: F(x + to − from) − F(−x) = level (G. Imbens, C. Manski, "Confidence
 * intervals for partially identified parameters", Econometrica 72 (2004) 1845-1857). F is the distribution of the sum of a
 * normal and a rectangular error. For from = to and no rectangular part x is 1.645 u; for a rectangular part alone 0.9 of its
 * half-width (GUM G.6.6 warns of k = 1.645 there).
 *
 * @param from smallest middle
 * @param to largest middle
 * @param sigma standard uncertainty of the normal part
 * @param rectangle half-width of the rectangular part
 */
record UncertaintyDistribution(double from, double to, double sigma, double rectangle) {
    private static final double LEVEL = Intervals.LEVEL_PCT / 100.0;
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    /** A distribution with one middle. */
    static UncertaintyDistribution about(double middle, double sigma, double rectangle) {
        return new UncertaintyDistribution(middle, middle, sigma, rectangle);
    }

    /**
     * A distribution with relative errors about a value: the widest rectangle is kept, the others go into the normal part.
     *
     * @param value its middle
     * @param sigma relative standard uncertainty of the normal part
     * @param rectangles relative half-widths
     */
    static UncertaintyDistribution relative(double value, double sigma, double... rectangles) {
        double widest = 0;
        double square = sigma * sigma;
        for (double half : rectangles) {
            widest = Math.max(widest, half);
            square += half * half / 3;
        }
        return about(value, value * Math.sqrt(Math.max(0, square - widest * widest / 3)), value * widest);
    }

    /**
     * A distribution with relative errors about a middle between value + low and value + high.
     *
     * @param value metered
     * @param bias what the middle may be off by
     * @param end the middle that the errors are relative to
     * @param sigma relative standard uncertainty of the normal part
     * @param rectangles relative half-widths
     */
    static UncertaintyDistribution relative(
            double value, VolumeBounds.Bias bias, double end, double sigma, double... rectangles) {
        UncertaintyDistribution errors = relative(end, sigma, rectangles);
        return new UncertaintyDistribution(
                value + bias.lowL(), value + bias.highL(), Math.hypot(errors.sigma, bias.sigmaL()), errors.rectangle);
    }

    /**
     * Returns the interval of a metered value whose middle lies between value + low and value + high, each end with errors in
     * proportion to it: what a meter did not show, other meters of the same calibration tell.
     */
    static Interval interval(double value, VolumeBounds.Bias bias, double sigma, double... rectangles) {
        Interval low =
                relative(value, bias, value + bias.lowL(), sigma, rectangles).interval(value);
        Interval high =
                relative(value, bias, value + bias.highL(), sigma, rectangles).interval(value);
        return new Interval(value, low.low(), high.high()).notBelowZero();
    }

    /** Returns the distribution with its middles moved apart: {@code from} by low (≤ 0), {@code to} by high (≥ 0). */
    UncertaintyDistribution widened(double low, double high, double moreSigma) {
        return new UncertaintyDistribution(from + low, to + high, Math.hypot(sigma, moreSigma), rectangle);
    }

    /** Returns the distribution of the quantity times a factor of at least 0. */
    UncertaintyDistribution times(double factor) {
        return new UncertaintyDistribution(from * factor, to * factor, sigma * factor, rectangle * factor);
    }

    /** Returns the interval of a value with this distribution; without bounds if a part is not finite. */
    Interval interval(double value) {
        if (!Double.isFinite(value) || !Double.isFinite(from + to + sigma + rectangle)) {
            return Interval.unknown(value);
        }
        double x = expansion();
        return new Interval(value, from - x, to + x);
    }

    /** Returns how far the interval reaches beyond the middles. */
    double expansion() {
        double gap = to - from;
        double low = 0;
        double high = 5 * sigma + rectangle;
        for (int i = 0; i < 60 && high > low; i++) {
            double x = (low + high) / 2;
            if (cumulative(x + gap) - cumulative(-x) < LEVEL) {
                low = x;
            } else {
                high = x;
            }
        }
        return high;
    }

    /** F(x). */
    private double cumulative(double x) {
        if (rectangle < 1e-9 * sigma) {
            return NORMAL.cumulativeProbability(x / sigma);
        }
        if (sigma < 1e-6 * rectangle) {
            return rectangle == 0 ? x >= 0 ? 1 : 0 : Math.max(0, Math.min(1, (x / rectangle + 1) / 2));
        }
        // The normal's distribution averaged over the rectangle; the integral of Φ is zΦ(z) + φ(z).
        return sigma / (2 * rectangle) * (integral((x + rectangle) / sigma) - integral((x - rectangle) / sigma));
    }

    private static double integral(double z) {
        return z * NORMAL.cumulativeProbability(z) + NORMAL.density(z);
    }
}
