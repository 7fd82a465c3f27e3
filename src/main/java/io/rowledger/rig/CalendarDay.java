package io.rowledger.rig;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Days as people enter them: {@code 2026-06-02} (ISO 8601), {@code 6/2/2026} or {@code 2.6.2026}. */
final class CalendarDay {
    private static final Pattern ISO = Pattern.compile("(\\d{4})-(\\d{1,2})-(\\d{1,2})(?:[T ].*)?");
    private static final Pattern BY_SLASHES = Pattern.compile("(\\d{1,2})[/.](\\d{1,2})[/.](\\d{4})");
    /** Orchards and pastures are planted for decades, plans made for a few years. */
    private static final int MIN_YEAR = 1900;

    private static final int MAX_YEAR = 2100;

    private CalendarDay() {}

    /** True if a text has the form of a day that no calendar has; false for any other text. */
    static boolean isImpossible(String text) {
        Matcher iso = ISO.matcher(text.strip());
        if (iso.matches()) {
            return !exists(iso.group(1), iso.group(2), iso.group(3));
        }
        Matcher slashes = BY_SLASHES.matcher(text.strip());
        return slashes.matches()
                && !exists(slashes.group(3), slashes.group(1), slashes.group(2))
                && !exists(slashes.group(3), slashes.group(2), slashes.group(1));
    }

    private static boolean exists(String year, String month, String day) {
        try {
            LocalDate date = LocalDate.of(Integer.parseInt(year), Integer.parseInt(month), Integer.parseInt(day));
            return date.getYear() >= MIN_YEAR && date.getYear() <= MAX_YEAR;
        } catch (DateTimeException e) {
            return false;
        }
    }
}
