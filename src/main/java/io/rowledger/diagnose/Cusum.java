package io.rowledger.diagnose;

/**
 * The tabular cumulative sum: how far a sequence has drifted above and below its target.
 *
 * <p>Upper sum Hᵢ = max(0, xᵢ − (target + K) + Hᵢ₋₁), lower sum Lᵢ = max(0, (target − K) − xᵢ + Lᵢ₋₁), both from 0; a
 * signal where one exceeds H. E. S. Page, Continuous inspection schemes, Biometrika 41 (1954) 100-115.
 */
public final class Cusum {
    private final double target;
    private final double slack;
    private final double limit;
    private double upper;
    private double lower;
    private int sinceUpper;
    private int sinceLower;

    /** Sums about a target with slack K and decision limit H, all in the unit of the values. */
    public Cusum(double target, double slack, double limit) {
        this.target = target;
        this.slack = slack;
        this.limit = limit;
    }

    /** Adds a value; true where a sum now exceeds the limit. */
    public boolean add(double x) {
        upper = Math.max(0, x - (target + slack) + upper);
        lower = Math.max(0, target - slack - x + lower);
        sinceUpper = upper > 0 ? sinceUpper + 1 : 0;
        sinceLower = lower > 0 ? sinceLower + 1 : 0;
        return upper > limit || lower > limit;
    }

    /** The upper sum. */
    public double upper() {
        return upper;
    }

    /** The lower sum. */
    public double lower() {
        return lower;
    }

    /** Values since the larger sum was last 0: the drift began so many values ago. */
    public int since() {
        return upper >= lower ? sinceUpper : sinceLower;
    }
}
