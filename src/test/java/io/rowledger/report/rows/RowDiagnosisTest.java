package io.rowledger.report.rows;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.Analysis;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.HandMadePicture;
import io.rowledger.diagnose.signal.RowTime;
import io.rowledger.document.pdf.Paper;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.report.common.HandMadeIntervals;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticDiagnosis;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.report.findings.FindingTitles;
import io.rowledger.report.findings.FindingUncertainties;
import io.rowledger.report.findings.FindingUncertainty;
import io.rowledger.report.findings.RowHealth;
import io.rowledger.report.findings.RowPicture;
import io.rowledger.report.rows.RowDiagnosis.Card;
import io.rowledger.text.Message;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Figures worked by hand from the job described at {@link SyntheticJob} and {@link SyntheticDiagnosis}. */
class RowDiagnosisTest {
    private static ReportOptions options(UnitSystem units) {
        return new ReportOptions(units, Paper.LETTER, ZoneOffset.UTC, null, "test");
    }

    private static RowDiagnosis build(SyntheticJob job) {
        return build(job.build());
    }

    private static RowDiagnosis build(Analysis analysis) {
        return RowDiagnosisReport.of(analysis, options(UnitSystem.METRIC)).content();
    }

    private static String text(String key, Object... values) {
        return Messages.english(options(UnitSystem.METRIC).format()).text(key, values);
    }

    private static String plain(String text) {
        return text.replace('\u00a0', ' ');
    }

    private static Finding finding(FindingKind kind, List<Integer> rows, double fromS, double toS) {
        double start = SyntheticJob.START_S;
        return new Finding(
                kind,
                rows,
                start + fromS,
                start + toS,
                0.876,
                900,
                12,
                5.1,
                44,
                -93,
                Message.of("findings.text", "E."),
                Message.of("findings.text", "R."),
                Message.of("findings.text", "look; then open; end."),
                List.of());
    }

    @Test
    void the_answer_names_the_row_the_fault_the_minute_and_the_confidence() {
        assertEquals(
                List.of("Row 7 looks plugged from 13:12 on (93% confidence)."),
                build(new SyntheticJob().withFinding()).answer());
    }

    /** The job runs from 13:00:00 to 13:24:35. */
    @Test
    void the_answer_says_from_the_start_and_to_the_end_where_that_is_so() {
        RowDiagnosis all = build(new SyntheticJob()
                .withFindings(List.of(
                        finding(FindingKind.METER_SCALE, List.of(2), 10, 1450),
                        finding(FindingKind.RESTRICTED, List.of(4, 5), 20, 700),
                        finding(FindingKind.SUPPLY_LIMITED, List.of(), 300, 700),
                        finding(FindingKind.LEAKING, List.of(1), 300, 700))));
        assertEquals(
                List.of(
                        "The meter of row 2 reads off by a constant share from start to end (88% confidence).",
                        "Rows 4, 5 look restricted from the start to 13:11 (88% confidence).",
                        "The supply runs short for the whole bar from 13:05 to 13:11 (88% confidence).",
                        plain(text("rows.answer.more", 1))),
                all.answer().stream().map(RowDiagnosisTest::plain).toList());
    }

    @Test
    void two_products_are_told_apart() {
        RowDiagnosis d = build(new SyntheticJob().withSecondProduct().withFinding());
        assertTrue(
                d.answer().get(0).startsWith("UAN 32-0-0: Row 7 looks plugged"),
                d.answer().get(0));
        assertEquals(2, d.pictures().size());
        assertEquals(1, d.pictures().get(0).marks().size());
        assertEquals(0, d.pictures().get(1).marks().size());
    }

    @Test
    void a_cause_that_shows_in_every_product_is_said_of_the_row_and_framed_in_every_picture() {
        RowDiagnosis d =
                build(new SyntheticJob().withSecondProduct().faultyInBoth().withFinding());
        assertTrue(
                d.answer().get(0).startsWith("Row 7 looks plugged"), d.answer().get(0));
        assertEquals(1, d.pictures().get(0).marks().size());
        assertEquals(d.pictures().get(0).marks(), d.pictures().get(1).marks());
        assertEquals("Row 7 looks plugged", d.cards().get(0).title());
    }

