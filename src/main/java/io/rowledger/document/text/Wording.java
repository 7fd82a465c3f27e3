package io.rowledger.document.text;

import io.rowledger.units.UnitFormat;
import java.util.List;
import java.util.Locale;

/** The words that stand for codes, and numbers put into words. */
public final class Wording {
    private Wording() {}

    /** {@code 3, 5–8}; empty for none. */
    public static String ranges(List<Integer> ascending) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < ascending.size(); ) {
            int end = i;
            while (end + 1 < ascending.size() && ascending.get(end + 1) == ascending.get(end) + 1) {
                end++;
            }
            if (!text.isEmpty()) {
                text.append(", ");
            }
            text.append(ascending.get(i));
            if (end > i) {
                text.append(end == i + 1 ? ", " : "\u2013").append(ascending.get(end));
            }
            i = end + 1;
        }
        return text.toString();
    }

    /** A dash where a table has no figure: the words would fill the column. */
    public static String cell(String text) {
        return UnitFormat.isUnknown(text) ? "\u2013" : text;
    }

    /** {@code 1 place}, {@code 3 places}. */
    public static String counted(int n, String one, String many) {
        return n + "\u00a0" + (n == 1 ? one : many);
    }

    /** A job key as a label: {@code spray_depth} reads "Spray depth". */
    public static String label(String key) {
        String words = key.replace('_', ' ').strip();
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
