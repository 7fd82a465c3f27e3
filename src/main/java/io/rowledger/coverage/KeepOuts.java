package io.rowledger.coverage;

import java.util.List;

/**
 * The places of one keep-out file.
 *
 * @param file where they came from
 * @param places in the file's order
 */
public record KeepOuts(String file, List<KeepOut> places) {
    /** Copies the list. */
    public KeepOuts {
        places = List.copyOf(places);
    }
}
