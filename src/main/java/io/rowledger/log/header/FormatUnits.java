package io.rowledger.log.header;

import io.rowledger.log.header.LogHints.DateOrder;
import java.util.Locale;
import java.util.regex.Pattern;

/** Formats of times and angles that stand in a header where other columns have a unit. */
public final class FormatUnits {
    /** Degrees and minutes as in NMEA 0183: DDMM.mmmm. */
    public static final String DEGREES_MINUTES = "ddmm.mmmm";
    /** Hours, minutes and seconds as in NMEA 0183: hhmmss. */
    public static final String HOURS_MINUTES_SECONDS = "hhmmss";

    private static final Pattern DDMM = Pattern.compile("d{2,3}m{2}(?:[.,]m*)?|nmea");
    private static final Pattern HHMMSS = Pattern.compile("hhmmss(?:[.,]s*)?|nmea");

    private FormatUnits() {}

    static boolean isDegreesMinutes(String text) {
        return DDMM.matcher(plain(text)).matches();
    }

    /** Returns the format of a time column: hhmmss, the order of its date, or empty. */
    static String time(String text) {
        return HHMMSS.matcher(plain(text)).matches() ? HOURS_MINUTES_SECONDS : date(text);
    }

    /** Returns the date order from a header such as mm/dd/yyyy; empty if it shows none. */
    static String date(String text) {
        String order = "";
        for (char c : plain(text).toCharArray()) {
            if (c == 'h') {
                break;
            }
            if (Character.isLetter(c) && "ymd".indexOf(c) < 0) {
                return "";
            }
            if ("ymd".indexOf(c) >= 0 && order.indexOf(c) < 0) {
                order += c;
            }
        }
        return switch (order) {
            case "mdy" -> DateOrder.MONTH_DAY_YEAR.word();
            case "dmy" -> DateOrder.DAY_MONTH_YEAR.word();
            case "ymd" -> DateOrder.YEAR_MONTH_DAY.word();
            default -> "";
        };
    }

    private static String plain(String text) {
        return text.strip().toLowerCase(Locale.ROOT);
    }
}
