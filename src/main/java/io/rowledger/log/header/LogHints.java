package io.rowledger.log.header;

import io.rowledger.units.Unit;
import java.time.LocalDate;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/**
 * What nobody can tell from a log alone: the {@code log:} block of the rig file. Each is null (or not a number) where
 * the rig file does not say it; then the program asks instead of guessing.
 *
 * @param zone the zone of times written without one
 * @param date the day on which a log starts that has times of day only
 * @param dateOrder the order of day, month and year in its dates
 * @param gpsWeek the GPS week in which the log starts, counted from 1980-01-06 without starting over; 0 unknown
 * @param counts what volumes and pulses count from
 * @param pulsesPerL pulses of a row's meter for each litre; NaN unknown
 * @param flowUnit the unit of flow columns whose headers have none
 */
public record LogHints(
        @Nullable ZoneId zone,
        @Nullable LocalDate date,
        @Nullable DateOrder dateOrder,
        int gpsWeek,
        @Nullable Counts counts,
        double pulsesPerL,
        @Nullable Unit flowUnit) {
    /** Nothing said. */
    public static final LogHints NONE = new LogHints(null, null, null, 0, null, Double.NaN, null);

    /** What a volume or a number of pulses counts from. */
    public enum Counts {
        /** From the record before. */
        SINCE_LAST("since_last"),
        /** From some start, rising all the time. */
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

    /** The order in which a date is written in figures. */
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
