package io.rowledger.report.rows;

import io.rowledger.report.common.Fact;
import io.rowledger.report.common.ReportHeader;
import io.rowledger.report.findings.RowPictureFigure;
import java.util.List;

/**
 * Content of the row diagnosis: figures rounded, labeled and in the reader's units, with the raw figures beside them
 * where a chart draws them.
 *
 * @param head title and particulars
 * @param answer the answer in sentences, most certain finding first
 * @param first what to do first about each finding of the answer
 * @param oneMeter true if one meter serves the whole bar: then nothing is said of single rows
 * @param alsoNoticed findings that cost next to nothing, a sentence each
 * @param orders steps before anyone touches the machine, in this order
 * @param guards what to wear, have at hand and know meanwhile
 * @param pictures deviation by row and time, one per product
 * @param cards one per finding, most certain first; empty if nothing was found
 * @param symptoms what to check for what one sees, safest first
 * @param catching the steps of a timed catch
 * @param catchFigure what a row must give in a timed catch at the job's target and speed; empty if there is no target
 * @param trust the facts that support the answer
 * @param notes what could not be evaluated and why
 * @param baselines the healthy state of the rows, one per product
 */
public record RowDiagnosis(
        ReportHeader head,
        List<String> answer,
        List<FirstStep> first,
        boolean oneMeter,
        List<String> alsoNoticed,
        List<String> orders,
        List<String> guards,
        List<RowPictureFigure> pictures,
        List<Card> cards,
        List<Fact> symptoms,
        List<String> catching,
        String catchFigure,
        List<Fact> trust,
        List<String> notes,
        List<Baseline> baselines) {
    /** Copies the lists. */
    public RowDiagnosis {
        answer = List.copyOf(answer);
        first = List.copyOf(first);
        alsoNoticed = List.copyOf(alsoNoticed);
        symptoms = List.copyOf(symptoms);
        catching = List.copyOf(catching);
        orders = List.copyOf(orders);
        guards = List.copyOf(guards);
        pictures = List.copyOf(pictures);
        cards = List.copyOf(cards);
        trust = List.copyOf(trust);
        notes = List.copyOf(notes);
        baselines = List.copyOf(baselines);
    }

    /** True if there are findings. */
    public boolean hasCards() {
        return !cards.isEmpty();
    }

    /** True if page 1 says what to do first. */
    public boolean hasFirst() {
        return !first.isEmpty();
    }

    /** True if something that cost next to nothing was noticed. */
    public boolean hasAlsoNoticed() {
        return !alsoNoticed.isEmpty();
    }

    /** True if rows are told apart and there is work to draw. */
    public boolean hasRows() {
        return !oneMeter;
    }

    /** True if a target gives the figure of a timed catch. */
    public boolean hasCatchFigure() {
        return !catchFigure.isEmpty();
    }

    /** True if there is more to say of how rows were checked. */
    public boolean hasTrust() {
        return !trust.isEmpty();
    }

    /** True if something could not be evaluated. */
    public boolean hasNotes() {
        return !notes.isEmpty();
    }

    /** True if several pictures share the first page. */
    public boolean severalProducts() {
        return pictures.size() > 1;
    }

    /**
     * What page 1 says about one finding.
     *
     * @param number of its card
     * @param title what looks wrong
     * @param since from when to when, to the minute
     * @param side liquid or meter, supply, controller or setup: where to look, and how far the log tells
     * @param check the first and safest step
     */
    public record FirstStep(int number, String title, String since, String side, String check) {}

    /**
     * One finding.
     *
     * @param number from 1, as on map and picture
     * @param title what looks wrong
     * @param sure the confidence in words
     * @param when from when to when, and how long
     * @param where latitude and longitude in degrees WGS 84, and the pass
     * @param cost area, liquid and nitrogen
     * @param evidence the sign in the log, with numbers
     * @param alternative the next best explanation
     * @param figures further figures in the reader's units
     * @param checks steps at the machine, cheapest and safest first
     * @param timed false for a finding of the setup, which no trace shows
     * @param latDeg latitude where it shows first, degrees WGS 84; NaN if unknown
     * @param lonDeg longitude where it shows first, degrees WGS 84; NaN if unknown
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
            boolean timed,
            double latDeg,
            double lonDeg) {
        /** Copies the lists. */
        public Card {
            figures = List.copyOf(figures);
            checks = List.copyOf(checks);
        }
    }

    /** Healthy state of the rows with one product. */
    public record Baseline(String key, String name, String summary, List<BaselineLine> rows) {
        /** Copies the rows. */
        public Baseline {
            rows = List.copyOf(rows);
        }
    }

    /**
     * Healthy state of one row.
     *
     * @param row from 1 at the left
     * @param label the row, or all rows of a meter that feeds several
     * @param usual median deviation from the other rows
     * @param spread one robust standard deviation
     * @param response time constant of the response to speed and target
     * @param evaluated evaluated time
     * @param note set if the row is an outlier or was never evaluated, else empty
     * @param usualPct median deviation, percent; NaN if unknown
     * @param spreadPct standard deviation, percent; NaN if unknown
     * @param outlier true if it differs from the other rows by more than meters usually do
     */
    public record BaselineLine(
            int row,
            String label,
            String usual,
            String spread,
            String response,
            String evaluated,
            String note,
            double usualPct,
            double spreadPct,
            boolean outlier) {}
}
