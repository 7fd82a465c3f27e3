package io.rowledger.units;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;

/**
 * The words that stand beside numbers, in one language.
 *
 * @param unknown for a value that is not known
 * @param notInFile for a time that the log doesn't have
 * @param to between the ends of a range
 * @param compass the eight points, clockwise from north
 * @param months from January; Java's own names differ from one runtime image to the next
 * @param day a date: {@code %1$s} month, {@code %2$d} day, {@code %3$d} year
 * @param shortDay the same without the year, the month cut to three letters
 */
record FormatWords(
        String unknown,
        String notInFile,
        String to,
        List<String> compass,
        List<String> months,
        String day,
        String shortDay) {
    static final FormatWords ENGLISH = new FormatWords(
            "not known",
            "not in this file",
            "to",
            List.of("N", "NE", "E", "SE", "S", "SW", "W", "NW"),
            List.of(
                    "January",
                    "February",
                    "March",
                    "April",
                    "May",
                    "June",
                    "July",
                    "August",
                    "September",
                    "October",
                    "November",
                    "December"),
            "%1$s %2$d, %3$d",
            "%1$s %2$d");

    private static final FormatWords SPANISH = new FormatWords(
            "no se sabe",
            "no está en este archivo",
            "a",
            List.of("N", "NE", "E", "SE", "S", "SO", "O", "NO"),
            List.of(
                    "enero",
                    "febrero",
                    "marzo",
                    "abril",
                    "mayo",
                    "junio",
                    "julio",
                    "agosto",
                    "septiembre",
                    "octubre",
                    "noviembre",
                    "diciembre"),
            "%2$d de %1$s de %3$d",
            "%2$d %1$s");

    /** The words of a language; English for any but Spanish. */
    static FormatWords of(Locale language) {
        return language.getLanguage().equals("es") ? SPANISH : ENGLISH;
    }

    String day(LocalDate date) {
        return String.format(
                Locale.ROOT, day, months.get(date.getMonthValue() - 1), date.getDayOfMonth(), date.getYear());
    }

    String shortDay(LocalDate date) {
        String month = months.get(date.getMonthValue() - 1).substring(0, 3);
        return String.format(Locale.ROOT, shortDay, month, date.getDayOfMonth());
    }

    static boolean isUnknown(String text) {
        return text.equals(ENGLISH.unknown) || text.equals(SPANISH.unknown);
    }
}
