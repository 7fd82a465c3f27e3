package io.rowledger.report.season;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.FindingKind;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.rate.NutrientKg;
import io.rowledger.report.findings.FindingTitles;
import io.rowledger.rig.Credit;
import io.rowledger.rig.EarlierApplication;
import io.rowledger.text.Message;
import io.rowledger.uncertainty.Interval;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Ledgers small enough to add up by hand: hectares and round kilograms. */
class SeasonBuilderTest {
    private static final double NAN = Double.NaN;

    /** A job of a hectare: so many kilograms of nitrogen, on this day. */
    private static SeasonJob job(String folder, String field, String day, double nitrogenKg) {
        return job(folder, field, day, nitrogenKg, NAN, List.of(folder), List.of(), List.of());
    }

    private static SeasonJob job(
            String folder,
            String field,
            String day,
            double nitrogenKg,
            double boundaryM2,
            List<String> logs,
            List<EarlierApplication> earlier,
            List<Credit> credits,
            JobFinding... findings) {
        double startS = Instant.parse(day + "T15:00:00Z").getEpochSecond();
        NutrientKg kg = new NutrientKg(nitrogenKg, 0, 0, 0);
        return new SeasonJob(
                folder,
                logs,
                "Two Oaks",
                field,
                "Corn",
                ZoneId.of("America/Chicago"),
                startS,
                startS + 3600,
                10_000,
                boundaryM2,
                List.of(new SeasonJob.AppliedProduct("uan", "UAN", nitrogenKg / 0.4, nitrogenKg / 0.32, kg)),
                earlier,
                credits,
                0.02,
                0.025,
                new Interval(10_000, 9_900, 10_100),
                new Interval(nitrogenKg, nitrogenKg - 2, nitrogenKg + 3),
                List.of(findings),
                null);
    }

    /** A restricted row is a note; an unlikely finding, one that cost nothing and a wrong line in the rig file are not. */
    @Test
    void what_may_be_wrong_with_the_machine_is_a_note() {
        SeasonJob faulty = job(
                "a",
                "North",
                "2026-06-01",
                140,
                NAN,
                List.of("a"),
                List.of(),
                List.of(),
                new JobFinding(FindingKind.RESTRICTED, List.of(3), 0.9),
                new JobFinding(FindingKind.DROP_OFFSET, List.of(), 0.8),
                new JobFinding(FindingKind.NO_TURN_COMPENSATION, List.of(), List.of(), 0.98, true),
                new JobFinding(FindingKind.METER_SCALE, List.of(5), 0.6),
                new JobFinding(FindingKind.HUNTING, List.of(), 0.4));
        assertEquals(
                List.of(Message.of(
                        "season.note.findings", "North", "a", FindingTitles.of(FindingKind.RESTRICTED, List.of(3)), 1)),
                SeasonBuilder.build(List.of(faulty)).notes());
    }

    private static EarlierApplication starter(String date, double kgPerM2) {
        return new EarlierApplication(date, "Starter", kgPerM2, 0, 0, 0, "");
    }

    @Test
    void a_job_whose_meters_were_in_question_is_named_and_its_bounds_add_up() {
        SeasonJob sound = job("a", "North", "2026-06-01", 140);
        SeasonJob b = job("b", "South", "2026-06-02", 150);
        // 150 kg metered; with a blank row it may have been 165.
        SeasonJob unsure = new SeasonJob(
                b.folder(),
                b.digests(),
                b.farm(),
                b.field(),
                b.crop(),
                b.zone(),
                b.startS(),
                b.endS(),
                b.coveredM2(),
                b.boundaryM2(),
                b.products(),
                b.earlier(),
                b.credits(),
                b.planKgPerM2(),
                b.capKgPerM2(),
                b.coveredWithin(),
                new Interval(150, 148, 165),
                b.findings(),
                b.rows());
        Season s = SeasonBuilder.build(List.of(sound, unsure));
        assertEquals(
                List.of("season.note.nitrogenUnsure"),
                s.notes().stream()
                        .map(note -> note.key())
                        .filter(key -> key.contains("Unsure"))
                        .toList());
        assertEquals(140 + 3 + 165, s.nitrogenWithin().high(), 1e-9);
        assertEquals(138 + 148, s.nitrogenWithin().low(), 1e-9);
    }

