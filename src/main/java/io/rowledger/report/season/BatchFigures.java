package io.rowledger.report.season;

import io.rowledger.finding.FindingKind;
import java.util.List;

/**
 * The figures of one job of a batch, from its results.
 *
 * @param job the job
 * @param skipM2 skipped ground, m²
 * @param overlapM2 ground covered more than once, m²
 * @param findings most certain first
 */
public record BatchFigures(SeasonJob job, double skipM2, double overlapM2, List<Fault> findings) {
    /** Copies the findings. */
    public BatchFigures {
        findings = List.copyOf(findings);
    }

    /** A finding: its kind, its rows (none for the whole bar) and its confidence from 0 to 1. */
    public record Fault(FindingKind kind, List<Integer> rows, double confidence) {
        /** Copies the rows. */
        public Fault {
            rows = List.copyOf(rows);
        }
    }

    /** Volume of all products, L. */
    public double volumeL() {
        return job.products().stream()
                .mapToDouble(SeasonJob.AppliedProduct::volumeL)
                .sum();
    }
}
