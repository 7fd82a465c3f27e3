package io.rowledger.units;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * Formats SI values as text: converted, rounded by {@link QuantityKind}, with thousands separators and U+2212 for minus,
 * in one unit system, time zone and language, independent of the default locale. Values that are not finite read
 * {@link #unknown}. Numbers, dates and unit symbols are the same in every language: rigs in the United States show them so.
 *
 * @param system the units
 * @param zone the zone of printed times
 * @param language of the few words beside the numbers, English or Spanish
 */
public record UnitFormat(UnitSystem system, ZoneId zone, Locale language) {
    /** Text for an unknown value in English. */
    public static final String UNKNOWN = FormatWords.ENGLISH.unknown();

    /** Earliest time that is a date, 1980-01-06 (start of GPS time), s since 1970. */
    private static final double MIN_EPOCH_S = 315_964_800;

    /** Bounds whose center is within this fraction of their half width of the value are printed as plus or minus. */
    private static final double MAX_ASYMMETRY = 0.15;
    /** Relative rounding error that sums and quotients of doubles may have. */
    private static final double ROUNDING = 1e-9;
    /** Largest number of decimals of a value with bounds. */
    private static final int MAX_PLACES = 3;

    /** U+2212 MINUS SIGN, as wide as the digits. */
    private static final char MINUS = '\u2212';
    /** Keeps a number and its unit on one line. */
    private static final char NO_BREAK_SPACE = '\u00a0';

    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("uuuu-MM-dd", Locale.ROOT);
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);
    private static final DateTimeFormatter CLOCK_12 = DateTimeFormatter.ofPattern("h:mm:ss\u00a0a", Locale.ROOT);
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter MINUTE_12 = DateTimeFormatter.ofPattern("h:mm\u00a0a", Locale.ROOT);

    /** English words. */
    public UnitFormat(UnitSystem system, ZoneId zone) {
        this(system, zone, Locale.ENGLISH);
    }

    /** Returns the same units and zone with words of another language. */
    public UnitFormat in(Locale other) {
        return new UnitFormat(system, zone, other);
    }

    private FormatWords words() {
        return FormatWords.of(language);
    }

    /** Returns the text for an unknown value: {@code not known} in English. */
    public String unknown() {
        return words().unknown();
    }

    /** Returns whether a text is that of an unknown value, in any language. */
    public static boolean isUnknown(String text) {
        return FormatWords.isUnknown(text);
    }

    /** Returns number and unit: {@code 12.34 ac}. */
    public String text(QuantityKind kind, double si) {
        return Double.isFinite(si) ? number(kind, si) + NO_BREAK_SPACE + kind.unit(system) : unknown();
    }

    /** Returns the number alone, for columns whose heading names the unit. */
    public String number(QuantityKind kind, double si) {
        double value = kind.from(si, system);
        return fixed(value, kind.decimals(value));
    }

    /** Returns the unit symbol. */
    public String unit(QuantityKind kind) {
        return kind.unit(system);
    }

    /**
     * Returns number and unit, rounded to the last place of {@link #bounds}: {@code 61.3 ac} for a half width of 0.4 ac.
     * Without finite bounds the same as {@link #text}.
     */
    public String valueWithin(QuantityKind kind, double si, double lowSi, double highSi) {
        if (!Double.isFinite(si) || !bounded(lowSi, highSi)) {
            return text(kind, si);
        }
        return fixed(kind.from(si, system), places(kind, lowSi, highSi)) + NO_BREAK_SPACE + kind.unit(system);
    }

    /**
     * Returns the bounds of a value: {@code ± 0.4 ac} if they are nearly symmetric about it, else {@code 60.8 to 61.5 ac};
     * rounded outward, to one digit of the half width, or two if the first is a 1 (JCGM 100:2008, 7.2.6: at most two
     * digits, rounded up rather than down). Empty without finite bounds.
     */
    public String bounds(QuantityKind kind, double si, double lowSi, double highSi) {
        if (!Double.isFinite(si) || !bounded(lowSi, highSi)) {
            return "";
        }
        int places = places(kind, lowSi, highSi);
        String unit = NO_BREAK_SPACE + kind.unit(system);
        double half = kind.from(highSi - lowSi, system) / 2;
        double aside = Math.abs(kind.from((lowSi + highSi) / 2 - si, system));
        if (aside <= MAX_ASYMMETRY * half) {
            return "\u00b1" + NO_BREAK_SPACE + fixed(outward(half, places, RoundingMode.UP), places) + unit;
        }
        return fixed(outward(kind.from(lowSi, system), places, RoundingMode.FLOOR), places)
                + " " + words().to() + " "
                + fixed(outward(kind.from(highSi, system), places, RoundingMode.CEILING), places)
                + unit;
    }

    /** Returns value and bounds with one unit: {@code 61.3 ± 0.4 ac}. */
    public String within(QuantityKind kind, double si, double lowSi, double highSi) {
        String value = valueWithin(kind, si, lowSi, highSi);
        String bounds = bounds(kind, si, lowSi, highSi);
        if (bounds.startsWith("\u00b1")) {
            return value.substring(0, value.lastIndexOf(NO_BREAK_SPACE + kind.unit(system))) + NO_BREAK_SPACE + bounds;
        }
        return bounds.isEmpty() ? value : value + " (" + bounds + ")";
    }

    private static boolean bounded(double low, double high) {
        return Double.isFinite(low) && Double.isFinite(high) && high > low;
    }

    /** Returns the number of decimals that the bounds leave significant, negative for tens. */
    private int places(QuantityKind kind, double lowSi, double highSi) {
        double half = kind.from(highSi - lowSi, system) / 2;
        int exponent = (int) Math.floor(Math.log10(half));
        int places = half / Math.pow(10, exponent) < 2 - ROUNDING ? 1 - exponent : -exponent;
        return Math.min(places, MAX_PLACES);
    }

    /** Rounds in the given direction, after removing the rounding error of the double itself. */
    private static double outward(double value, int places, RoundingMode way) {
        double spare = Math.abs(value) * ROUNDING * (way == RoundingMode.FLOOR ? 1 : -1);
        return BigDecimal.valueOf(value + spare).setScale(places, way).doubleValue();
    }

    /** Returns an area with its unit: as {@link QuantityKind#PATCH} below a tenth of an acre or hectare. */
    public String anyArea(double areaM2) {
        return areaBeside(areaM2, areaM2);
    }

    /**
     * Returns an area in the unit that suits the largest area beside it, so that a sentence or column has one unit.
     */
    public String areaBeside(double areaM2, double largestM2) {
        return areaIn(kindBeside(areaM2, largestM2), areaM2);
    }

    /** Returns the kind that {@link #areaBeside} uses. */
    public QuantityKind kindBeside(double areaM2, double largestM2) {
        boolean patches = Math.max(areaM2, largestM2) < QuantityKind.AREA.toSi(0.1, system);
        return patches ? QuantityKind.PATCH : QuantityKind.AREA;
    }

    private String areaIn(QuantityKind kind, double areaM2) {
        double value = kind.from(areaM2, system);
        boolean patch = kind == QuantityKind.PATCH;
        if (value > 0 && value < (patch ? 1 : 0.001)) {
            return "<" + NO_BREAK_SPACE + (patch ? "1" : "0.001") + NO_BREAK_SPACE + kind.unit(system);
        }
        // Below a tenth of an acre two decimals would leave one significant digit.
        boolean thirdDecimal = !patch && value > 0 && value < 0.1;
        return thirdDecimal ? fixed(value, 3) + NO_BREAK_SPACE + kind.unit(system) : text(kind, areaM2);
    }

    /** Returns {@code 4.2%}. */
    public String percent(double percent) {
        return Double.isFinite(percent) ? fixed(percent, 1) + "%" : unknown();
    }

    /** Returns {@code +4.2%} or {@code −4.2%}, always with a sign unless it rounds to zero. */
    public String signedPercent(double percent) {
        if (!Double.isFinite(percent)) {
            return unknown();
        }
        String figure = fixed(percent, 1);
        boolean plus = percent > 0 && !"0.0".equals(figure);
        return (plus ? "+" : "") + figure + "%";
    }

    /** Returns a whole number with thousands separators. */
    public String count(long n) {
        return fixed((double) n, 0);
    }

    /**
     * Returns a number with a fixed count of decimals, thousands separated by commas. Rounds the shortest decimal
     * representation of the double, half away from zero: 0.285 becomes 0.29.
     */
    public String fixed(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return unknown();
        }
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
        String plain = rounded.abs().toPlainString();
        int point = plain.indexOf('.');
        StringBuilder out = new StringBuilder(plain);
        for (int i = (point < 0 ? plain.length() : point) - 3; i > 0; i -= 3) {
            out.insert(i, ',');
        }
        if (rounded.signum() < 0) {
            out.insert(0, MINUS);
        }
        return out.toString();
    }

    /** Returns {@code 60 °F} or {@code 15.6 °C} for a temperature in degrees Celsius. */
    public String temperature(double celsius) {
        boolean us = system == UnitSystem.US;
        double value = us ? Temperature.fahrenheit(celsius) : celsius;
        return Double.isFinite(celsius)
                ? fixed(value, us ? 0 : 1) + NO_BREAK_SPACE + (us ? "\u00b0F" : "\u00b0C")
                : unknown();
    }

    /** Returns {@code 3 h 25 min}, {@code 12 min 5 s} or {@code 8 s}. */
    public String duration(double seconds) {
        if (!Double.isFinite(seconds)) {
            return unknown();
        }
        long s = Math.round(seconds);
        if (s < 60) {
            return s + "" + NO_BREAK_SPACE + "s";
        }
        if (s < 3600) {
            return s / 60 + "" + NO_BREAK_SPACE + "min" + NO_BREAK_SPACE + s % 60 + NO_BREAK_SPACE + "s";
        }
        long min = Math.round(s / 60.0);
        return min / 60 + "" + NO_BREAK_SPACE + "h" + NO_BREAK_SPACE + min % 60 + NO_BREAK_SPACE + "min";
    }

    /** Returns the local date of an instant in epoch seconds as files keep it: {@code 2026-06-14}. */
    public String date(double epochS) {
        return isKnown(epochS) ? DATE.format(local(epochS)) : absent(epochS);
    }

    /** Returns the local date for people: {@code June 14, 2026} beside US units, {@code 2026-06-14} beside metric ones. */
    public String day(double epochS) {
        return isKnown(epochS) && system == UnitSystem.US
                ? words().day(local(epochS).toLocalDate())
                : date(epochS);
    }

    /** Returns the local time of day: {@code 2:15:30 PM} beside US units, {@code 14:15:30} beside metric ones. */
    public String clock(double epochS) {
        return isKnown(epochS) ? (twelveHours() ? CLOCK_12 : CLOCK).format(local(epochS)) : absent(epochS);
    }

    /** Returns the local time of day, truncated to the minute: {@code 2:15 PM} or {@code 14:15}. */
    public String minute(double epochS) {
        return isKnown(epochS) ? (twelveHours() ? MINUTE_12 : MINUTE).format(local(epochS)) : absent(epochS);
    }

    /** Returns the local date and minute: {@code June 14, 2026, 2:15 PM} or {@code 2026-06-14 14:15}. */
    public String dateAndTime(double epochS) {
        return isKnown(epochS) ? day(epochS) + (system == UnitSystem.US ? ", " : " ") + minute(epochS) : absent(epochS);
    }

    /** Returns the same for narrow columns and axes: {@code Jun 14, 2:15 PM} or {@code 2026-06-14 14:15}. */
    public String shortDateAndTime(double epochS) {
        return isKnown(epochS) && system == UnitSystem.US
                ? words().shortDay(local(epochS).toLocalDate()) + ", " + minute(epochS)
                : dateAndTime(epochS);
    }

    /** Returns true if two instants lie on one local day; also if a log has no dates. */
    public boolean sameDay(double epochS, double otherS) {
        return date(epochS).equals(date(otherS));
    }

    private boolean twelveHours() {
        return system == UnitSystem.US;
    }

    /**
     * Returns {@code 44.123456, -93.123456}: degrees WGS 84, latitude first, to a decimeter. Minus is a hyphen here,
     * because the text is meant to be pasted into a phone.
     */
    public String place(double latDeg, double lonDeg) {
        if (!Double.isFinite(latDeg) || !Double.isFinite(lonDeg)) {
            return unknown();
        }
        return (fixed(latDeg, 6) + ", " + fixed(lonDeg, 6)).replace(MINUS, '-');
    }

    /** Returns the nearest of the eight compass points. */
    public String compass(double headingRad) {
        return Double.isFinite(headingRad)
                ? words().compass().get(Math.floorMod(Math.round(headingRad / (Math.PI / 4)), 8))
                : unknown();
    }

    /** Times before GPS time began only keep records in order: the log has no dates. */
    public static boolean isKnown(double epochS) {
        return epochS >= MIN_EPOCH_S && epochS < Double.POSITIVE_INFINITY;
    }

    private String absent(double epochS) {
        return Double.isFinite(epochS) ? words().notInFile() : unknown();
    }

    private ZonedDateTime local(double epochS) {
        return Instant.ofEpochMilli(Math.round(epochS * 1000)).atZone(zone);
    }
}
