package io.rowledger.report.season;

import io.rowledger.finding.FindingKind;
import java.util.List;

/**
 * A finding of one job, from its results.
 *
 * @param kind what it is
 * @param rows its rows, from 1 at the left; empty for the whole bar
 * @param meters the meters, from 1, where some feed several of its rows; else empty
 * @param confidence from 0 to 1
 * @param alsoNoticed true if it cost next to nothing
 */
public record JobFinding(
        FindingKind kind, List<Integer> rows, List<Integer> meters, double confidence, boolean alsoNoticed) {
    /** Smallest confidence that ledger and batch summary name; the job's own row diagnosis has the others. */
    static final double MIN_CONFIDENCE = 0.5;

    /** Copies the rows. */
    public JobFinding {
        rows = List.copyOf(rows);
        meters = List.copyOf(meters);
    }

    /** A finding of rows with a meter each, or of the whole bar, that cost something. */
    public JobFinding(FindingKind kind, List<Integer> rows, double confidence) {
        this(kind, rows, List.of(), confidence, false);
    }

    /** True if ledger and batch summary name it. */
    boolean isNamed() {
        return confidence >= MIN_CONFIDENCE && !alsoNoticed;
    }
}
