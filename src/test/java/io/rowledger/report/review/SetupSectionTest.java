package io.rowledger.report.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.SetupReview;
import io.rowledger.diagnose.setup.SetupCheck;
import io.rowledger.diagnose.setup.SetupMeasurement;
import io.rowledger.diagnose.setup.SetupParameter;
import io.rowledger.document.pdf.Paper;
import io.rowledger.document.text.Messages;
import io.rowledger.report.answer.ReviewSummary;
import io.rowledger.report.common.HandMadeIntervals;
import io.rowledger.report.common.Limits;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.report.common.Views;
import io.rowledger.report.record.NitrogenRecord;
import io.rowledger.report.record.NitrogenRecordReport;
import io.rowledger.report.review.PassReview.SetupLine;
import io.rowledger.rig.RigCorrection;
import io.rowledger.text.KeysIn;
import io.rowledger.text.Message;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The setup in words: what is claimed, which way, and what the other pages then may not claim. */
class SetupSectionTest {
    private static final UnitFormat US = new UnitFormat(UnitSystem.US, ZoneOffset.UTC);

    private static SetupMeasurement told(
            SetupParameter what, String key, double was, double is, double half, boolean differs) {
        int product = what == SetupParameter.FLOW_LAG ? 0 : -1;
        return new SetupMeasurement(
                what,
                product,
                key,
                was,
                is,
                is - half,
                is + half,
                differs,
                Message.of("findings.text", "basis."),
                Message.of("findings.text", "rival."));
    }

    private static SetupMeasurement untold(SetupParameter what) {
        return new SetupMeasurement(
                what,
                -1,
                "rig.x",
                1,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                false,
                Message.of("findings.text", "Drive more."),
                Message.of("findings.none"));
    }

    private static Analysis with(SetupMeasurement... measures) {
        Analysis a = HandMadeIntervals.in(new SyntheticJob().build());
        SetupReview setup = new SetupReview(
                new SetupCheck(Arrays.asList(measures)), new RigCorrection.Corrected("", List.of()), null);
        return new Analysis(
                a.rig(),
                a.log(),
                a.track(),
                a.strips(),
                a.delivery(),
                a.rates(),
                a.coverage(),
                a.diagnosis(),
                a.intervals(),
                setup,
                a.notes(),
                null,
                null,
                List.of(),
                List.of(),
                a.whatIf());
    }

    private static PassReview.Setup section(SetupMeasurement... measures) {
        Analysis a = with(measures);
        return new SetupSection(a.setup(), a.rig().products(), a.coverage(), Messages.english(US)).build();
    }

    private static String plain(String text) {
        return text.replace('\u00a0', ' ');
    }

    @Test
    void a_side_is_said_in_words_and_not_by_a_sign() {
        SetupLine line = section(told(SetupParameter.SIDE_OFFSET, "rig.bar_right_of_center", -0.3048, 0, 0.0165, true))
                .told()
                .get(0);
        // 12 in; 0.0165 m are 0.65 in, of quarters three.
        assertEquals("1 ft 0 in left", plain(line.was()));
        assertEquals("0 in", plain(line.is()));
        assertEquals("0.75 in left to 0.75 in right", plain(line.between()));
    }

    @Test
    void what_the_log_can_not_tell_is_not_said_to_be_right() {
        SetupMeasurement share = told(SetupParameter.OUTSIDE_SHARE, "rows.outer_share", 1, 1, 0.02, false);
        assertEquals(
                "What the log can tell, 1 of 3 measures, does not contradict the rig file.",
                plain(section(share, untold(SetupParameter.DROP_OFFSET), untold(SetupParameter.SIDE_OFFSET))
                        .summary()));
        assertEquals(
                "Nothing in the log contradicts the rig file.", section(share).summary());
    }

