package io.rowledger.report.season;

import java.util.List;

/**
 * Content of the nitrogen ledger of a season, figures rounded and labeled.
 *
 * @param title for the document's title
 * @param when first to last day
 * @param endS end of the last job, epoch seconds: the date of the document
 * @param madeWith program and version
 * @param answer the season in sentences
 * @param units of the tables' columns
 * @param products one line per product, over all jobs
 * @param others true if some product holds phosphate, potash or sulfur
 * @param fields one line per field
 * @param season the total of the fields
 * @param jobs every job, field by field
 * @param bars how each row did, a section per bar and product; empty if no results say so
 * @param notes what was counted once, or is not known
 * @param cautions in the order they are printed
 */
public record SeasonLedger(
        String title,
        String when,
        double endS,
        String madeWith,
        List<String> answer,
        ColumnUnits units,
        List<ProductLine> products,
        boolean others,
        List<FieldLine> fields,
        FieldLine season,
        List<JobLine> jobs,
        List<BarSection> bars,
        List<String> notes,
        List<String> cautions) {
    /** Copies the lists. */
    public SeasonLedger {
        answer = List.copyOf(answer);
        products = List.copyOf(products);
        fields = List.copyOf(fields);
        jobs = List.copyOf(jobs);
        bars = List.copyOf(bars);
        notes = List.copyOf(notes);
        cautions = List.copyOf(cautions);
    }

    /** True if there are notes to read before the totals are used. */
    public boolean hasNotes() {
        return !notes.isEmpty();
    }

    /** True if some results say how the rows did. */
    public boolean hasBars() {
        return !bars.isEmpty();
    }

    /**
     * The rows of one bar with one product.
     *
     * @param chart name of the chart
     * @param jobs day and field of each job shown
     * @param calibrate which meters to check before the next season
     * @param note what a drift is, or why none can be told
     * @param rest which jobs are left out; empty if none
     */
    public record BarSection(
            String chart,
            String rig,
            String product,
            List<String> jobs,
            List<RowCells> rows,
            List<String> calibrate,
            String note,
            String rest) {
        /** Copies the lists. */
        public BarSection {
            jobs = List.copyOf(jobs);
            rows = List.copyOf(rows);
            calibrate = List.copyOf(calibrate);
        }

        /** True for one job: there is nothing to compare it with. */
        public boolean single() {
            return jobs.size() == 1;
        }
    }

    /**
     * One row, job by job.
     *
     * @param ratios off the other rows, with a star where a finding concerns the row
     * @param responses seconds to follow speed and target
     * @param change over the season with its uncertainty
     * @param strong true if the change is more than chance
     * @param slower set if the row got slower or faster by more than chance
     */
    public record RowCells(
            int row, List<String> ratios, List<String> responses, String change, boolean strong, String slower) {
        /** Copies the lists. */
        public RowCells {
            ratios = List.copyOf(ratios);
            responses = List.copyOf(responses);
        }
    }

    /** A product over all jobs. */
    public record ProductLine(
            String name, String jobs, String volume, String nitrogen, String phosphate, String potash, String sulfur) {}

    /**
     * A field.
     *
     * @param strong true if its total is above its cap
     */
    public record FieldLine(
            String farm,
            String field,
            String jobs,
            String area,
            String nitrogen,
            String earlier,
            String credits,
            String total,
            String perArea,
            String plan,
            String cap,
            boolean strong) {}

    /**
     * A job; a job of several products has several lines, of which only the first names it.
     *
     * @param bounds of the job's nitrogen, 9 times in 10
     * @param question what puts its amounts in question, else empty
     */
    public record JobLine(
            String field,
            String day,
            String area,
            String product,
            String volume,
            String nitrogen,
            String perArea,
            String bounds,
            String question,
            String folder) {}
}
