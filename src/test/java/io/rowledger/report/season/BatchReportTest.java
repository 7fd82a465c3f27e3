package io.rowledger.report.season;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.pdf.Paper;
import io.rowledger.report.common.BatchOutcomes;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.report.common.Views;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Sums and words worked by hand from {@link BatchOutcomes}: 10 and 30 acres, 400 and 1,200 gallons, 1,420 and 4,260 lb. */
class BatchReportTest {
    private static final ReportOptions US =
            new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneOffset.UTC, null, "1.2.3");

    private static List<String> plain(List<String> text) {
        return text.stream().map(line -> line.replace('\u00a0', ' ')).toList();
    }

    @Test
    void the_answer_counts_every_result_and_sums_the_results() {
        BatchSummary report = BatchReport.of(BatchOutcomes.ofEveryResult(), US).content();
        assertEquals(
                List.of(
                        "5 jobs: 1 done now, 1 as before (same files and options), 1 skipped (logs of another job), 2 not done:"
                                + " see below.",
                        "40.00 ac covered, 1,600 gal of liquid and 5,680 lb N applied by the meters; 1.00 ac skipped, 0.50 ac"
                                + " covered more than once.",
                        // 1 % of 40 ac; 2 % of 5,680 lb are 113.6, outward to two digits.
                        "With the errors of meters, tape and receivers, that is 5,680 \u00b1 120 lb N on 40.0 \u00b1 0.4 ac"
                                + " (9 times in 10).",
                        US.messages().text("season.answer.boundsAddUp"),
                        "Something to look at on the machine in 1 of 2 jobs."),
                plain(report.answer()));
        assertEquals("June 2, 2026", report.when());
        assertEquals(
                List.of("creek", "hill"),
                report.lines().stream().map(BatchSummary.Line::job).toList());
        assertEquals("142", report.lines().get(0).perArea());
        assertEquals("1", report.lines().get(0).found());
        assertEquals("\u2013", report.lines().get(1).found());
    }

    @Test
    void what_failed_says_why_and_an_unlikely_finding_is_left_to_the_diagnosis() {
        BatchSummary report = BatchReport.of(BatchOutcomes.ofEveryResult(), US).content();
        assertEquals(
                List.of(
                        new BatchSummary.JobText(
                                "north",
                                List.of("north/log.csv: found nonsense; expected a log. Hint: export it again.")),
                        new BatchSummary.JobText(
                                "pond", List.of("The program failed; please report it: java.lang.X: y"))),
                report.failed());
        assertEquals(
                List.of(new BatchSummary.JobText("creek", List.of("Row 7 looks plugged (97% confidence)."))),
                report.faults());
    }

    @Test
    void a_batch_of_which_nothing_could_be_done_says_so() {
        BatchSummary report =
                BatchReport.of(BatchOutcomes.ofEveryResult().subList(2, 3), US).content();
        assertEquals("No field done", report.when());
        assertEquals(List.of("1 job: 0 done now, 1 not done: see below."), plain(report.answer()));
        assertFalse(report.hasLines());
    }

    @Test
    void jobs_without_a_finding_whose_rows_nothing_checked_are_counted() {
        BatchOutcome unchecked = BatchOutcomes.asBefore(null);
        BatchOutcome checked = BatchOutcomes.asBefore(Views.saved(new SyntheticJob().build(), US));
        assertEquals(
                "No finding, but in 1 of 1 job no row could be checked: there is one meter for the bar, no time in the log, or"
                        + " no row diagnosis was written.",
                last(List.of(unchecked)));
        assertEquals("No finding.", last(List.of(checked)));
        assertTrue(last(List.of(unchecked, checked)).startsWith("No finding, but in 1 of 2 jobs no row"));
    }

    private static String last(List<BatchOutcome> outcomes) {
        List<String> answer = plain(BatchReport.of(outcomes, US).content().answer());
        return answer.get(answer.size() - 1);
    }
}