    @Test
    void fields_products_and_the_season_are_sums() {
        Season s = SeasonBuilder.build(List.of(
                job("c", "South", "2026-06-03", 150),
                job("a", "North", "2026-06-01", 140),
                job("b", " north ", "2026-06-02", 30)));
        assertEquals(
                List.of("north", "South"),
                s.fields().stream().map(SeasonField::field).toList());
        assertEquals(
                List.of("a", "b", "c"), s.jobs().stream().map(SeasonJob::folder).toList());
        assertEquals(170, s.fields().get(0).totalKg(), 1e-9);
        assertEquals(320, s.kg().nitrogenKg(), 1e-9);
        // Each job's nitrogen is known from 2 kg less to 3 kg more, its ground to 100 m²: the same meters, the same
        // tape.
        assertEquals(new Interval(320, 314, 329), s.nitrogenWithin());
        assertEquals(new Interval(170, 166, 176), s.fields().get(0).nitrogenWithin());
        assertEquals(new Interval(30_000, 29_700, 30_300), s.coveredWithin());
        assertEquals(3, s.products().get(0).jobs());
        assertEquals(800, s.products().get(0).volumeL(), 1e-9);
        assertEquals(30_000, s.coveredM2(), 1e-9);
        assertEquals(0.015, s.fields().get(1).totalKgPerM2(), 1e-12);
    }

    @Test
    void several_jobs_of_a_field_have_a_rate_only_over_their_common_boundary() {
        Season without =
                SeasonBuilder.build(List.of(job("a", "North", "2026-06-01", 140), job("b", "North", "2026-06-02", 30)));
        assertTrue(Double.isNaN(without.fields().get(0).totalKgPerM2()));
        assertEquals(List.of(Message.of("season.note.noCommonBoundary", "North", 2)), without.notes());
        Season with = SeasonBuilder.build(List.of(
                job("a", "North", "2026-06-01", 140, 20_000, List.of("a"), List.of(), List.of()),
                job("b", "North", "2026-06-02", 30, 20_010, List.of("b"), List.of(), List.of())));
        assertEquals(170 / 20_010.0, with.fields().get(0).totalKgPerM2(), 1e-12);
        assertEquals(List.of(), with.notes());
    }

    @Test
    void a_folder_named_twice_or_a_log_reported_twice_is_counted_once_and_said() {
        Season s = SeasonBuilder.build(List.of(
                job("a", "North", "2026-06-01", 140),
                job("a", "North", "2026-06-01", 140),
                job("copy", "North", "2026-06-01", 140, NAN, List.of("a"), List.of(), List.of())));
        assertEquals(140, s.kg().nitrogenKg(), 1e-9);
        assertEquals(
                List.of(Message.of("season.note.namedTwice", "a"), Message.of("season.note.sameLogs", "copy", "a")),
                s.notes());
        Season other = SeasonBuilder.build(List.of(
                job("a", "North", "2026-06-01", 140),
                job("again", "North", "2026-06-01", 150, NAN, List.of("a"), List.of(), List.of())));
        assertEquals(140, other.kg().nitrogenKg(), 1e-9);
        assertEquals(List.of(Message.of("season.note.sameLogsDiffer", "again", "a")), other.notes());
    }

