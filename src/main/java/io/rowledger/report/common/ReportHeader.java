package io.rowledger.report.common;

import java.util.List;

/**
 * Title and particulars.
 *
 * @param title for the document's title
 * @param field the field's name as entered, or what stands for it
 * @param when local day and hours
 * @param machine the rig's name and size
 * @param endS when the work ended, epoch seconds: the date of the document
 * @param facts the job block as entered
 * @param units what the tables' columns are in
 * @param madeWith program and version
 */
public record ReportHeader(
        String title,
        String field,
        String when,
        String machine,
        double endS,
        List<Fact> facts,
        UnitLabels units,
        String madeWith) {
    /** Copies the facts. */
    public ReportHeader {
        facts = List.copyOf(facts);
    }

    /** True where the job block says more than the field's name. */
    public boolean hasFacts() {
        return !facts.isEmpty();
    }
}
