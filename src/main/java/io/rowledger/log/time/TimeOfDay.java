package io.rowledger.log.time;

import io.rowledger.log.source.NumberParser;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Parses times of day; holds the last one parsed. */
final class TimeOfDay {
    private static final Pattern CLOCK = Pattern.compile("(\\d{1,2}):(\\d{2})(?::(\\d{2})(?:[.,](\\d{1,12}))?)?"
            + "\\s*(?:([AaPp])(?:\\.?[Mm]\\.?)?(?![A-Z]))?\\s*(" + ZoneLetters.PATTERN + ")?");
    private static final Pattern RUN_TOGETHER = Pattern.compile("(\\d{1,6})(?:[.,](\\d{0,12}))?");
    private static final int NOON_H = 12;

    private double secondS = Double.NaN;
    private double offsetS = Double.NaN;
    private String letters = "";

    /** Returns seconds since midnight. */
    double secondS() {
        return secondS;
    }

    /** Returns the written offset from UTC, s; NaN if there is none. */
    double offsetS() {
        return offsetS;
    }

    /** Returns the zone letters as written, such as CDT; empty if there are none. */
    String letters() {
        return letters;
    }

    /** Parses "10:00:00.2", "10:00:00 PM", "10:00:00Z"; returns false if the text is not such a time. */
    boolean read(String text) {
        Matcher m = CLOCK.matcher(text);
        if (!m.matches()) {
            return false;
        }
        int hour = Integer.parseInt(m.group(1));
        String half = m.group(5);
        if (half != null) {
            if (hour < 1 || hour > NOON_H) {
                return false;
            }
            hour = hour % NOON_H + (half.toLowerCase(Locale.ROOT).equals("p") ? NOON_H : 0);
        }
        String zone = m.group(6);
        offsetS = zone == null ? Double.NaN : ZoneLetters.offsetS(zone);
        letters = zone == null || Double.isNaN(offsetS) || zone.length() < 3 || !Character.isLetter(zone.charAt(2))
                ? ""
                : zone;
        if (zone != null && Double.isNaN(offsetS)) {
            return false;
        }
        return set(
                hour, Integer.parseInt(m.group(2)), m.group(3) == null ? 0 : Integer.parseInt(m.group(3)), m.group(4));
    }

    /** Parses "100000.20", with or without leading zeros; returns false if the text is not such a time. */
    boolean readRunTogether(String text) {
        Matcher m = RUN_TOGETHER.matcher(text);
        if (!m.matches()) {
            return false;
        }
        int digits = Integer.parseInt(m.group(1));
        offsetS = Double.NaN;
        return set(digits / 10_000, digits / 100 % 100, digits % 100, m.group(2));
    }

    private boolean set(int hour, int minute, int second, String fraction) {
        if (hour > 23 || minute > 59 || second > 60) {
            return false;
        }
        double part = fraction == null || fraction.isEmpty() ? 0 : NumberParser.parse("0." + fraction, '.');
        secondS = hour * 3600 + minute * 60 + second + part;
        return true;
    }
}
