package io.rowledger.report.common;

import java.util.List;

/**
 * Title and particulars.
 *
 * @param title for the document's title
 * @param field name of the field as entered, or a substitute
 * @param when local day, hours and time zone
 * @param machine the rig's name and size
 * @param endS when the work ended, epoch seconds: the date of the document
 * @param facts the job block as entered
 * @param units units of the columns
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

    /** True if the job block has more than the name of the field. */
    public boolean hasFacts() {
        return !facts.isEmpty();
    }
}
