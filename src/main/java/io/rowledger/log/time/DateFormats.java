package io.rowledger.log.time;

import io.rowledger.log.header.LogHints.DateOrder;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Parses dates in a given order of their parts. */
final class DateFormats {
    private static final Pattern PARTS = Pattern.compile("\\d+|\\p{L}+");
    private static final Pattern TIME_BEHIND = Pattern.compile("[ T]\\s*\\d{1,2}:\\d{2}.*$");
    private static final List<String> MONTHS =
            List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec");
    /** Digits of a spreadsheet's day number. */
    private static final int SERIAL_DIGITS = 5;

    /** A first part of so many digits is a year in every order. */
    private static final int YEAR_DIGITS = 4;

    /** First year of GPS time. */
    private static final int MIN_YEAR = 1980;

    private static final int MAX_YEAR = 2100;

    private DateFormats() {}

    /** Returns the date, or null if the text is not a date in this order. */
    static @Nullable LocalDate read(String text, DateOrder order) {
        List<String> numbers = new ArrayList<>();
        int month = 0;
        int monthAt = -1;
        Matcher parts = PARTS.matcher(TIME_BEHIND.matcher(text).replaceFirst(""));
        while (parts.find()) {
            String part = parts.group();
            if (part.charAt(0) >= '0' && part.charAt(0) <= '9') {
                numbers.add(part);
            } else if (part.length() >= 3) {
                int named = MONTHS.indexOf(part.substring(0, 3).toLowerCase(Locale.ROOT)) + 1;
                if (named > 0) {
                    month = named;
                    monthAt = numbers.size();
                }
            }
        }
        if (monthAt >= 0) {
            return numbers.size() == 2 ? named(numbers, month, order) : null;
        }
        if (numbers.size() == 1 && numbers.get(0).length() == SERIAL_DIGITS) {
            return SerialDates.date(Integer.parseInt(numbers.get(0)));
        }
        if (numbers.size() == 1) {
            return runTogether(numbers.get(0), order);
        }
        return numbers.size() == 3 ? ordered(numbers, order) : null;
    }

    private static @Nullable LocalDate named(List<String> numbers, int month, DateOrder order) {
        boolean yearFirst = order == DateOrder.YEAR_MONTH_DAY;
        return date(numbers.get(yearFirst ? 0 : 1), month, number(numbers.get(yearFirst ? 1 : 0)));
    }

    private static @Nullable LocalDate runTogether(String digits, DateOrder order) {
        int n = digits.length();
        if (n != 6 && n != 8) {
            return null;
        }
        int year = n - 4;
        return switch (order) {
            case YEAR_MONTH_DAY ->
                date(
                        digits.substring(0, year),
                        number(digits.substring(year, year + 2)),
                        number(digits.substring(year + 2)));
            case MONTH_DAY_YEAR ->
                date(digits.substring(4), number(digits.substring(0, 2)), number(digits.substring(2, 4)));
            case DAY_MONTH_YEAR ->
                date(digits.substring(4), number(digits.substring(2, 4)), number(digits.substring(0, 2)));
        };
    }

    private static @Nullable LocalDate ordered(List<String> n, DateOrder order) {
        if (n.get(0).length() == YEAR_DIGITS) {
            return date(n.get(0), number(n.get(1)), number(n.get(2)));
        }
        return switch (order) {
            case YEAR_MONTH_DAY -> date(n.get(0), number(n.get(1)), number(n.get(2)));
            case MONTH_DAY_YEAR -> date(n.get(2), number(n.get(0)), number(n.get(1)));
            case DAY_MONTH_YEAR -> date(n.get(2), number(n.get(1)), number(n.get(0)));
        };
    }

    private static @Nullable LocalDate date(String yearDigits, int month, int day) {
        if (yearDigits.length() != 2 && yearDigits.length() != 4) {
            return null;
        }
        int year = yearDigits.length() == 2 ? 2000 + number(yearDigits) : number(yearDigits);
        if (year < MIN_YEAR || year > MAX_YEAR) {
            return null;
        }
        try {
            return LocalDate.of(year, month, day);
        } catch (DateTimeException noSuchDay) {
            return null;
        }
    }

    /** Returns the number, or {@link Integer#MAX_VALUE} if it has more than four digits. */
    private static int number(String digits) {
        return digits.length() > 4 ? Integer.MAX_VALUE : Integer.parseInt(digits);
    }
}
