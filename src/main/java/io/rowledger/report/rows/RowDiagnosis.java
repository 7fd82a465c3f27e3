package io.rowledger.report.rows;

import io.rowledger.report.common.Fact;
import io.rowledger.report.common.ReportHeader;
import io.rowledger.report.common.RowPictureFigure;
import java.util.List;

/**
 * What the row diagnosis says: figures rounded, labelled and in the reader's units, with the raw figures beside where a
 * chart draws them.
 *
 * @param head title and particulars
 * @param answer the answer for the person at the bench, sentence by sentence, most certain finding first
 * @param orders what to do before anyone touches the machine, in this order
 * @param guards what to wear, have at hand and know while doing so
 * @param pictures deviation by row and time, one a product
 * @param pictureNote how to read them
 * @param cards one a finding, most certain first; empty where nothing was found
 * @param trust why the answer can be trusted, as facts
 * @param notes what could not be judged and why
 * @param baselines what rows are like when healthy, one a product
 */
public record RowDiagnosis(
        ReportHeader head,
        List<String> answer,
        List<String> orders,
        List<String> guards,
        List<RowPictureFigure> pictures,
        String pictureNote,
        List<Card> cards,
        List<Fact> trust,
        List<String> notes,
        List<Baseline> baselines) {
    /** Copies the lists. */
    public RowDiagnosis {
        answer = List.copyOf(answer);
        orders = List.copyOf(orders);
        guards = List.copyOf(guards);
        pictures = List.copyOf(pictures);
        cards = List.copyOf(cards);
        trust = List.copyOf(trust);
        notes = List.copyOf(notes);
        baselines = List.copyOf(baselines);
    }

    /** True where something is probably wrong. */
    public boolean hasCards() {
        return !cards.isEmpty();
    }

    /** True where something could not be judged. */
    public boolean hasNotes() {
        return !notes.isEmpty();
    }

    /** True where several pictures must share the first page. */
    public boolean severalProducts() {
        return pictures.size() > 1;
    }

    /**
     * One finding.
     *
     * @param number from 1, as on map and picture
     * @param title what looks wrong
     * @param sure how sure
     * @param when from and to
     * @param where degrees WGS 84, latitude first, and the pass
     * @param cost ground, liquid and nitrogen
     * @param evidence one sentence with numbers
     * @param alternative what else could explain it
     * @param figures figures of the finding in the reader's units
     * @param checks what to look at, cheapest and safest first
     * @param chart the chart's name
     * @param latDeg a place to look
     * @param lonDeg a place to look
     */
    public record Card(
            int number,
            String title,
            String sure,
            String when,
            String where,
            String cost,
            String evidence,
            String alternative,
            List<Fact> figures,
            List<String> checks,
            String chart,
            double latDeg,
            double lonDeg) {
        /** Copies the lists. */
        public Card {
            figures = List.copyOf(figures);
            checks = List.copyOf(checks);
        }
    }

    /** Healthy rows of one product. */
    public record Baseline(String key, String name, String summary, List<BaselineLine> rows) {
        /** Copies the rows. */
        public Baseline {
            rows = List.copyOf(rows);
        }
    }

    /**
     * One healthy row.
     *
     * @param row from 1 at the left
     * @param usual median deviation from its siblings
     * @param spread one robust standard deviation
     * @param response time constant
     * @param evaluated time it was judged over
     * @param note "stands apart" or empty
     * @param usualPct raw, NaN unknown
     * @param spreadPct raw, NaN unknown
     * @param outlier true where it stands apart
     */
    public record BaselineLine(
            int row,
            String usual,
            String spread,
            String response,
            String evaluated,
            String note,
            double usualPct,
            double spreadPct,
            boolean outlier) {}
}
