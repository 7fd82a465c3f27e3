package io.rowledger.report.season;

import io.rowledger.finding.FindingKind;
import java.util.List;

/**
 * What a batch says of one job, as its results have it.
 *
 * @param job the job
 * @param skipM2 missed ground, m²
 * @param overlapM2 ground done twice or more, m²
 * @param findings what is probably wrong, most certain first
 */
public record BatchFigures(SeasonJob job, double skipM2, double overlapM2, List<Fault> findings) {
    /** Copies the findings. */
    public BatchFigures {
        findings = List.copyOf(findings);
    }

    /** A finding: what, which rows (none for the whole bar), how sure from 0 to 1. */
    public record Fault(FindingKind kind, List<Integer> rows, double confidence) {
        /** Copies the rows. */
        public Fault {
            rows = List.copyOf(rows);
        }
    }

    /** Liquid of all products, L. */
    public double volumeL() {
        return job.products().stream().mapToDouble(SeasonJob.Put::volumeL).sum();
    }
}
