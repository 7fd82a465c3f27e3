package io.rowledger.report.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobClock;
import io.rowledger.document.pdf.Paper;
import io.rowledger.document.text.Messages;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.report.record.NitrogenRecord.Missing;
import io.rowledger.report.record.NitrogenRecord.Sentence;
import io.rowledger.units.UnitSystem;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the record says of the job described at {@link SyntheticJob}: 13:00:00 to 13:24:35 UTC, at 93 degrees west. */
class RecordContentTest {
    private static ReportOptions options(ZoneId zone) {
        return new ReportOptions(UnitSystem.US, Paper.LETTER, zone, null, "test");
    }

    private static final Messages MESSAGES = options(ZoneOffset.UTC).messages();

    private static NitrogenRecord record(Analysis a, ZoneId zone) {
        return NitrogenRecordReport.of(a, options(zone)).content();
    }

    private static NitrogenRecord record(SyntheticJob job) {
        return record(job.build(), ZoneOffset.UTC);
    }

    @Test
    void the_head_says_that_the_clock_follows_the_sun_where_no_zone_was_entered() {
        Analysis job = new SyntheticJob().build();
        String bySun = MESSAGES.text("words.header.bySun", "UTC\u22126");
        assertEquals(
                "June 14, 2026, 7:00 AM to 7:24 AM (" + bySun + ")",
                record(job, JobClock.zone(job)).head().when().replace('\u00a0', ' '));
        assertEquals(
                "June 14, 2026, 8:00 AM to 8:24 AM (America/Chicago)",
                record(job, ZoneId.of("America/Chicago")).head().when().replace('\u00a0', ' '));
    }

    /** Sentence, map and table speak of the covered ground alone, so that a reader finds one figure for one thing. */
    @Test
    void shares_have_one_denominator() {
        NitrogenRecord record = record(new SyntheticJob());
        String onPlan = record.map().classes().stream()
                .filter(one -> !one.note().isEmpty())
                .findFirst()
                .orElseThrow()
                .share();
        // 160 m² of 19,000 m² lie beyond 10 %.
        assertEquals("99.2%", onPlan);
        String shares = record.ground().get(record.ground().size() - 1).value();
        assertTrue(shares.startsWith(onPlan), shares);
        assertTrue(
                record.answer().stream()
                        .map(Sentence::text)
                        .anyMatch(text -> text.contains("covered, 99 got within 10%")),
                record.answer().toString());
    }

    @Test
    void what_may_be_wrong_with_the_machine_stands_in_the_answer() {
        NitrogenRecord record = record(new SyntheticJob().withFinding());
        assertTrue(
                record.answer().stream()
                        .anyMatch(one -> one.strong() && one.text().contains("Row 7 looks plugged")),
                record.answer().toString());
        assertFalse(record(new SyntheticJob().even()).answer().stream().anyMatch(Sentence::strong));
    }

    @ParameterizedTest
    @CsvSource({"Ohio", "ohio", "OH"})
    void the_list_is_that_of_the_state(String state) {
        NitrogenRecord record = record(new SyntheticJob().job("state", state));
        assertTrue(record.missingIntro().contains("901:5-4-04"), record.missingIntro());
        List<String> items = record.missing().stream().map(Missing::item).toList();
        assertTrue(items.contains(MESSAGES.text("record.field.certificate_holder")), items.toString());
        // Asked for in Minnesota and Indiana only.
        assertFalse(items.contains(MESSAGES.text("record.field.customer")), items.toString());
    }

    @ParameterizedTest
    @CsvSource({"Iowa", "''"})
    void without_a_list_of_the_state_the_list_names_no_state(String state) {
        SyntheticJob job = new SyntheticJob();
        NitrogenRecord record = record(state.isEmpty() ? job : job.job("state", state));
        assertEquals(
                state.isEmpty()
                        ? MESSAGES.text("record.missing.ofNoState")
                        : MESSAGES.text("record.missing.ofOtherState", state),
                record.missingIntro());
        List<String> items = record.missing().stream().map(Missing::item).toList();
        // Two published rules ask for the customer, one for the certificate holder.
        assertTrue(items.contains(MESSAGES.text("record.field.customer")), items.toString());
        assertFalse(items.contains(MESSAGES.text("record.field.certificate_holder")), items.toString());
    }
}
