package io.rowledger.uncertainty;

/**
 * A figure and the interval that should hold the truth in {@value Intervals#LEVEL_PCT} of 100 jobs, in the figure's own SI
 * unit. NaN bounds where nothing can be said.
 *
 * @param value the figure as the reports have it
 * @param low lower bound, mostly below the figure
 * @param high upper bound, mostly above the figure; both can lie on one side of a figure that noise is known to bias
 */
public record Interval(double value, double low, double high) {
    /** Checks the order. */
    public Interval {
        if (low > high) {
            throw new IllegalArgumentException(low + " to " + high);
        }
    }

    /** A figure of which nothing can be said. */
    public static Interval unknown(double value) {
        return new Interval(value, Double.NaN, Double.NaN);
    }

    /** A figure with equal bounds to either side. */
    static Interval about(double value, double half) {
        return Double.isFinite(value) && Double.isFinite(half)
                ? new Interval(value, value - half, value + half)
                : unknown(value);
    }

    /** The same for a figure that can't be negative. */
    Interval notBelowZero() {
        return new Interval(value, Math.max(0, low), Math.max(0, high));
    }

    /** True where both bounds are. */
    public boolean known() {
        return Double.isFinite(low) && Double.isFinite(high);
    }

    /** True where the bounds hold x. */
    public boolean holds(double x) {
        return low <= x && x <= high;
    }
}
