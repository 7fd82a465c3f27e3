package io.rowledger.maps;

import java.util.regex.Pattern;

/** Plain decimal numbers as map formats write them. */
final class Numbers {
    private static final Pattern PLAIN = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d{1,3})?");
    /** Longer than any number that means something. */
    private static final int MAX = 60;

    private Numbers() {}

    /** The number, or NaN where the text is none. */
    static double of(String text) {
        String plain = text.strip();
        return plain.length() <= MAX && PLAIN.matcher(plain).matches() ? Double.parseDouble(plain) : Double.NaN;
    }
}
