package io.rowledger.uncertainty;

/**
 * A value with the interval that should hold the truth in {@value Intervals#LEVEL_PCT} of 100 jobs, in the value's SI unit.
 * Bounds are NaN if they are not known. Both bounds may lie on one side of a value that noise or a faulty meter biases.
 *
 * @param value the value that the reports print; NaN if it is not known
 * @param low lower bound
 * @param high upper bound
 */
public record Interval(double value, double low, double high) {
    /** Checks the order of the bounds. */
    public Interval {
        if (low > high) {
            throw new IllegalArgumentException(low + " to " + high);
        }
    }

    /** Returns a value without bounds. */
    public static Interval unknown(double value) {
        return new Interval(value, Double.NaN, Double.NaN);
    }

    /** Returns the value without its bounds. */
    Interval unbounded() {
        return unknown(value);
    }

    /** Returns the interval with both bounds at least 0, for a quantity that can't be negative. */
    Interval notBelowZero() {
        return new Interval(value, Math.max(0, low), Math.max(0, high));
    }

    /** Returns true if both bounds are known. */
    public boolean known() {
        return Double.isFinite(low) && Double.isFinite(high);
    }

    /** Returns true if x lies within the bounds. */
    public boolean holds(double x) {
        return low <= x && x <= high;
    }
}
