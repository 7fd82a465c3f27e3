package io.rowledger.sim;

import java.util.List;
import java.util.Locale;

/**
 * A fault put into the simulation.
 *
 * @param kind what kind
 * @param rows rows from 1 at the left; empty where the kind concerns all of them
 * @param startS seconds after the first record
 * @param endS seconds after the first record
 * @param size how bad; see {@link Kind}
 * @param periodS hunting: the period; restricted, supply failing: time over which it slides to its size (0: at once);
 *     intermittent: mean length of a spell; meter stuck: how far its last digit wanders, as a fraction
 */
public record SimFault(Kind kind, List<Integer> rows, double startS, double endS, double size, double periodS) {
    /** Kinds of fault and what {@code size} means. */
    public enum Kind {
        /** True flow falls to {@code size} of what it should be (0.02). */
        PLUGGED,
        /** True flow falls to {@code size}, at once or sliding over {@code periodS}. */
        RESTRICTED,
        /** True flow rises to {@code size} (1.3). */
        LEAKING,
        /** The meter shows zero for a part {@code size} of the time, in spells of about 1.5 s. */
        METER_DROPOUT,
        /** The meter keeps the value it had, but for a last digit that wanders by {@code periodS} of it. */
        METER_STUCK,
        /** The meter shows {@code size} times the truth. */
        METER_SCALE,
        /** The commands of two rows are crossed: each puts out what the other was told. */
        CHANNELS_SWAPPED,
        /** The pump gives no more than {@code size} L/s for all rows. */
        SUPPLY_LIMITED,
        /** Time constant of the rate controller {@code size} seconds. */
        SLOW_RESPONSE,
        /** True flow of all rows (or the named ones) swings by ±{@code size} with {@code periodS}. */
        HUNTING,
        /** Rows follow the bar's speed, not their own. */
        NO_TURN_COMPENSATION,
        /** Valves open {@code size} seconds late. */
        LATE_ON,
        /** Valves close {@code size} seconds before the bar is lifted. */
        EARLY_OFF,
        /** Both outside rows give {@code size} times what they should. */
        OUTSIDE_SHARE,
        /** True flow falls to nothing for a part {@code size} of the time, in spells of about {@code periodS}. */
        INTERMITTENT,
        /** The row's valve never closes: lifted or commanded off, it runs at {@code size} of its last flow. */
        VALVE_STUCK_OPEN,
        /** True flow of all rows slides to {@code size} over {@code periodS}. */
        SUPPLY_FAILING,
        /** True flow of all rows falls to nothing within three seconds. */
        RAN_EMPTY;

        /** The word used in the program's results. */
        public String jsonName() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** Copies the rows. */
    public SimFault {
        rows = List.copyOf(rows);
    }

    /** A fault of one row from a time on. */
    public static SimFault of(Kind kind, int row, double startS, double size) {
        return new SimFault(kind, List.of(row), startS, Double.POSITIVE_INFINITY, size, 0);
    }

    /** A fault of every row from a time on. */
    public static SimFault ofAll(Kind kind, double startS, double size) {
        return new SimFault(kind, List.of(), startS, Double.POSITIVE_INFINITY, size, 0);
    }

    /** The same, ending. */
    public SimFault until(double end) {
        return new SimFault(kind, rows, startS, end, size, periodS);
    }

    /** The same with a period (hunting) or a slide (restricted), s. */
    public SimFault over(double period) {
        return new SimFault(kind, rows, startS, endS, size, period);
    }

    boolean active(double t) {
        return t >= startS && t < endS;
    }

    boolean hits(int row0) {
        return rows.isEmpty() || rows.contains(row0 + 1);
    }
}
