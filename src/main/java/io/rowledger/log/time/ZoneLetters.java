package io.rowledger.log.time;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Offsets from UTC that a time states: {@code Z}, {@code +02:00}, {@code UTC-5}, {@code CDT}.
 *
 * <p>The letters are those of the zones of the United States and Canada (49 CFR part 71; NIST, "Time zones and daylight
 * saving time", from memory) and of Central Europe. Letters that several zones share (BST, IST, AST, CST in China) are
 * not read, except CST, whose longitude tells.
 */
final class ZoneLetters {
    /** What may follow a time of day. */
    static final String PATTERN = "Z|z|(?:UTC|GMT)?\\s*[+\\-\\u2212]\\d{1,2}(?::?\\d{2})?|UTC|GMT|[A-Z]{3,4}";

    private static final Pattern OFFSET = Pattern.compile("(?:UTC|GMT)?\\s*([+\\-\\u2212])(\\d{1,2})(?::?(\\d{2}))?");
    private static final Map<String, Integer> HOURS = Map.ofEntries(
            Map.entry("Z", 0),
            Map.entry("UTC", 0),
            Map.entry("GMT", 0),
            Map.entry("ADT", -3),
            Map.entry("EDT", -4),
            Map.entry("EST", -5),
            Map.entry("CDT", -5),
            Map.entry("CST", -6),
            Map.entry("MDT", -6),
            Map.entry("MST", -7),
            Map.entry("PDT", -7),
            Map.entry("PST", -8),
            Map.entry("AKDT", -8),
            Map.entry("AKST", -9),
            Map.entry("HST", -10),
            Map.entry("CET", 1),
            Map.entry("CEST", 2));

    private ZoneLetters() {}

    /** Returns the offset from UTC, s; NaN if the text is not a known zone. */
    static double offsetS(String text) {
        String zone = text.strip().toUpperCase(Locale.ROOT);
        Matcher m = OFFSET.matcher(zone);
        if (m.matches()) {
            int minutes = m.group(3) == null ? 0 : Integer.parseInt(m.group(3));
            int hours = Integer.parseInt(m.group(2));
            double offsetS = hours * 3600.0 + minutes * 60.0;
            return hours > 18 || minutes > 59 ? Double.NaN : m.group(1).equals("+") ? offsetS : -offsetS;
        }
        Integer hours = HOURS.get(zone);
        return hours == null ? Double.NaN : hours * 3600.0;
    }
}
