package io.rowledger.report.season;

import java.util.List;

/**
 * The figures of one job of a batch, from its results.
 *
 * @param job the job
 * @param skipM2 skipped ground, m²
 * @param overlapM2 ground covered more than once, m²
 */
public record BatchFigures(SeasonJob job, double skipM2, double overlapM2) {
    /** The job's findings, most certain first. */
    public List<JobFinding> findings() {
        return job.findings();
    }

    /** Volume of all products, L. */
    public double volumeL() {
        return job.products().stream()
                .mapToDouble(SeasonJob.AppliedProduct::volumeL)
                .sum();
    }
}
