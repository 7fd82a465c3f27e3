package io.rowledger.report.season;

import java.util.List;

/**
 * Content of the summary of a batch, figures rounded and labeled.
 *
 * @param title for the document's title
 * @param when first to last day of the work
 * @param endS end of the last job, epoch seconds: the date of the document
 * @param madeWith program and version
 * @param answer the batch in sentences
 * @param failed jobs that could not be done, and why
 * @param units of the tables' columns
 * @param lines every job that has results
 * @param total of them
 * @param faults findings, job by job
 * @param skipped jobs that were skipped, and why
 * @param sources the files of each job
 * @param cautions in the order they are printed
 */
public record BatchSummary(
        String title,
        String when,
        double endS,
        String madeWith,
        List<String> answer,
        List<JobText> failed,
        ColumnUnits units,
        List<Line> lines,
        Line total,
        List<JobText> faults,
        List<JobText> skipped,
        List<JobText> sources,
        List<String> cautions) {
    /** Copies the lists. */
    public BatchSummary {
        answer = List.copyOf(answer);
        failed = List.copyOf(failed);
        lines = List.copyOf(lines);
        faults = List.copyOf(faults);
        skipped = List.copyOf(skipped);
        sources = List.copyOf(sources);
        cautions = List.copyOf(cautions);
    }

    /** True if some job could not be done. */
    public boolean hasFailed() {
        return !failed.isEmpty();
    }

    /** True if some job has results. */
    public boolean hasLines() {
        return !lines.isEmpty();
    }

    /** True if there are findings. */
    public boolean hasFaults() {
        return !faults.isEmpty();
    }

    /** True if some job was skipped. */
    public boolean hasSkipped() {
        return !skipped.isEmpty();
    }

    /** True if the files of some job are known. */
    public boolean hasSources() {
        return !sources.isEmpty();
    }

    /** A job and sentences about it. */
    public record JobText(String job, List<String> text) {
        /** Copies the sentences. */
        public JobText {
            text = List.copyOf(text);
        }
    }

    /**
     * A job with results.
     *
     * @param job its name
     * @param result what became of it, in words
     * @param found how many findings; a dash for none
     * @param act true if there are some
     */
    public record Line(
            String job,
            String result,
            String day,
            String area,
            String volume,
            String nitrogen,
            String perArea,
            String skipped,
            String overlap,
            String found,
            boolean act) {}
}
