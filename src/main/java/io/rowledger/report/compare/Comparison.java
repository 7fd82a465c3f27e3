package io.rowledger.report.compare;

import io.rowledger.report.common.Limits;
import io.rowledger.report.findings.FindingMark;
import io.rowledger.report.findings.RowPicture;
import java.util.List;

/**
 * Content of the comparison of two jobs, figures rounded and labeled: did the repair work?
 *
 * @param head title and particulars
 * @param answer the answer in sentences
 * @param orders steps before anyone touches the machine, in this order
 * @param guards what to wear, have at hand and know meanwhile
 * @param groups the findings by what became of them; empty groups are left out
 * @param products both jobs' pictures and rows, one per product
 * @param notes what could not be evaluated in either job
 */
public record Comparison(
        ComparisonHead head,
        List<String> answer,
        List<String> orders,
        List<String> guards,
        List<Group> groups,
        List<ProductPair> products,
        List<String> notes) {
    /** Key of the group of findings that are gone. */
    static final String GONE = "gone";

    /** Copies the lists. */
    public Comparison {
        answer = List.copyOf(answer);
        orders = List.copyOf(orders);
        guards = List.copyOf(guards);
        groups = List.copyOf(groups);
        products = List.copyOf(products);
        notes = List.copyOf(notes);
    }

    /** True if a finding remains, is new or could not be tested. */
    public boolean hasWork() {
        return groups.stream().anyMatch(group -> !GONE.equals(group.key()));
    }

    /** True if either job has findings. */
    public boolean hasGroups() {
        return !groups.isEmpty();
    }

    /** Deviation beyond which a row counts as off, percent: what {@code beforeOff} and {@code afterOff} count. */
    public String offPct() {
        return Long.toString(Math.round(Limits.ACT_PCT));
    }

    /** True if something could not be evaluated. */
    public boolean hasNotes() {
        return !notes.isEmpty();
    }

    /**
     * Title and particulars.
     *
     * @param title the document's title
     * @param machine the rig
     * @param before field, day and hours of the earlier job
     * @param after field, day and hours of the later job
     * @param endS when the later job ended, epoch seconds: the date of the document
     * @param madeWith program and version
     */
    public record ComparisonHead(
            String title, String machine, String before, String after, double endS, String madeWith) {}

    /** Findings of one fate; the key is {@code remaining}, {@code new}, {@code gone} or {@code not-tested}. */
    public record Group(String key, String title, List<Line> lines) {
        /** Copies the lines. */
        public Group {
            lines = List.copyOf(lines);
        }
    }

    /** One finding, and in the earlier and the later job its confidence, time and evidence; or a dash. */
    public record Line(String title, String before, String after) {}

    /** One product in both jobs. */
    public record ProductPair(String key, String name, String size, Side before, Side after, List<RowLine> rows) {
        /** Copies the rows. */
        public ProductPair {
            rows = List.copyOf(rows);
        }

        /** True if both jobs have something to draw. */
        public boolean drawable() {
            return before.picture().columns() > 0 && after.picture().columns() > 0;
        }
    }

    /** One picture with its findings framed. */
    public record Side(RowPicture picture, List<FindingMark> marks) {
        /** Copies the marks. */
        public Side {
            marks = List.copyOf(marks);
        }
    }

    /**
     * One row in both jobs.
     *
     * @param row from 1 at the left
     * @param before median deviation from the other rows
     * @param beforeOff share of its evaluated time beyond the limit
     * @param after the same in the later job
     * @param afterOff the same in the later job
     * @param verdict the verdict in words
     * @param mark CSS class: empty, "watch" or "act"
     */
    public record RowLine(
            int row, String before, String beforeOff, String after, String afterOff, String verdict, String mark) {}
}
