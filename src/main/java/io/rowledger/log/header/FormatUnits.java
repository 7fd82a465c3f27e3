package io.rowledger.log.header;

import io.rowledger.log.header.LogHints.DateOrder;
import java.util.Locale;
import java.util.regex.Pattern;

/** Ways of writing a time or an angle that stand in a header where other columns have a unit. */
public final class FormatUnits {
    /** Degrees and minutes run together, as NMEA 0183 sentences have them: DDMM.mmmm. */
    public static final String DEGREES_MINUTES = "ddmm.mmmm";
    /** Hours, minutes and seconds run together, as NMEA 0183 sentences have them. */
    public static final String HOURS_MINUTES_SECONDS = "hhmmss";

    private static final Pattern DDMM = Pattern.compile("d{2,3}m{2}(?:[.,]m*)?|nmea");
    private static final Pattern HHMMSS = Pattern.compile("hhmmss(?:[.,]s*)?|nmea");

    private FormatUnits() {}

    static boolean isDegreesMinutes(String text) {
        return DDMM.matcher(plain(text)).matches();
    }

    /** The form of a time column: hhmmss, the order of its date, or nothing. */
    static String time(String text) {
        return HHMMSS.matcher(plain(text)).matches() ? HOURS_MINUTES_SECONDS : date(text);
    }

    /** The order of a date as the header shows it, such as mm/dd/yyyy; empty where it shows none. */
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
