package io.rowledger.log.time;

import io.rowledger.log.source.NumberParser;
import java.time.DateTimeException;
import java.time.LocalDate;

/**
 * ISO 8601 dates with time of day, in extended or basic form: {@code 2026-05-14T10:00:00.1Z},
 * {@code 2026-05-14 10:00:00+02:00}, {@code 20260514T100000Z}, {@code 20260514100000}. A time without a zone is taken as UTC and counted. Keeps
 * the last day parsed, because a log has few days.
 */
public final class IsoTimestamps {
    private static final double SECONDS_PER_DAY = 86_400;
    /** Digits of 20260514100000, which no count since 1970 has: milliseconds have 13, microseconds 16. */
    private static final int DIGITS_TOGETHER = 14;

    private static final int MIN_YEAR = 1980;
    private static final int MAX_YEAR = 2100;

    private int lastDate;
    private double lastDateS = Double.NaN;
    private int zonelessTimes;
    private int at;

    /** Returns the number of times without a zone. */
    public int zonelessTimes() {
        return zonelessTimes;
    }

    /** Returns seconds since the Unix epoch, or NaN if the text is not such a time. */
    public double read(String text) {
        String t = text.strip();
        at = 0;
        int year = digits(t, 4);
        boolean extended = skip(t, '-');
        int month = digits(t, 2);
        if (extended && !skip(t, '-')) {
            return Double.NaN;
        }
        int day = digits(t, 2);
        boolean together = !extended && year >= MIN_YEAR && year < MAX_YEAR && isTogether(t);
        if (year < 0 || month < 0 || day < 0 || !(together || skip(t, 'T') || skip(t, 't') || skip(t, ' '))) {
            return Double.NaN;
        }
        int hour = digits(t, 2);
        boolean colons = skip(t, ':');
        int minute = digits(t, 2);
        int second = 0;
        if (colons ? skip(t, ':') : at < t.length() && isDigit(t.charAt(at))) {
            second = digits(t, 2);
        }
        if (hour < 0 || hour > 23 || minute < 0 || minute > 59 || second < 0 || second > 60) {
            return Double.NaN;
        }
        double fraction = skip(t, '.') || skip(t, ',') ? fraction(t) : 0;
        double zoneS = zone(t);
        double dateS = dateS(year, month, day);
        return dateS + hour * 3600 + minute * 60 + second - zoneS + fraction;
    }

    /** Returns true for a time that starts with 14 digits and no more. */
    private static boolean isTogether(String t) {
        int digits = 0;
        while (digits < t.length() && isDigit(t.charAt(digits))) {
            digits++;
        }
        return digits == DIGITS_TOGETHER;
    }

    private double dateS(int year, int month, int day) {
        int date = (year * 100 + month) * 100 + day;
        if (date != lastDate) {
            lastDate = date;
            try {
                lastDateS = LocalDate.of(year, month, day).toEpochDay() * SECONDS_PER_DAY;
            } catch (DateTimeException noSuchDay) {
                lastDateS = Double.NaN;
            }
        }
        return lastDateS;
    }

    /** Returns the offset from UTC, s; NaN if something else follows the time. */
    private double zone(String t) {
        if (at == t.length()) {
            zonelessTimes++;
            return 0;
        }
        skip(t, ' ');
        String rest = t.substring(at);
        if (rest.equals("Z") || rest.equals("z") || rest.equals("UTC") || rest.equals("GMT")) {
            return 0;
        }
        char sign = rest.isEmpty() ? '?' : rest.charAt(0);
        if (sign != '+' && sign != '-' && sign != '\u2212') {
            return Double.NaN;
        }
        at++;
        int hours = digits(t, 2);
        int minutes = 0;
        if (at < t.length()) {
            skip(t, ':');
            minutes = digits(t, 2);
        }
        if (hours < 0 || hours > 18 || minutes < 0 || minutes > 59 || at != t.length()) {
            return Double.NaN;
        }
        int seconds = hours * 3600 + minutes * 60;
        return sign == '+' ? seconds : -seconds;
    }

    private double fraction(String t) {
        int from = at;
        while (at < t.length() && isDigit(t.charAt(at))) {
            at++;
        }
        return from == at ? Double.NaN : NumberParser.parse("0." + t.substring(from, at), '.');
    }

    private int digits(String t, int count) {
        if (at + count > t.length()) {
            return -1;
        }
        int value = 0;
        for (int i = 0; i < count; i++) {
            char c = t.charAt(at + i);
            if (!isDigit(c)) {
                return -1;
            }
            value = value * 10 + (c - '0');
        }
        at += count;
        return value;
    }

    private boolean skip(String t, char c) {
        if (at < t.length() && t.charAt(at) == c) {
            at++;
            return true;
        }
        return false;
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }
}
