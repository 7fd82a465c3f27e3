package io.rowledger.maps;

import java.util.regex.Pattern;

/** Plain decimal numbers as map formats write them. */
final class Numbers {
    private static final Pattern PLAIN = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,3})?");
    /** Longest text read as a number, characters. */
    private static final int MAX = 60;

    private Numbers() {}

    /** The number; NaN if the text is not one. */
    static double of(String text) {
        String plain = text.strip();
        return plain.length() <= MAX && PLAIN.matcher(plain).matches() ? Double.parseDouble(plain) : Double.NaN;
    }
}
