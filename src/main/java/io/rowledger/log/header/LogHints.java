package io.rowledger.log.header;

import io.rowledger.units.Unit;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The {@code log:} block of the rig file: facts that a log alone does not show. Null, 0 or NaN where not given; the
 * reader then refuses ambiguous logs with a question instead of guessing.
 *
 * @param zone the zone of times written without one
 * @param date the day on which a log with times of day only starts
 * @param dateOrder the order of day, month and year in its dates
 * @param gpsWeek the GPS week in which the log starts, counted from 1980-01-06 without starting over; 0 unknown
 * @param counts the start that volumes and pulses count from
 * @param pulsesPerL pulses of a row's meter per liter; NaN if unknown
 * @param flowUnit the unit of flow columns without one in the header
 * @param notNeeded headers of columns that are not to be used, though their names say what they hold
 */
public record LogHints(
        @Nullable ZoneId zone,
        @Nullable LocalDate date,
        @Nullable DateOrder dateOrder,
        int gpsWeek,
        @Nullable Counts counts,
        double pulsesPerL,
        @Nullable Unit flowUnit,
        Set<String> notNeeded) {
    /** No hints. */
    public static final LogHints NONE = new LogHints(null, null, null, 0, null, Double.NaN, null, Set.of());

    /** Copies the set. */
    public LogHints {
        notNeeded = Set.copyOf(notNeeded);
    }

    /** The start that a volume or a number of pulses counts from. */
    public enum Counts {
        /** Since the previous record. */
        SINCE_LAST("since_last"),
        /** A running total. */
        TOTAL("total");

        private final String word;

        Counts(String word) {
            this.word = word;
        }

        /** As the rig file writes it. */
        public String word() {
            return word;
        }
    }

    /** The order of the parts of a numeric date. */
    public enum DateOrder {
        MONTH_DAY_YEAR("month-day-year"),
        DAY_MONTH_YEAR("day-month-year"),
        YEAR_MONTH_DAY("year-month-day");

        private final String word;

        DateOrder(String word) {
            this.word = word;
        }

        /** As the rig file writes it. */
        public String word() {
            return word;
        }
    }
}
