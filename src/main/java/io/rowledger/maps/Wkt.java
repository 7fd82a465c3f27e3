package io.rowledger.maps;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A node of well-known text for coordinate systems (OGC 01-009, section 7): a keyword and, in brackets, texts, numbers and
 * nodes.
 *
 * @param keyword in upper case
 * @param values texts without their quotes, numbers as written
 * @param nodes the nodes inside
 */
record Wkt(String keyword, List<String> values, List<Wkt> nodes) {
    /** The standard's deepest node has five levels above it. */
    private static final int DEEPEST = 20;

    /** The one node of the text, or null where the text is no well-known text. */
    static @Nullable Wkt parse(String text) {
        Parser parser = new Parser(text);
        Wkt node = parser.node(0);
        parser.blanks();
        return node != null && parser.at == text.length() ? node : null;
    }

    /** The first value, empty without one. */
    String name() {
        return values.isEmpty() ? "" : values.get(0);
    }

    /** The number at this place among the values, or NaN. */
    double number(int at) {
        return at < values.size() ? Numbers.of(values.get(at)) : Double.NaN;
    }

    /** The first node inside of one of these keywords, or null. */
    @Nullable
    Wkt node(String... keywords) {
        for (Wkt node : nodes) {
            if (List.of(keywords).contains(node.keyword)) {
                return node;
            }
        }
        return null;
    }

    private static final class Parser {
        final String text;
        int at;

        Parser(String text) {
            this.text = text;
        }

        void blanks() {
            while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
                at++;
            }
        }

        boolean take(String any) {
            blanks();
            boolean is = at < text.length() && any.indexOf(text.charAt(at)) >= 0;
            at += is ? 1 : 0;
            return is;
        }

        @Nullable
        Wkt node(int depth) {
            String keyword = word();
            if (keyword.isEmpty() || depth > DEEPEST || !take("[(")) {
                return null;
            }
            List<String> values = new ArrayList<>();
            List<Wkt> nodes = new ArrayList<>();
            do {
                blanks();
                if (at < text.length() && text.charAt(at) == '"') {
                    String quoted = quoted();
                    if (quoted == null) {
                        return null;
                    }
                    values.add(quoted);
                } else {
                    int before = at;
                    String word = word();
                    blanks();
                    if (at < text.length() && "[(".indexOf(text.charAt(at)) >= 0) {
                        at = before;
                        Wkt node = node(depth + 1);
                        if (node == null) {
                            return null;
                        }
                        nodes.add(node);
                    } else {
                        values.add(word);
                    }
                }
            } while (take(","));
            return take("])") ? new Wkt(keyword.toUpperCase(Locale.ROOT), values, nodes) : null;
        }

        private String word() {
            blanks();
            int from = at;
            while (at < text.length()
                    && (Character.isLetterOrDigit(text.charAt(at)) || "_+-.".indexOf(text.charAt(at)) >= 0)) {
                at++;
            }
            return text.substring(from, at);
        }

        private @Nullable String quoted() {
            int end = text.indexOf('"', at + 1);
            if (end < 0) {
                return null;
            }
            String inside = text.substring(at + 1, end);
            at = end + 1;
            return inside;
        }
    }
}