    /** 24 of the 25 bins of a pass are evaluated: 96 %. No row is off. */
    @Test
    void nothing_found_is_said_with_its_grounds() {
        assertEquals(
                List.of(text("rows.answer.allClearFarthest", 10, Message.percent(96), 1, Message.percent(0))),
                build(new SyntheticJob().even()).answer());
    }

    @Test
    void nothing_found_where_little_could_be_evaluated_is_no_all_clear() {
        Analysis a = new SyntheticJob().even().build();
        float[][] ratio = new float[10][4];
        for (float[] row : ratio) {
            row[0] = 1;
            row[1] = Float.NaN;
            row[2] = Float.NaN;
            row[3] = Float.NaN;
        }
        RowTime quarter = HandMadePicture.of(
                new double[] {0, 5, 10, 15}, new double[] {5, 10, 15, 20}, new int[] {1, 1, 1, 1}, ratio);
        assertEquals(
                List.of(text("rows.answer.noAllClear", 10, 10, Message.percent(25))),
                build(with(a, quarter)).answer());
    }

    @Test
    void a_row_that_was_never_evaluated_spoils_the_all_clear() {
        Analysis a = new SyntheticJob().even().build();
        float[][] ratio = new float[10][1];
        for (int r = 0; r < 10; r++) {
            ratio[r][0] = r == 4 ? Float.NaN : 1;
        }
        RowTime picture = HandMadePicture.of(new double[] {0}, new double[] {5}, new int[] {1}, ratio);
        assertEquals(
                List.of(text("rows.answer.noAllClear", 9, 10, Message.percent(90))),
                build(with(a, picture)).answer());
    }

    private static Analysis with(Analysis a, RowTime picture) {
        return new Analysis(
                a.rig(),
                a.log(),
                a.track(),
                a.strips(),
                a.delivery(),
                a.rates(),
                a.coverage(),
                new Diagnosis(List.of(), List.of(), List.of(), List.of(picture), List.of(), List.of()),
                a.intervals(),
                a.notes());
    }

    @Test
    void a_card_says_when_where_and_what_it_cost() {
        Card card = build(new SyntheticJob().withFinding()).cards().get(0);
        assertEquals("Row 7 looks plugged", card.title());
        assertEquals("93% confidence", card.sure());
        assertEquals("13:12:30 to 13:24:35 (12 min 5 s)", plain(card.when()));
        assertEquals("44.000000, -93.000000, first in pass 6", card.where());
        // 1,000 m² are 0.10 ha; 40 L × 0.424 kg/L = 16.96 kg.
        assertEquals("0.10 ha of ground, 40.0 L too little (17.0 kg N)", plain(card.cost()));
        assertEquals("0.0%", card.figures().get(0).value());
    }

    /**
     * By hand from {@link HandMadeIntervals}: 1,000 m² of a row known to 30 of 2,000 m² are good to 15 m². Due there: 1,000 m² × the
     * mean rate; a meter of 1.5 % of its own is 1.645 · 1.5 %/√6 of that, and of what is shared 0.9 · 1.5 %/√2 of the 40 L.
     */
    @Test
    void ground_and_liquid_of_a_finding_say_how_sure_they_are() {
        Analysis a = HandMadeIntervals.in(new SyntheticJob().withFinding().build());
        FindingUncertainty uncertainty = new FindingUncertainties(
                        a.rig(), a.strips(), a.track(), a.coverage(), a.diagnosis(), a.intervals())
                .of(0);
        assertEquals(985, uncertainty.areaM2().low(), 1e-9);
        double dueL = 1000 * a.coverage().received().get(0).meanRateLPerM2();
        double own = 1.645 * 0.015 / Math.sqrt(6) * dueL;
        double shared = 0.9 * 0.015 / Math.sqrt(2) * 40;
        double half = Math.sqrt(own * own + shared * shared);
        assertEquals(-40 + half, uncertainty.volumeL().high(), 1e-9);
        assertEquals(-40 - half, uncertainty.volumeL().low(), 1e-9);
        // With 0.424 kg/L and a density within 1 %: 0.36 L of the 40 L more.
        double kg = 0.424 * Math.hypot(half, 0.9 * 0.01 * 40);
        assertEquals(
                kg, (uncertainty.nitrogenKg().high() - uncertainty.nitrogenKg().low()) / 2, 1e-3);
        String cost = plain(build(a).cards().get(0).cost());
        assertEquals("0.100 \u00b1 0.002 ha of ground, 40.0 \u00b1 0.6 L too little (17.0 \u00b1 0.3 kg N)", cost);
    }

