package io.rowledger.report.common;

import io.rowledger.text.Message;
import java.util.List;

/** Notes that put the figures of a job in question, so that they stand beside them on the first page. */
public final class Warnings {
    /** First part of their keys. */
    private static final String KEYS = "notes.totals.";

    private Warnings() {}

    /** Returns those among the notes of an analysis. */
    public static List<Message> of(List<Message> notes) {
        return notes.stream().filter(note -> note.key().startsWith(KEYS)).toList();
    }
}
