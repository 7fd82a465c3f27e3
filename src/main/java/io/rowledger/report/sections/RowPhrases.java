package io.rowledger.report.sections;

import io.rowledger.document.text.Messages;
import io.rowledger.document.text.Wording;
import io.rowledger.text.Message;
import java.util.List;

/** The rows beside a place, in words where a list of single rows would say nothing. */
final class RowPhrases {
    /** Runs of neighboring rows that are written out. */
    private static final int MAX_RUNS = 2;

    private RowPhrases() {}

    /** {@code 7}, {@code 3–5}, {@code 1–4, 8}; with more gaps {@code some of 1–12}; a dash for none. */
    static String of(List<Integer> ascending, Messages messages) {
        if (ascending.isEmpty()) {
            return "\u2013";
        }
        int runs = 1;
        for (int i = 1; i < ascending.size(); i++) {
            runs += ascending.get(i) > ascending.get(i - 1) + 1 ? 1 : 0;
        }
        return runs <= MAX_RUNS ? Wording.ranges(ascending) : messages.text(some(ascending));
    }

    private static Message some(List<Integer> ascending) {
        return Message.of("words.rows.someOf", ascending.get(0), ascending.get(ascending.size() - 1));
    }
}