    @Test
    void a_part_of_a_job_is_left_out_for_the_whole_in_any_order() {
        SeasonJob morning = job("morning", "North", "2026-06-01", 60, NAN, List.of("m"), List.of(), List.of());
        SeasonJob whole = job("whole", "North", "2026-06-01", 140, NAN, List.of("m", "n"), List.of(), List.of());
        for (List<SeasonJob> order : List.of(List.of(morning, whole), List.of(whole, morning))) {
            Season s = SeasonBuilder.build(order);
            assertEquals(140, s.kg().nitrogenKg(), 1e-9);
            assertEquals(List.of(Message.of("season.note.partOfLogs", "morning", "whole")), s.notes());
        }
        SeasonJob across = job("across", "North", "2026-06-01", 90, NAN, List.of("n", "o"), List.of(), List.of());
        UnusableInputException e =
                assertThrows(UnusableInputException.class, () -> SeasonBuilder.build(List.of(whole, across)));
        assertEquals("across", e.file());
    }

    @Test
    void an_earlier_application_that_is_a_job_of_the_ledger_is_not_counted_again() {
        SeasonJob spring = job("spring", "North", "2026-04-28", 12, 10_000, List.of("s"), List.of(), List.of());
        SeasonJob june = job(
                "june",
                "North",
                "2026-06-01",
                140,
                10_000,
                List.of("j"),
                List.of(starter("2026-04-28", 0.0012)),
                List.of());
        Season s = SeasonBuilder.build(List.of(june, spring));
        assertEquals(0, s.fields().get(0).earlierKg(), 1e-12);
        assertEquals(152, s.fields().get(0).totalKg(), 1e-9);
        assertEquals(
                List.of(Message.of("season.note.earlierIsJob", "North", "Starter", "2026-04-28", "spring")), s.notes());
        // Alone, the same job counts it: 0.0012 kg/m2 on a hectare.
        assertEquals(152, SeasonBuilder.build(List.of(june)).fields().get(0).totalKg(), 1e-9);
        // On another field it is another application.
        SeasonJob south = job("south", "South", "2026-04-28", 12, 10_000, List.of("o"), List.of(), List.of());
        assertEquals(12, SeasonBuilder.build(List.of(june, south)).earlierKg(), 1e-9);
    }

    @Test
    void what_two_jobs_of_a_field_both_had_before_counts_once() {
        List<Credit> soy = List.of(new Credit("Soybeans", 0.003, ""));
        List<EarlierApplication> fall = List.of(starter("last fall", 0.002));
        Season s = SeasonBuilder.build(List.of(
                job("a", "North", "2026-06-01", 100, 10_000, List.of("a"), fall, soy),
                job("b", "North", "2026-06-20", 40, 10_000, List.of("b"), fall, soy)));
        assertEquals(20, s.fields().get(0).earlierKg(), 1e-9);
        assertEquals(30, s.fields().get(0).creditKg(), 1e-9);
        assertEquals(190, s.fields().get(0).totalKg(), 1e-9);
        assertTrue(
                s.notes().contains(Message.of("season.note.earlierWithoutDate", "North", "Starter", "last fall")),
                s.notes().toString());
        assertTrue(
                s.notes().contains(Message.of("season.note.creditTwice", "North", "Soybeans")),
                s.notes().toString());
    }

    @Test
    void a_job_without_a_nitrogen_figure_leaves_the_totals_unknown() {
        Season s = SeasonBuilder.build(
                List.of(job("a", "North", "2026-06-01", 140), job("b", "South", "2026-06-02", NAN)));
        assertTrue(Double.isNaN(s.kg().nitrogenKg()));
        assertEquals(140, s.fields().get(0).totalKg(), 1e-9);
        assertEquals(List.of(Message.of("season.note.nitrogenUnknown", "South", "b")), s.notes());
    }

    @Test
    void fields_without_a_name_stay_apart() {
        Season s = SeasonBuilder.build(List.of(job("a", "", "2026-06-01", 140), job("b", "", "2026-06-02", 100)));
        assertEquals(
                List.of("Field without a name (a)", "Field without a name (b)"),
                s.fields().stream().map(SeasonField::field).toList());
    }
}