    @Test
    void nobody_is_sent_to_measure_seconds_with_a_tape() {
        SetupMeasurement lag = told(SetupParameter.FLOW_LAG, "products.uan.flow_lag", 1.5, 0.03, 0.16, true);
        SetupMeasurement drop = told(SetupParameter.DROP_OFFSET, "rig.hitch_to_drop", 6.9, 5.9, 0.1, true);
        assertFalse(section(lag).summary().contains("tape"), section(lag).summary());
        assertTrue(section(lag, drop).summary().contains("tape"));
    }

    @Test
    void a_figure_that_could_not_be_put_into_the_rig_file_is_no_silence() {
        SetupMeasurement drop = told(SetupParameter.DROP_OFFSET, "rig.hitch_to_drop", 0.2, -0.5, 0.1, true);
        assertTrue(section(drop).sidesSummary().contains("can't be corrected"));
        assertEquals("", section(untold(SetupParameter.DROP_OFFSET)).sidesSummary());
    }

    @Test
    void bounds_are_not_claimed_where_the_log_contradicts_the_rig_file() {
        Analysis wrong = with(told(SetupParameter.DROP_OFFSET, "rig.hitch_to_drop", 6.9, 5.9, 0.1, true));
        Analysis right = with(told(SetupParameter.DROP_OFFSET, "rig.hitch_to_drop", 5.9, 5.9, 0.1, false));
        assertTrue(answer(wrong).contains("words.reservation.setup"));
        assertFalse(answer(right).contains("words.reservation.setup"));
        assertTrue(recordAnswer(wrong).contains("it may lie outside"), recordAnswer(wrong));
        assertFalse(recordAnswer(right).contains("may lie outside"), recordAnswer(right));
    }

    private static NitrogenRecord record(Analysis a, UnitSystem units) {
        return NitrogenRecordReport.of(a, new ReportOptions(units, Paper.LETTER, ZoneOffset.UTC, null, "test"))
                .content();
    }

    private static String recordAnswer(Analysis a) {
        return record(a, UnitSystem.US).answer().stream()
                .map(NitrogenRecord.Sentence::text)
                .collect(Collectors.joining(" "));
    }

    /** Three records bound a row to nearly half of its volume: within 5 % can't be said of it. */
    @Test
    void no_yes_is_said_that_the_bounds_deny() {
        Analysis a = with();
        assertFalse(
                answer(a).contains("words.reservation.unsureRows"), answer(a).toString());
        Analysis few = new Analysis(
                a.rig(),
                a.log(),
                a.track(),
                a.strips(),
                a.delivery(),
                a.rates(),
                a.coverage(),
                a.diagnosis(),
                HandMadeIntervals.withRowsKnownTo(46.6, a.intervals()),
                a.notes());
        assertFalse(answer(few).contains("words.summary.yesTarget"), answer(few).toString());
        List<Message> reservations = summary(few).reservations();
        assertEquals(
                List.of(Message.of(
                        "words.reservation.unsureRows", Message.percent(46.6), Message.decimal(Limits.WATCH_PCT, 0))),
                reservations);
    }

    private static ReviewSummary summary(Analysis a) {
        return new ReviewSummary(Views.job(a), a.setup().contradicted(), null, Messages.english(US));
    }

    private static List<String> answer(Analysis a) {
        return KeysIn.all(summary(a).paragraphs());
    }

    @Test
    void the_record_bounds_its_liquid_and_its_skips_too() {
        // From HandMadeIntervals, metric: 764.8 L within 9; 1,000 m² within 100; 160 m², 40 to 230, in the unit beside
        // 1.9 ha.
        List<NitrogenRecord.Item> settings =
                record(with(), UnitSystem.METRIC).basis().settings();
        String sure = plain(settings.get(settings.size() - 1).value());
        assertTrue(sure.contains("UAN 32-0-0 765 \u00b1 9 L"), sure);
        assertTrue(sure.contains("skipped 0.100 \u00b1 0.010 ha"), sure);
        assertTrue(sure.contains("covered more than once 0.016 ha (0.004 to 0.023 ha)"), sure);
    }
}