    /** The liquid may have left the knife all the same. */
    @Test
    void what_a_meter_costs_is_said_to_be_of_the_record() {
        Finding stuck = finding(FindingKind.METER_STUCK, List.of(1), 0, 60);
        assertEquals(
                "900 m² of ground, 12.0 L too much in the record (5.1 kg N)",
                plain(options(UnitSystem.METRIC)
                        .messages()
                        .text(FindingFacts.cost(stuck, FindingUncertainty.unknown(stuck)))));
    }

    @Test
    void a_check_is_a_chain_of_steps_in_its_order() {
        assertEquals(
                List.of("Look.", "Then open.", "End."),
                build(new SyntheticJob().withFindings(List.of(finding(FindingKind.LEAKING, List.of(1), 0, 60))))
                        .cards()
                        .get(0)
                        .checks());
    }

    @Test
    void baselines_say_which_row_stands_apart() {
        RowDiagnosis.Baseline baseline = build(new SyntheticJob()).baselines().get(0);
        assertEquals(10, baseline.rows().size());
        RowDiagnosis.BaselineLine row3 = baseline.rows().get(2);
        assertEquals("+6.0%", row3.usual());
        assertEquals("1.2%", row3.spread());
        assertEquals("1.4 s", plain(row3.response()));
        assertEquals("20 min 0 s", plain(row3.evaluated()));
        assertEquals(text("rows.baseline.outlier"), row3.note());
        assertEquals("not known", baseline.rows().get(0).response());
        assertEquals(text("rows.baseline.summary", 1), baseline.summary());
    }

    @ParameterizedTest
    @EnumSource(FindingKind.class)
    void every_kind_has_a_clause_for_one_row_two_rows_and_the_bar(FindingKind kind) {
        for (List<Integer> rows : List.of(List.of(7), List.of(4, 5), List.<Integer>of())) {
            String clause = options(UnitSystem.US).messages().text(FindingTitles.of(kind, rows));
            assertTrue(Character.isUpperCase(clause.charAt(0)), clause);
            assertTrue(!clause.endsWith(".") && !clause.contains("  "), clause);
        }
    }

    /** 700 bins of 2 s in two passes of 500 and 200: three together make 167 and 67 columns. */
    @Test
    void a_picture_is_cut_to_the_paper_and_never_across_a_pass() {
        int n = 700;
        double[] start = new double[n];
        double[] end = new double[n];
        int[] pass = new int[n];
        float[][] ratio = new float[1][n];
        for (int b = 0; b < n; b++) {
            start[b] = b * 2.0 + (b < 500 ? 0 : 60);
            end[b] = start[b] + 2;
            pass[b] = b < 500 ? 1 : 2;
            ratio[0][b] = b % 3 == 0 ? 0.7f : b % 3 == 1 ? 1 : Float.NaN;
        }
        RowPicture picture = RowPicture.of(HandMadePicture.of(start, end, pass, ratio));
        assertEquals(350, picture.columns());
        // Two together: 0.7 and 1 give −0.15; then a gap and 0.7: half the time evaluated, −0.3; then 1 and a gap: 0.
        assertEquals(-0.15, picture.deviation()[0][0], 1e-6);
        assertEquals(-0.3, picture.deviation()[0][1], 1e-6);
        assertEquals(0, picture.deviation()[0][2], 1e-6);
        assertEquals(1, picture.pass()[249]);
        assertEquals(1000, picture.endS()[249]);
        assertEquals(1060, picture.startS()[250]);
        assertTrue(picture.passBegins(250));
        assertEquals(1400, picture.workingS(), 1e-9);
    }

    /** Row 7: 5 passes at 1 and 5 at 0, 24 evaluated bins of 5 s in each; the median of 120 ones and 120 zeros is a half. */
    @Test
    void a_rows_health_counts_its_faults() {
        List<RowHealth> rows =
                RowHealth.of(new SyntheticJob().build().diagnosis().pictures().get(0));
        assertEquals(-0.5, rows.get(6).medianDeviation(), 1e-9);
        assertEquals(0.5, rows.get(6).offShare(), 1e-9);
        assertEquals(1200, rows.get(6).evaluatedS(), 1e-6);
        assertEquals(0.06, rows.get(2).medianDeviation(), 1e-6);
        assertEquals(0, rows.get(2).offShare());
    }
}
