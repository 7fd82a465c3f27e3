package io.rowledger.zones;

import java.util.List;

/**
 * Where the rate of one product changed at lines between zones, against where it should have.
 *
 * <p>A row's rate changes where it is half-way between its level before the line and its level behind it. The distance
 * from the line to there along the row is <em>late</em> if positive, <em>early</em> if negative. A supply that needs time
 * moves that place back too: with a delay d and a time constant τ at speed v it lies (d + τ·ln 2)·v behind the line. The
 * rate is <em>settled</em> where it stays within a tenth of the step of its new level. A bar's crossing is the median of
 * its rows.
 *
 * @param pairs per pair of zones in the direction of travel, in the order of zone numbers
 * @param all over all pairs
 * @param why why nothing can be told of all pairs together, a sentence; empty where it can
 */
public record ZoneChanges(List<Pair> pairs, Timing all, String why) {
    /** Fewer crossings than this could be chance. */
    public static final int MIN_CROSSINGS = 3;

    /** Copies the list. */
    public ZoneChanges {
        pairs = List.copyOf(pairs);
    }

    /**
     * Crossings from one zone into another.
     *
     * @param from number of the zone that was left, from 1
     * @param to number of the zone that was entered
     * @param timing how late
     */
    public record Pair(int from, int to, Timing timing) {}

    /**
     * How late a number of crossings were. Distances and times are NaN below {@link #MIN_CROSSINGS} judged ones.
     *
     * @param crossings of the bar over a line between zones whose plans differ enough to be seen
     * @param evaluated of these, the ones whose change of rate could be placed
     * @param unfollowed of these, the ones where the rate went less than half as far as the plan
     * @param lateM median, m; negative early
     * @param minLateM earliest, m
     * @param maxLateM latest, m
     * @param lateS median, s
     * @param settledM median distance behind the line at which the rate had settled, m; NaN where that was not seen
     */
    public record Timing(
            int crossings,
            int evaluated,
            int unfollowed,
            double lateM,
            double minLateM,
            double maxLateM,
            double lateS,
            double settledM) {
        /** True where enough crossings could be judged. */
        public boolean known() {
            return evaluated >= MIN_CROSSINGS;
        }
    }
}
