package io.rowledger.units;

import java.util.List;
import java.util.Locale;

/**
 * The words that stand beside numbers, in one language.
 *
 * @param unknown for a value that is not known
 * @param notInFile for a time that the log doesn't have
 * @param to between the ends of a range
 * @param compass the eight points, clockwise from north
 */
record FormatWords(String unknown, String notInFile, String to, List<String> compass) {
    static final FormatWords ENGLISH =
            new FormatWords("not known", "not in this file", "to", List.of("N", "NE", "E", "SE", "S", "SW", "W", "NW"));

    private static final FormatWords SPANISH = new FormatWords(
            "no se sabe", "no está en este archivo", "a", List.of("N", "NE", "E", "SE", "S", "SO", "O", "NO"));

    /** The words of a language; English for any but Spanish. */
    static FormatWords of(Locale language) {
        return language.getLanguage().equals("es") ? SPANISH : ENGLISH;
    }

    static boolean isUnknown(String text) {
        return text.equals(ENGLISH.unknown) || text.equals(SPANISH.unknown);
    }
}
