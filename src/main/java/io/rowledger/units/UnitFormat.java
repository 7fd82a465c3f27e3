package io.rowledger.units;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * Figures as people read them: rounded to what means something, with a real minus sign, in one unit system and one time
 * zone, never in the machine's locale. A figure that isn't known (NaN) reads {@value #UNKNOWN}.
 *
 * @param system the units
 * @param zone the zone of printed times
 */
public record UnitFormat(UnitSystem system, ZoneId zone) {
    /** What stands where a figure isn't known. */
    public static final String UNKNOWN = "not known";

    /** Bounds that are even within this share of their half width are printed as plus or minus. */
    private static final double EVEN = 0.15;
    /** What sums and quotients of doubles may be off, relatively. */
    private static final double ROUNDING = 1e-9;
    /** More decimals than this nobody reads. */
    private static final int MAX_PLACES = 3;

    /** U+2212; a hyphen is too short beside figures. */
    private static final char MINUS = '\u2212';
    /** Keeps a figure and its unit on one line. */
    private static final char NO_BREAK_SPACE = '\u00a0';

    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("uuuu-MM-dd", Locale.ROOT);
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter DATE_AND_MINUTE =
            DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

    /** Figure and unit: {@code 12.34 ac}. */
    public String text(Measure measure, double si) {
        return Double.isFinite(si) ? number(measure, si) + NO_BREAK_SPACE + measure.unit(system) : UNKNOWN;
    }

    /** The figure alone, for columns whose heading names the unit. */
    public String number(Measure measure, double si) {
        double value = measure.from(si, system);
        return fixed(value, measure.decimals(value));
    }

    /** The unit's sign. */
    public String unit(Measure measure) {
        return measure.unit(system);
    }

    /**
     * A figure and unit without the digits its interval denies: {@code 61.3 ac} where it may be off by 0.4. The last place
     * is that of {@link #bounds}. Without bounds as {@link #text}.
     */
    public String valueWithin(Measure measure, double si, double lowSi, double highSi) {
        if (!Double.isFinite(si) || !bounded(lowSi, highSi)) {
            return text(measure, si);
        }
        return fixed(measure.from(si, system), places(measure, lowSi, highSi)) + NO_BREAK_SPACE + measure.unit(system);
    }

    /**
     * What stands beside such a figure: {@code ± 0.4 ac} where the bounds lie evenly about it, else {@code 60.8 to 61.5 ac};
     * rounded outward, to one digit of the half width, or two where the first is a 1 (JCGM 100:2008, 7.2.6: two at most, and
     * rather up than down). Empty without bounds.
     */
    public String bounds(Measure measure, double si, double lowSi, double highSi) {
        if (!Double.isFinite(si) || !bounded(lowSi, highSi)) {
            return "";
        }
        int places = places(measure, lowSi, highSi);
        String unit = NO_BREAK_SPACE + measure.unit(system);
        double half = measure.from(highSi - lowSi, system) / 2;
        double aside = Math.abs(measure.from((lowSi + highSi) / 2 - si, system));
        if (aside <= EVEN * half) {
            return "\u00b1" + NO_BREAK_SPACE + fixed(outward(half, places, RoundingMode.UP), places) + unit;
        }
        return fixed(outward(measure.from(lowSi, system), places, RoundingMode.FLOOR), places)
                + " to "
                + fixed(outward(measure.from(highSi, system), places, RoundingMode.CEILING), places)
                + unit;
    }

    /** Figure and bounds in one: {@code 61.3 ac ± 0.4 ac} reads {@code 61.3 ± 0.4 ac}. */
    public String within(Measure measure, double si, double lowSi, double highSi) {
        String value = valueWithin(measure, si, lowSi, highSi);
        String bounds = bounds(measure, si, lowSi, highSi);
        if (bounds.startsWith("\u00b1")) {
            return value.substring(0, value.lastIndexOf(NO_BREAK_SPACE + measure.unit(system)))
                    + NO_BREAK_SPACE
                    + bounds;
        }
        return bounds.isEmpty() ? value : value + " (" + bounds + ")";
    }

    private static boolean bounded(double low, double high) {
        return Double.isFinite(low) && Double.isFinite(high) && high > low;
    }

    /** Decimals the bounds leave a meaning, negative for tens. */
    private int places(Measure measure, double lowSi, double highSi) {
        double half = measure.from(highSi - lowSi, system) / 2;
        int exponent = (int) Math.floor(Math.log10(half));
        int places = half / Math.pow(10, exponent) < 2 - ROUNDING ? 1 - exponent : -exponent;
        return Math.min(places, MAX_PLACES);
    }

    /** Rounded that way, but not for what is only the rounding of the double itself. */
    private static double outward(double value, int places, RoundingMode way) {
        double spare = Math.abs(value) * ROUNDING * (way == RoundingMode.FLOOR ? 1 : -1);
        return BigDecimal.valueOf(value + spare).setScale(places, way).doubleValue();
    }

    /** An area of any size, in the unit that keeps it readable: patches below a tenth of an acre or hectare. */
    public String anyArea(double areaM2) {
        return areaBeside(areaM2, areaM2);
    }

    /**
     * An area that stands beside a larger one, in the unit that suits the larger: a sentence or a column speaks of acres
     * or of square feet and not of both.
     */
    public String areaBeside(double areaM2, double largestM2) {
        return areaIn(measureBeside(areaM2, largestM2), areaM2);
    }

    /** What such an area is written in. */
    public Measure measureBeside(double areaM2, double largestM2) {
        boolean patches = Math.max(areaM2, largestM2) < Measure.AREA.toSi(0.1, system);
        return patches ? Measure.PATCH : Measure.AREA;
    }

    /** An area in square feet or square metres however large: for lists that hold both a strip and a corner. */
    public String patch(double areaM2) {
        return areaIn(Measure.PATCH, areaM2);
    }

    private String areaIn(Measure measure, double areaM2) {
        double value = measure.from(areaM2, system);
        boolean patch = measure == Measure.PATCH;
        if (value > 0 && value < (patch ? 1 : 0.001)) {
            return "<" + NO_BREAK_SPACE + (patch ? "1" : "0.001") + NO_BREAK_SPACE + measure.unit(system);
        }
        // Below a tenth of an acre two decimals would leave one digit.
        boolean thirdDecimal = !patch && value > 0 && value < 0.1;
        return thirdDecimal ? fixed(value, 3) + NO_BREAK_SPACE + measure.unit(system) : text(measure, areaM2);
    }

    /** {@code 4.2%}. */
    public String percent(double percent) {
        return Double.isFinite(percent) ? fixed(percent, 1) + "%" : UNKNOWN;
    }

    /** {@code +4.2%} or {@code −4.2%}: a deviation always shows its sign. */
    public String signedPercent(double percent) {
        if (!Double.isFinite(percent)) {
            return UNKNOWN;
        }
        String figure = fixed(percent, 1);
        boolean plus = percent > 0 && !"0.0".equals(figure);
        return (plus ? "+" : "") + figure + "%";
    }

    /** A whole number with thousands marked. */
    public String count(long n) {
        return fixed((double) n, 0);
    }

    /**
     * A number with so many decimals, half away from zero, thousands marked by commas. Rounds the shortest decimal that
     * names the double, so 0.285 becomes 0.29 as on paper.
     */
    public String fixed(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return UNKNOWN;
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

    /** {@code 60 °F}: whole degrees Fahrenheit, tenths of a degree Celsius, from degrees Celsius. */
    public String temperature(double celsius) {
        boolean us = system == UnitSystem.US;
        double value = us ? Temperature.fahrenheit(celsius) : celsius;
        return Double.isFinite(celsius)
                ? fixed(value, us ? 0 : 1) + NO_BREAK_SPACE + (us ? "\u00b0F" : "\u00b0C")
                : UNKNOWN;
    }

    /** {@code 3 h 25 min}, {@code 12 min 5 s}, {@code 8 s}. */
    public String duration(double seconds) {
        if (!Double.isFinite(seconds)) {
            return UNKNOWN;
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

    /** Local date of an instant in epoch seconds: {@code 2026-06-14}. */
    public String date(double epochS) {
        return Double.isFinite(epochS) ? DATE.format(local(epochS)) : UNKNOWN;
    }

    /** Local time of day: {@code 08:15:30}. */
    public String clock(double epochS) {
        return Double.isFinite(epochS) ? CLOCK.format(local(epochS)) : UNKNOWN;
    }

    /** Local time of day to the minute that has begun: {@code 08:15}. */
    public String minute(double epochS) {
        return Double.isFinite(epochS) ? MINUTE.format(local(epochS)) : UNKNOWN;
    }

    /** Local date and minute: {@code 2026-06-14 08:15}. */
    public String dateAndTime(double epochS) {
        return Double.isFinite(epochS) ? DATE_AND_MINUTE.format(local(epochS)) : UNKNOWN;
    }

    /**
     * {@code 44.123456, -93.123456}: degrees WGS 84, latitude first, to a decimetre. The one place with a plain hyphen
     * for minus, because it is there to be typed or pasted into a phone.
     */
    public String place(double latDeg, double lonDeg) {
        if (!Double.isFinite(latDeg) || !Double.isFinite(lonDeg)) {
            return UNKNOWN;
        }
        return (fixed(latDeg, 6) + ", " + fixed(lonDeg, 6)).replace(MINUS, '-');
    }

    /** The nearest of the eight compass points. */
    public static String compass(double headingRad) {
        if (!Double.isFinite(headingRad)) {
            return UNKNOWN;
        }
        String[] points = {"N", "NE", "E", "SE", "S", "SW", "W", "NW"};
        return points[Math.floorMod(Math.round(headingRad / (Math.PI / 4)), 8)];
    }

    private ZonedDateTime local(double epochS) {
        return Instant.ofEpochMilli(Math.round(epochS * 1000)).atZone(zone);
    }
}
