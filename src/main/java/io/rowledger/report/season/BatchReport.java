package io.rowledger.report.season;

import java.util.List;

/**
 * What the summary of a batch prints; everything rounded and labelled.
 *
 * @param title for the document's title
 * @param when first to last day of the work
 * @param endS end of the last job, epoch seconds: the date of the document
 * @param madeWith program and version
 * @param answer the batch in sentences
 * @param hint jobs that could not be done, and why
 * @param units of the tables' columns
 * @param lines every job that has results
 * @param total of them
 * @param faults rows to look at, job by job
 * @param left jobs that were skipped, and why
 * @param made how each job was put together
 * @param cautions in the order they are printed
 */
public record BatchReport(
        String title,
        String when,
        double endS,
        String madeWith,
        List<String> answer,
        List<Said> hint,
        Units units,
        List<Line> lines,
        Line total,
        List<Said> faults,
        List<Said> left,
        List<Said> made,
        List<String> cautions) {
    /** Copies the lists. */
    public BatchReport {
        answer = List.copyOf(answer);
        hint = List.copyOf(hint);
        lines = List.copyOf(lines);
        faults = List.copyOf(faults);
        left = List.copyOf(left);
        made = List.copyOf(made);
        cautions = List.copyOf(cautions);
    }

    /** True where somebody has to mend something. */
    public boolean hasHint() {
        return !hint.isEmpty();
    }

    /** True where some job has results. */
    public boolean hasLines() {
        return !lines.isEmpty();
    }

    /** True where some row is to be looked at. */
    public boolean hasFaults() {
        return !faults.isEmpty();
    }

    /** True where some job was skipped. */
    public boolean hasLeft() {
        return !left.isEmpty();
    }

    /** True where some job could be put together. */
    public boolean hasMade() {
        return !made.isEmpty();
    }

    /** Units of columns. */
    public record Units(String area, String volume, String mass, String nitrogenRate) {}

    /** A job and sentences about it. */
    public record Said(String job, List<String> text) {
        /** Copies the sentences. */
        public Said {
            text = List.copyOf(text);
        }
    }

    /**
     * A job with results.
     *
     * @param job its name
     * @param result what became of it
     * @param found how many findings; a dash for none
     * @param act true where there are some
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
