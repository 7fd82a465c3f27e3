package io.rowledger.sim;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;

/**
 * What the log looks like.
 *
 * @param customary gal/min, gal/ac, mph, psi; else L/min, L/ha, km/h, kPa
 * @param isoTime ISO 8601 in UTC; else seconds since the epoch
 * @param columns which of the optional quantities it has
 * @param shuffleSeed order of the columns; 0 keeps the usual one
 */
public record LogFormat(boolean customary, boolean isoTime, Set<Column> columns, long shuffleSeed) {
    /** Optional quantities. */
    public enum Column {
        SPEED,
        COURSE,
        DOWN,
        ON,
        FIX,
        HDOP,
        YAW_RATE,
        PRESSURE,
        ROW_PRESSURE,
        TARGET,
        TOTAL
    }

    /** Keeps its own copy of the columns. */
    public LogFormat {
        columns = Set.copyOf(columns);
    }

    /** Customary units, ISO time, speed, course, work state, fix, HDOP and target. */
    public static LogFormat customaryUnits() {
        return new LogFormat(
                true,
                true,
                EnumSet.of(Column.SPEED, Column.COURSE, Column.DOWN, Column.FIX, Column.HDOP, Column.TARGET),
                0);
    }

    /** Metric units, seconds since the epoch, the same columns. */
    public static LogFormat metricUnits() {
        return new LogFormat(false, false, customaryUnits().columns, 0);
    }

    /** With more quantities. */
    public LogFormat with(Column... more) {
        EnumSet<Column> all = EnumSet.noneOf(Column.class);
        all.addAll(columns);
        all.addAll(Arrays.asList(more));
        return new LogFormat(customary, isoTime, all, shuffleSeed);
    }

    /** With fewer quantities. */
    public LogFormat without(Column... fewer) {
        EnumSet<Column> left = EnumSet.noneOf(Column.class);
        left.addAll(columns);
        left.removeAll(Arrays.asList(fewer));
        return new LogFormat(customary, isoTime, left, shuffleSeed);
    }

    /** In customary units or metric ones. */
    public LogFormat withUnits(boolean us) {
        return new LogFormat(us, isoTime, columns, shuffleSeed);
    }

    /** With the columns in another order. */
    public LogFormat shuffled(long seed) {
        return new LogFormat(customary, isoTime, columns, seed);
    }

    boolean has(Column column) {
        return columns.contains(column);
    }
}
