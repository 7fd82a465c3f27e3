package io.rowledger.field;

import java.util.List;

/**
 * The places of one keep-out file.
 *
 * @param file where they came from
 * @param places in the file's order
 * @param notes what was taken for granted about the file, one sentence each
 */
public record KeepOuts(String file, List<KeepOut> places, List<String> notes) {
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
