package io.rowledger.report.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.diagnose.signal.Figure;
import io.rowledger.document.pdf.Paper;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.findings.RowHealth;
import io.rowledger.report.findings.RowPicture;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.report.findings.SavedDiagnosis.ProductState;
import io.rowledger.report.findings.SavedDiagnosis.SavedFinding;
import io.rowledger.text.Message;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is gone, what remains, what is new, and what the later job could not have shown. */
class MatchingTest {
    private static SavedFinding found(FindingKind kind, Integer... rows) {
        return new SavedFinding(
                "uan",
                new Finding(
                        kind,
                        List.of(rows),
                        0,
                        600,
                        0.9,
                        100,
                        -5,
                        -2,
                        44,
                        -93,
                        Message.of("findings.text", "Evidence."),
                        Message.of("findings.text", "Rival."),
                        Message.of("findings.text", "Check."),
                        List.of()),
                List.of());
    }

    /** A job of twelve rows at 2 m/s, each evaluated for this long, s. */
    private static SavedDiagnosis job(double startS, double evaluatedS, SavedFinding... findings) {
        return job("Z", startS, evaluatedS, findings);
    }

    private static SavedDiagnosis job(String zone, double startS, double evaluatedS, SavedFinding... findings) {
        List<RowHealth> rows = new ArrayList<>();
        for (int r = 1; r <= 12; r++) {
            rows.add(new RowHealth(r, 0, 0, evaluatedS));
        }
        RowPicture picture =
                new RowPicture(new double[] {startS}, new double[] {startS + 600}, new int[] {1}, new float[12][1]);
        return new SavedDiagnosis(
                "North",
                "Bar",
                zone,
                startS,
                startS + 600,
                12,
                2,
                List.of(new ProductState("uan", "UAN", List.of(), picture, rows, List.of())),
                List.of(findings),
                List.of());
    }

    private static List<String> answer(SavedDiagnosis before, SavedDiagnosis after) {
        ReportOptions options = new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneOffset.UTC, null, "test");
        return ComparisonReport.of(before, after, options).content().answer().stream()
                .map(text -> text.replace('\u00a0', ' '))
                .toList();
    }

    @Test
    void a_fault_that_shows_no_more_is_gone() {
        SavedFinding old = found(FindingKind.PLUGGED, 7);
        Matching m = Matching.of(job(0, 600, old), job(9000, 600));
        assertEquals(List.of(old), m.gone());
        assertTrue(
                m.remaining().isEmpty() && m.fresh().isEmpty() && m.notTested().isEmpty());
        assertEquals(
                List.of("Yes: of 1 finding before, 1 is gone; nothing new shows."),
                answer(job(0, 600, old), job(9000, 600)));
    }

    @Test
    void a_plug_half_cleared_remains_and_another_row_is_new() {
        SavedFinding plugged = found(FindingKind.PLUGGED, 7);
        SavedFinding restricted = found(FindingKind.RESTRICTED, 7);
        SavedFinding other = found(FindingKind.RESTRICTED, 8);
        Matching m = Matching.of(job(0, 600, plugged), job(9000, 600, other, restricted));
        assertEquals(List.of(new Matching.Pair(plugged, restricted)), m.remaining());
        assertEquals(List.of(other), m.fresh());
        assertEquals(List.of(), m.gone());
        assertEquals(
                List.of(
                        "No: of 1 finding before, 1 remains; 1 finding is new.",
                        "Still there: Row 7 looks restricted.",
                        "New: Row 8 looks restricted."),
                answer(job(0, 600, plugged), job(9000, 600, other, restricted)));
    }

    @Test
    void the_same_kind_is_matched_before_one_of_the_same_family() {
        SavedFinding dropout = found(FindingKind.METER_DROPOUT, 3);
        SavedFinding stuck = found(FindingKind.METER_STUCK, 3);
        Matching m = Matching.of(job(0, 600, dropout, stuck), job(9000, 600, stuck));
        assertEquals(List.of(new Matching.Pair(stuck, stuck)), m.remaining());
        assertEquals(List.of(dropout), m.gone());
    }

    @Test
    void a_row_evaluated_for_less_than_two_minutes_was_not_tested() {
        SavedFinding old = found(FindingKind.PLUGGED, 7);
        Matching m = Matching.of(job(0, 600, old), job(9000, 119, new SavedFinding[0]));
        assertEquals(
                List.of(Message.of("compare.notTested.row", 7, Message.decimal(2, 0))),
                m.notTested().stream().map(Matching.NotTested::why).toList());
        assertEquals(List.of(), m.gone());
        assertEquals(
                "Not known yet: of 1 finding before, 1 could not be tested; nothing new shows.",
                answer(job(0, 600, old), job(9000, 119)).get(0));
    }

    @Test
    void a_supply_limit_is_not_tested_below_its_speed() {
        SavedFinding limit = new SavedFinding(
                "uan",
                found(FindingKind.SUPPLY_LIMITED).finding(),
                List.of(Figure.of("findings.figure.limitSpeed", 2.5, "m/s")));
        assertEquals(
                1, Matching.of(job(0, 600, limit), job(9000, 600)).notTested().size());
        SavedFinding lower = new SavedFinding(
                "uan",
                found(FindingKind.SUPPLY_LIMITED).finding(),
                List.of(Figure.of("findings.figure.limitSpeed", 1.5, "m/s")));
        assertEquals(1, Matching.of(job(0, 600, lower), job(9000, 600)).gone().size());
    }

    @Test
    void folders_the_wrong_way_round_are_noticed() {
        assertTrue(answer(job(9000, 600), job(0, 600)).get(0).contains("swapped the two folders"));
    }

    @Test
    void a_verdict_goes_by_the_median_and_by_the_time_off() {
        RowHealth fine = new RowHealth(1, 0.02, 0.01, 600);
        RowHealth low = new RowHealth(1, -0.06, 0, 600);
        RowHealth flicker = new RowHealth(1, 0, 0.3, 600);
        RowHealth brief = new RowHealth(1, 0, 0, 100);
        assertEquals(RowVerdict.FINE, RowVerdict.of(fine, fine));
        assertEquals(RowVerdict.REPAIRED, RowVerdict.of(low, fine));
        assertEquals(RowVerdict.WORSE, RowVerdict.of(fine, flicker));
        assertEquals(RowVerdict.STILL_OFF, RowVerdict.of(low, flicker));
        assertEquals(RowVerdict.NOT_EVALUATED, RowVerdict.of(low, brief));
        assertEquals(RowVerdict.NOT_EVALUATED, RowVerdict.of(brief, fine));
    }

    @Test
    void times_are_printed_by_the_zone_that_was_entered_for_either_job() {
        SavedDiagnosis chicago = job("America/Chicago", 0, 600);
        SavedDiagnosis denver = job("America/Denver", 9000, 600);
        SavedDiagnosis bySun = job("Etc/GMT+6", 9000, 600);
        assertEquals("America/Denver", ComparisonReport.zone(chicago, denver).getId());
        assertEquals("America/Chicago", ComparisonReport.zone(chicago, bySun).getId());
        assertEquals("Etc/GMT+6", ComparisonReport.zone(bySun, bySun).getId());
    }
}
