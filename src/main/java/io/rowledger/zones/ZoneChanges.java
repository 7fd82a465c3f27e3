package io.rowledger.zones;

import io.rowledger.text.Message;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Where the rate of one product changed at lines between zones, against where it should have.
 *
 * <p>A row's rate changes where it is halfway between its level before the line and its level behind it. The distance
 * from the line to there along the row is the <em>lateness</em>; it is negative if the rate changes early. With a delay
 * d and a time constant τ of the supply at speed v it is (d + τ·ln 2)·v. The rate is <em>settled</em> where it stays
 * within a tenth of the step of its new level. A bar's crossing is the median of its rows.
 *
 * @param pairs per pair of zones in the direction of travel, ordered by zone numbers
 * @param all over all pairs
 * @param why why the timing over all pairs is not known; null if it is
 */
public record ZoneChanges(
        List<Pair> pairs, Timing all, @Nullable Message why) {
    /** Fewest evaluated crossings for a timing; fewer could be chance. */
    public static final int MIN_CROSSINGS = 3;

    /** Copies the list. */
    public ZoneChanges {
        pairs = List.copyOf(pairs);
    }

    /** No crossing, for a reason. */
    static ZoneChanges unknown(Message why) {
        double nan = Double.NaN;
        return new ZoneChanges(List.of(), new Timing(0, 0, 0, nan, nan, nan, nan, nan), why);
    }

    /**
     * Crossings from one zone into another.
     *
     * @param from number of the zone that was left, from 1
     * @param to number of the zone that was entered
     * @param timing lateness of the crossings
     */
    public record Pair(int from, int to, Timing timing) {}

    /**
     * Lateness of a number of crossings. Distances and times are NaN with fewer than {@link #MIN_CROSSINGS} evaluated
     * crossings.
     *
     * @param crossings crossings of the bar over a line between zones whose planned rates differ enough to be seen
     * @param evaluated of these, the ones whose change of rate could be located
     * @param unfollowed of these, the ones where the rate changed by less than half of the planned step
     * @param lateM median lateness, m; negative if early
     * @param minLateM smallest, m
     * @param maxLateM largest, m
     * @param lateS median, s
     * @param settledM median distance behind the line at which the rate had settled, m; NaN if not seen
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
        /** Returns true if enough crossings could be evaluated. */
        public boolean known() {
            return evaluated >= MIN_CROSSINGS;
        }
    }
}
