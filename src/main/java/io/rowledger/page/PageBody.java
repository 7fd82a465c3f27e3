package io.rowledger.page;

import io.rowledger.report.answer.NextActions;
import io.rowledger.report.review.PassReview;
import java.util.List;
import java.util.Locale;

/**
 * What people read on the page in one language and unit system; a template prints it and computes nothing.
 *
 * @param field name of the field or of the log
 * @param when local day and hours, with the zone
 * @param machine the rig's name and size
 * @param verdict the answer, sentence by sentence
 * @param actions what to do next
 * @param also what was found beside these, or that there is nothing to do
 * @param figures the headline figures
 * @param jobs the pass review of the job; empty where rows were checked without a rig file
 * @param passRows per pass
 * @param answer the row diagnosis in sentences
 * @param orders steps before anyone touches the machine
 * @param guards what to wear, have at hand and know meanwhile
 * @param cards the findings
 * @param noticed findings that cost next to nothing, a sentence each
 * @param notes what was assumed and what could not be told
 * @param bar the bar drawn to scale (SVG), or empty
 * @param picture the map (SVG), or empty where the page already has it
 */
record PageBody(
        String field,
        String when,
        String machine,
        List<String> verdict,
        List<Step> actions,
        List<String> also,
        List<PassReview.Figure> figures,
        List<PassReview> jobs,
        List<PassRow> passRows,
        List<String> answer,
        List<String> orders,
        List<String> guards,
        List<Card> cards,
        List<String> noticed,
        List<String> notes,
        String bar,
        String picture) {

    /** True if the job has strips on the ground. */
    public boolean hasJob() {
        return !jobs.isEmpty();
    }

    /** True if a heading for what to do is due. */
    public boolean hasActions() {
        return !actions.isEmpty() || !also.isEmpty();
    }

    /** True if something was found. */
    public boolean hasCards() {
        return !cards.isEmpty();
    }

    /** True if something that cost next to nothing was noticed. */
    public boolean hasNoticed() {
        return !noticed.isEmpty();
    }

    /** True if there is something to know. */
    public boolean hasNotes() {
        return !notes.isEmpty();
    }

    /** True if places are to be marked on the map. */
    public boolean hasPlaces() {
        return jobs.stream()
                .anyMatch(job -> job.ground().hasSkips() || job.ground().hasOverlaps());
    }

    /** One action, its kind in lower case; rows and places parted by commas. */
    record Step(String kind, String title, String text, String rows, String places) {
        static Step of(NextActions.Action action) {
            return new Step(
                    action.kind().name().toLowerCase(Locale.ROOT),
                    action.title(),
                    action.text(),
                    String.join(",", action.rows().stream().map(String::valueOf).toList()),
                    String.join(",", action.places()));
        }
    }

    /**
     * One pass.
     *
     * @param turnSeen mean turn error with equal flow to all rows
     * @param turnLeft mean turn error left in the metered flows
     */
    record PassRow(PassReview.PassLine line, String turnSeen, String turnLeft) {}

    /** A finding; the clauses of {@code facts} say when, where and at what cost. */
    record Card(
            int number,
            String title,
            String sure,
            List<String> facts,
            String evidence,
            String alternative,
            List<String> checks) {}
}
