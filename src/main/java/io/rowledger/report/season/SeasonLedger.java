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
        List<String> notes,
        List<String> cautions) {
    /** Copies the lists. */
    public SeasonLedger {
        answer = List.copyOf(answer);
        products = List.copyOf(products);
        fields = List.copyOf(fields);
        jobs = List.copyOf(jobs);
        notes = List.copyOf(notes);
        cautions = List.copyOf(cautions);
    }

    /** True if there are notes to read before the totals are used. */
    public boolean hasNotes() {
        return !notes.isEmpty();
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

    /** A job; a job of several products has several lines, of which only the first names it. */
    public record JobLine(
            String field,
            String day,
            String area,
            String product,
            String volume,
            String nitrogen,
            String perArea,
            String folder) {}
}
