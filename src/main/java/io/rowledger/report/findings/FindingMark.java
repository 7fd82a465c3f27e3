package io.rowledger.report.findings;

import java.util.List;

/** A finding in the picture: its number, its rows (none for the whole bar) and when, epoch seconds. */
public record FindingMark(int number, List<Integer> rows, double fromS, double toS) {
    /** Copies the rows. */
    public FindingMark {
        rows = List.copyOf(rows);
    }
}
