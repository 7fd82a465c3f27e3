package io.rowledger.log.time;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Day numbers of spreadsheets: days since 1899-12-30, with the time of day as a fraction (ECMA-376 part 1, 18.17.4.1, the
 * 1900 date base from 1900-03-01 on). By hand: 46156.5 is 2026-05-14 at noon.
 */
final class SerialDates {
    private static final LocalDate EPOCH = LocalDate.of(1899, 12, 30);
    /** 1980-01-06. */
    private static final double MIN_DAY = 29_226;
    /** 2100-01-01. */
    private static final double MAX_DAY = 73_051;
    /** Longest median step between records, days: 15 min; seconds from a start rise faster. */
    private static final double MAX_STEP_DAYS = 0.0105;

    private SerialDates() {}

    /** Returns the date of a day number; null if it is not of the years 1980 to 2099. */
    static @Nullable LocalDate date(double day) {
        return day >= MIN_DAY && day < MAX_DAY ? EPOCH.plusDays((long) day) : null;
    }

    /** Returns local seconds since 1970 of a day number, to the millisecond; NaN if it is no such day. */
    static double localS(double day) {
        LocalDate date = date(day);
        double secondS = Math.rint((day - Math.floor(day)) * 86_400_000) / 1000;
        return date == null ? Double.NaN : date.toEpochDay() * 86_400.0 + secondS;
    }

    /** Returns true if the numbers are day numbers that rise by at most minutes. */
    static boolean are(List<Double> numbers) {
        double[] steps = new double[Math.max(0, numbers.size() - 1)];
        boolean fraction = false;
        for (int i = 0; i < numbers.size(); i++) {
            double day = numbers.get(i);
            if (!(day >= MIN_DAY && day < MAX_DAY)) {
                return false;
            }
            fraction |= day != Math.rint(day);
            if (i > 0) {
                steps[i - 1] = day - numbers.get(i - 1);
            }
        }
        Arrays.sort(steps);
        return fraction && steps.length > 0 && steps[steps.length / 2] <= MAX_STEP_DAYS;
    }

    /** Returns true if the numbers are times of day as fractions of a day. */
    static boolean areFractions(List<Double> numbers) {
        boolean fraction = false;
        for (double number : numbers) {
            if (!(number >= 0 && number < 1)) {
                return false;
            }
            fraction |= number > 0;
        }
        return fraction;
    }
}
