package io.rowledger.document.text;

import java.util.ArrayList;
import java.util.List;

/**
 * A pattern of a bundle, parsed.
 *
 * <pre>
 * pattern = { text | "{" index [ "," style [ "," choices ] ] "}" }
 * choices = limit ("#" | "&lt;") pattern { "|" limit ("#" | "&lt;") pattern }    for style "choice"
 *         | pattern "|" pattern                                            for style "plural": for 1, for all else
 * </pre>
 *
 * <p>Limits as in {@link java.text.ChoiceFormat}: {@code n#} from n on, {@code n<} above n; a number below the first
 * limit takes the first choice. Apostrophes are plain text.
 */
record MessagePattern(List<Part> parts) {
    /** A stretch of text or a place for a value. */
    sealed interface Part {}

    record Literal(String text) implements Part {}

    /**
     * A place for a value.
     *
     * @param style how the value is printed; empty for its usual form
     * @param choices patterns to choose from by the value; empty but for the styles choice and plural
     */
    record Slot(int index, String style, List<Choice> choices) implements Part {}

    /** A pattern that holds from a number on, or above it. */
    record Choice(double limit, boolean above, MessagePattern pattern) {
        boolean holds(double value) {
            return above ? value > limit : value >= limit;
        }
    }

    MessagePattern {
        parts = List.copyOf(parts);
    }

    /**
     * Parses a pattern.
     *
     * @throws IllegalStateException where the pattern is malformed: a bug in a bundle
     */
    static MessagePattern parse(String key, String text) {
        return new Parser(key, text).pattern(false);
    }

    private static final class Parser {
        private final String key;
        private final String text;
        private int at;

        Parser(String key, String text) {
            this.key = key;
            this.text = text;
        }

        /** Reads to the end, or inside a choice to the bar or brace that ends it. */
        MessagePattern pattern(boolean inChoice) {
            List<Part> parts = new ArrayList<>();
            StringBuilder literal = new StringBuilder();
            while (at < text.length() && !(inChoice && (text.charAt(at) == '|' || text.charAt(at) == '}'))) {
                char c = text.charAt(at++);
                if (c == '}') {
                    throw malformed("a brace that closes nothing");
                }
                if (c == '{') {
                    flush(literal, parts);
                    parts.add(slot());
                } else {
                    literal.append(c);
                }
            }
            flush(literal, parts);
            return new MessagePattern(parts);
        }

        private static void flush(StringBuilder literal, List<Part> parts) {
            if (!literal.isEmpty()) {
                parts.add(new Literal(literal.toString()));
                literal.setLength(0);
            }
        }

        private Slot slot() {
            int index = (int) number(",}");
            String style = "";
            List<Choice> choices = new ArrayList<>();
            if (peek() == ',') {
                at++;
                style = until(",}");
                if (peek() == ',') {
                    do {
                        at++;
                        choices.add(choice(style, choices.size()));
                    } while (peek() == '|');
                }
            }
            if (peek() != '}') {
                throw malformed("an open brace");
            }
            at++;
            boolean choosing = style.equals("choice") || style.equals("plural");
            if (choosing == choices.isEmpty() || (style.equals("plural") && choices.size() != 2)) {
                throw malformed("choices that don't fit the style \"" + style + "\"");
            }
            return new Slot(index, style, List.copyOf(choices));
        }

        private Choice choice(String style, int number) {
            if (style.equals("plural")) {
                return new Choice(number, false, pattern(true));
            }
            double limit = number("#<");
            boolean above = peek() == '<';
            at++;
            return new Choice(limit, above, pattern(true));
        }

        private char peek() {
            return at < text.length() ? text.charAt(at) : '\0';
        }

        private String until(String ends) {
            int start = at;
            while (at < text.length() && ends.indexOf(text.charAt(at)) < 0) {
                at++;
            }
            return text.substring(start, at);
        }

        private double number(String ends) {
            String digits = until(ends);
            try {
                return Double.parseDouble(digits);
            } catch (NumberFormatException e) {
                throw malformed("\"" + digits + "\" instead of a number");
            }
        }

        private IllegalStateException malformed(String what) {
            return new IllegalStateException("message " + key + " has " + what + " at " + at + ": " + text);
        }
    }
}
