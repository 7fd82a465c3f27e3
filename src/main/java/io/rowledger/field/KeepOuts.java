package io.rowledger.field;

import io.rowledger.text.Message;
import java.util.List;

/**
 * The places of one keep-out file.
 *
 * @param file where they came from
 * @param places in the file's order
 * @param notes assumptions made about the file
 */
public record KeepOuts(String file, List<KeepOut> places, List<Message> notes) {
    /** Copies the lists. */
    public KeepOuts {
        places = List.copyOf(places);
        notes = List.copyOf(notes);
    }

    /** Places of a file of which nothing was taken for granted. */
    public KeepOuts(String file, List<KeepOut> places) {
        this(file, places, List.of());
    }
}
