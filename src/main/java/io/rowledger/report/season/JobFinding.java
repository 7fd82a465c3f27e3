package io.rowledger.report.season;

import io.rowledger.finding.FindingKind;
import java.util.List;

/**
 * A finding of one job, from its results.
 *
 * @param kind what it is
 * @param rows its rows, from 1 at the left; empty for the whole bar
 * @param confidence from 0 to 1
 */
public record JobFinding(FindingKind kind, List<Integer> rows, double confidence) {
    /** Smallest confidence that ledger and batch summary name; the job's own row diagnosis has the others. */
    static final double MIN_CONFIDENCE = 0.5;

    /** Copies the rows. */
    public JobFinding {
        rows = List.copyOf(rows);
    }

    /** True if ledger and batch summary name it. */
    boolean isNamed() {
        return confidence >= MIN_CONFIDENCE;
    }
}
