package io.rowledger.report.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.pdf.Paper;
import io.rowledger.document.text.Wording;
import io.rowledger.report.common.Fact;
import io.rowledger.report.common.HandMadeIntervals;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.report.review.PassReview.Figure;
import io.rowledger.report.review.PassReview.RowRate;
import io.rowledger.report.sections.CoverageSection;
import io.rowledger.report.sections.DefectLine;
import io.rowledger.report.sections.QualitySection;
import io.rowledger.report.sections.ShutOffLine;
import io.rowledger.units.UnitSystem;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every expected figure is worked by hand from the job described at {@link SyntheticJob}. */
public class PassReviewTest {
    public static ReportOptions us() {
        return new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneId.of("America/Chicago"), null, "test");
    }

    public static ReportOptions metric() {
        return new ReportOptions(UnitSystem.METRIC, Paper.A4, ZoneId.of("UTC"), null, "test");
    }

    private static String plain(String text) {
        return text.replace('\u00a0', ' ');
    }

    private static Figure figure(PassReview review, String label) {
        return Stream.concat(review.figures().stream(), review.otherFigures().stream())
                .filter(f -> f.label().equals(label))
                .findFirst()
                .orElseThrow(() -> new AssertionError(label + " not in " + review.figures()));
    }

    private static String fact(List<Fact> facts, String label) {
        return plain(facts.stream()
                .filter(f -> f.label().equals(label))
                .findFirst()
                .orElseThrow(() -> new AssertionError(label + " not in " + facts))
                .value());
    }

    @Test
    void headline_figures_in_metric() {
        PassReview review =
                PassReviewReport.of(new SyntheticJob().build(), metric()).content();
        // 2 ha less five bare strips of 0.8 m by 250 m.
        assertEquals("1.90 ha", plain(figure(review, "Covered").value()));
        assertEquals(
                "of 2.00 ha in the boundary", plain(figure(review, "Covered").note()));
        // Eight rows of 80 L, one of 84.8 L, one of 40 L.
        assertEquals("764.8 L", plain(figure(review, "Applied").value()));
        assertEquals("target 800.0 L (−4.4%)", plain(figure(review, "Applied").note()));
        // 764.8 L on 1.9 ha.
        assertEquals("403 L/ha", plain(figure(review, "Mean rate").value()));
        // 764.8 L × 1.325 kg/L × 0.32 = 324.3 kg, on 1.9 ha 170.7 kg/ha.
        assertEquals("171 kg N/ha", plain(figure(review, "Nitrogen").value()));
        assertEquals("324 kg N in all", plain(figure(review, "Nitrogen").note()));
        // 1,000 m² of 20,000 m².
        assertEquals("0.10 ha", plain(figure(review, "Skipped").value()));
        assertEquals(
                "5.0% of the field, 5 places", plain(figure(review, "Skipped").note()));
        // In the unit of the 0.10 ha skipped beside it.
        assertEquals("0.016 ha", plain(figure(review, "Overlap").value()));
        assertEquals(
                "0.8% of the field, 1 place", plain(figure(review, "Overlap").note()));
        // Rows sweep alike, so the bar's mean is the mean of 1 to 10 %: 5.5 %, and a quarter of it.
        assertEquals("1.4%", figure(review, "Turn error left").value());
        assertEquals(
                "equal flow would leave 5.5%", figure(review, "Turn error left").note());
    }

    @Test
    void headline_figures_show_their_bounds_and_no_digit_those_deny() {
        Analysis a = new SyntheticJob().build();
        PassReview review =
                PassReviewReport.of(HandMadeIntervals.in(a), metric()).content();
        assertEquals("1.90 ha", plain(figure(review, "Covered").value()));
        assertEquals(
                "± 0.02 ha; of 2.00 ha in the boundary",
                plain(figure(review, "Covered").note()));
        // 764.8 L within 9 L either way: the tenths mean nothing.
        assertEquals("765 L", plain(figure(review, "Applied").value()));
        assertTrue(plain(figure(review, "Applied").note()).startsWith("± 9 L; target"));
        assertEquals("171 kg N/ha", plain(figure(review, "Nitrogen").value()));
        assertEquals(
                "± 6 kg N/ha; 324 ± 6 kg N in all",
                plain(figure(review, "Nitrogen").note()));
        // Bounds that lie to one side are named: 160 m², 40 to 230.
        assertTrue(
                plain(figure(review, "Overlap").note()).startsWith("0.004 to 0.023 ha;"),
                figure(review, "Overlap").note());
        assertTrue(
                plain(review.products().get(0).summary())
                        .endsWith(
                                "The volume of a single row is good to \u00b1 2.0%, its rate to \u00b1 3.0%, its ground to \u00b1 1.5%;"
                                        + " the volume of a usual pass to \u00b1 2.0%, its ground to \u00b1 1.0%, of a short pass"
                                        + " less well (9 times in 10)."),
                review.products().get(0).summary());
        String sure = plain(review.quality().sure());
        assertTrue(sure.contains("Meters are taken as right within 1.5% (rig file)"), sure);
        assertTrue(sure.contains("the density within 1.0% (default:"), sure);
        assertTrue(sure.contains("fixes of type RTK fixed drift by 1.1 cm"), sure);
        assertTrue(review.hasBounds());
        assertFalse(PassReviewReport.of(a, metric()).content().hasBounds());
    }

    @Test
    void headline_figures_in_us_units() {
        PassReview review =
                PassReviewReport.of(new SyntheticJob().build(), us()).content();
        // 20,000 m² ÷ 4,046.856 m²; 764.8 L ÷ 3.785412 L; 402.5 L/ha ÷ 9.353958; 324.3 kg ÷ 0.4535924 kg.
        assertEquals(
                "of 4.94 ac in the boundary", plain(figure(review, "Covered").note()));
        assertEquals("202.0 gal", plain(figure(review, "Applied").value()));
        assertEquals("43.0 gal/ac", plain(figure(review, "Mean rate").value()));
        assertEquals("target 42.8 gal/ac", plain(figure(review, "Mean rate").note()));
        assertEquals("715 lb N in all", plain(figure(review, "Nitrogen").note()));
        assertEquals("152 lb N/ac", plain(figure(review, "Nitrogen").value()));
        // 160 m² ÷ 4,046.8564224 m².
        assertEquals("0.040 ac", plain(figure(review, "Overlap").value()));
    }

    @Test
    void the_verdict_names_the_rows_that_are_off() {
        PassReview review =
                PassReviewReport.of(new SyntheticJob().build(), metric()).content();
        assertEquals(
                List.of(
                        "No, by the meters: 1 of 10 rows is more than 10% off its target volume: row 7 at −50.0%. "
                                + "1 more is 5 to 10% off: row 3 at +6.0%. The other 8 are within 5%.",
                        "0.10 ha skipped in 5 places; 0.016 ha of overlap in 1 place. "
                                + "99.2% of the covered ground received within 10% of its target."),
                review.verdict().stream().map(PassReviewTest::plain).toList());
    }

    @Test
    void an_even_job_is_said_to_be_even_and_nothing_is_said_about_the_machine() {
        PassReview review =
                PassReviewReport.of(new SyntheticJob().even().build(), metric()).content();
        assertEquals(
                "Yes, by the meters: every row came within 5% of its target volume. The farthest off is row 1 at 0.0%.",
                review.verdict().get(0));
        assertEquals(
                "99.2% of the covered ground received within 10% of its target. "
                        + "No ground inside the boundary was skipped; no overlap.",
                review.verdict().get(1));
        assertTrue(review.findings().isEmpty());
        assertFalse(review.hasFindings());
    }

    @Test
    void what_makes_the_figures_doubtful_stands_beside_them() {
        List<String> sound = PassReviewReport.of(new SyntheticJob().build(), metric())
                .content()
                .verdict();
        assertEquals(2, sound.size());
        List<String> doubtful = PassReviewReport.of(
                        new SyntheticJob().gridHolds(1.0011).used(909).build(), metric())
                .content()
                .verdict();
        // 101 of 1,010 records.
        assertEquals(
                List.of(
                        "The map's total does not agree with the log's total: don't trust the map.",
                        "10.0% of the log's records could not be used."),
                doubtful.subList(2, 4));
        String check = fact(
                PassReviewReport.of(new SyntheticJob().gridHolds(1.0011).build(), metric())
                        .content()
                        .quality()
                        .checks(),
                "Map total against log total, UAN 32-0-0");
        assertTrue(check.contains("0.110%, MORE than 0.1%"), check);
    }

    @Test
    void a_log_without_a_pass_is_not_evaluated() {
        PassReview review = PassReviewReport.of(
                        new SyntheticJob().withoutPasses().build(), metric())
                .content();
        assertEquals(List.of("The log holds no working pass: there is nothing to evaluate."), review.verdict());
        assertEquals("0.00 ha", plain(figure(review, "Covered").value()));
        assertEquals("not known", figure(review, "Mean rate").value());
        assertEquals("\u2013", review.turns().get(0).left());
        assertEquals("", figure(review, "Turn error left").note());
        assertEquals("0.0 kg N in all", plain(figure(review, "Nitrogen").note()));
    }

    @Test
    void rows_and_passes_in_a_line_are_written_as_ranges() {
        assertEquals("", Wording.ranges(List.of()));
        assertEquals("3", Wording.ranges(List.of(3)));
        assertEquals("3, 4", Wording.ranges(List.of(3, 4)));
        assertEquals("1–3, 5, 8, 9", Wording.ranges(List.of(1, 2, 3, 5, 8, 9)));
    }

    @Test
    void without_a_target_rows_are_compared_with_one_another() {
        PassReview review = PassReviewReport.of(
                        new SyntheticJob().withoutTarget().build(), metric())
                .content();
        // The mean is 764.8 L ÷ 10 = 76.48 L: row 7 with 40 L is 47.7 % under, row 1 with 80 L 4.6 % over.
        RowRate row7 = review.products().get(0).rows().get(6);
        assertEquals("−47.7%", row7.deviation());
        assertEquals("–", row7.targetVolume());
        assertEquals("+4.6%", review.products().get(0).rows().get(0).deviation());
        assertTrue(
                review.verdict().get(0).contains("no target rate was given"),
                review.verdict().get(0));
        assertEquals("no target known", figure(review, "Applied").note());
        assertEquals("not known", figure(review, "Ground on rate").value());
    }

    @Test
    void without_a_density_nitrogen_is_not_known() {
        PassReview review = PassReviewReport.of(
                        new SyntheticJob().withoutDensity().build(), metric())
                .content();
        assertEquals("not known", figure(review, "Nitrogen").value());
        assertEquals("no density in the rig file", figure(review, "Nitrogen").note());
    }

    @Test
    void without_a_boundary_the_review_says_what_a_skip_is() {
        PassReview review = PassReviewReport.of(
                        new SyntheticJob().withoutBoundary().build(), metric())
                .content();
        assertTrue(
                review.ground().skipSummary().contains("without a field boundary"),
                review.ground().skipSummary());
        assertEquals("2.00 ha worked", plain(figure(review, "Covered").note()));
        assertTrue(review.quality().areas().contains("no field boundary"));
    }

    @Test
    void two_products_each_get_their_figures_and_share_the_nitrogen() {
        PassReview review = PassReviewReport.of(
                        new SyntheticJob().withSecondProduct().build(), metric())
                .content();
        assertEquals("80.0 L", plain(figure(review, "ATS 12-0-0-26S: Applied").value()));
        // 324.275 kg and 80 L × 1.32 kg/L × 0.12 = 12.672 kg.
        assertEquals("337 kg N in all", plain(figure(review, "Nitrogen").note()));
        assertTrue(
                review.verdict().get(1).startsWith("ATS 12-0-0-26S: Yes"),
                review.verdict().get(1));
    }

    @Test
    void rows_carry_their_figures() {
        List<RowRate> rows = PassReviewReport.of(new SyntheticJob().build(), metric())
                .content()
                .products()
                .get(0)
                .rows();
        RowRate row7 = rows.get(6);
        assertEquals("0.20", row7.swept());
        assertEquals("0.10", row7.applied());
        assertEquals("40.0", row7.volume());
        assertEquals("80.0", row7.targetVolume());
        // 40 L on the 1,000 m² it delivered on.
        assertEquals("400", row7.rate());
        assertEquals("−50.0%", row7.deviation());
        assertEquals("act", row7.mark());
        assertEquals("watch", rows.get(2).mark());
        assertEquals("", rows.get(0).mark());
        // 84.8 L on 2,000 m².
        assertEquals("424", rows.get(2).rate());
    }

    @Test
    void passes_carry_their_figures() {
        PassReview review =
                PassReviewReport.of(new SyntheticJob().build(), us()).content();
        PassReview.PassLine pass6 = review.passes().get(5);
        assertEquals(6, pass6.pass());
        // 13:00 UTC is 08:00 in Chicago in June; pass 6 starts 750 s later and lasts 125 s.
        assertEquals("8:12:30\u00a0AM", pass6.start());
        assertEquals("2 min 5 s", plain(pass6.duration()));
        assertEquals("820", pass6.length());
        assertEquals("S", pass6.heading());
        // 250 m in 125 s is 2 m/s.
        assertEquals("4.5", pass6.speed());
        // 8 × 8 L + 8.48 L of 80 L.
        assertEquals("−9.4%", pass6.products().get(0).deviation());
        assertEquals("watch", pass6.products().get(0).mark());
    }

    @Test
    void places_are_listed_with_number_place_pass_row_and_cause() {
        CoverageSection ground = PassReviewReport.of(
                        new SyntheticJob().extraPlaces(30).build(), metric())
                .content()
                .ground();
        DefectLine first = ground.skips().get(0);
        assertEquals("S1", first.number());
        assertEquals("200 m²", plain(first.area()));
        assertEquals("6", first.passes());
        assertEquals("7", first.rows());
        assertEquals("row not applying", first.cause());
        // A strip of 250 m that pass 6, driven south, left from 125 m north of 44° N on: its ends lie within a
        // twentieth of its
        // length, 12.5 m. A minute of latitude is 1,852 m to within 0.3 %, so 125 m is 0.001125° and 12.5 m 0.000113°.
        double north = Double.parseDouble(first.from().text().substring(0, 9));
        double south = Double.parseDouble(first.to().text().substring(0, 9));
        assertTrue(north > 44.001012 && north < 44.001125, first.from().text());
        assertTrue(south < 43.998988 && south > 43.998875, first.to().text());
        assertEquals(
                "geo:" + first.from().text().replace(", ", ","), first.from().uri());
        assertEquals("1–10", ground.overlaps().get(0).rows());
        assertEquals(15, ground.overlaps().size());
        assertEquals("And 16 smaller places, 16 m² in all.", plain(ground.overlapRest()));
        assertEquals("", ground.skipRest());
    }

    @Test
    void shut_offs_say_what_they_saved_and_cost() {
        List<ShutOffLine> lines = PassReviewReport.of(new SyntheticJob().build(), metric())
                .content()
                .ground()
                .shutOffs();
        assertEquals("0.040 ha", plain(lines.get(0).area()));
        assertEquals("16.0 L saved", plain(lines.get(0).liquid()));
        assertEquals("40.0 L lacking", plain(lines.get(1).liquid()));
        assertEquals("6.4 L too much", plain(lines.get(2).liquid()));
        assertTrue(PassReviewReport.of(new SyntheticJob().even().build(), metric())
                .content()
                .ground()
                .shutOffs()
                .isEmpty());
    }

    @Test
    void data_quality_says_what_the_figures_rest_on() {
        QualitySection quality = PassReviewReport.of(new SyntheticJob().build(), metric())
                .content()
                .quality();
        assertEquals("1,000 of 1,010; left out 10 (1.0%)", fact(quality.facts(), "Records used"));
        assertEquals("RTK fixed 98.0%, RTK float 2.0%", fact(quality.facts(), "Fix types"));
        assertEquals("RTK fixed 1.2 cm", fact(quality.facts(), "Position noise, record to record (1 sigma)"));
        assertEquals("1.325 kg/L, 32.0% N by weight", fact(quality.machine(), "UAN 32-0-0"));
        assertEquals("2, 1 min 5 s in all", fact(quality.facts(), "Gaps in the log"));
        assertEquals("300 m² (1.5%)", fact(quality.facts(), "Worked while the bar's angle was not yet known"));
        assertEquals("0.50 s from the rig file, taken out", fact(quality.facts(), "Flow lag, UAN 32-0-0"));
        assertEquals(
                "765.0 L against 764.8 L: 0.020%, within 0.1%",
                fact(quality.checks(), "Map total against log total, UAN 32-0-0"));
        assertEquals(
                "2.00 ha against 2.00 ha: 0.000%, within 0.01%",
                fact(quality.checks(), "Covered inside plus skipped against boundary"));
        assertEquals("4", quality.files().get(0).noFix());
        assertEquals(List.of("Times carry no zone: taken as UTC."), quality.notes());
    }

    @Test
    void cautions_put_pressure_and_rules_before_anything_else() {
        PassReview review =
                PassReviewReport.of(new SyntheticJob().build(), metric()).content();
        List<String> cautions = review.cautions();
        List<String> scope = review.scope();
        String all = String.join(" ", cautions) + String.join(" ", scope);
        for (String word : List.of(
                "pressure",
                "isolate",
                "gloves",
                "15 minutes",
                "label",
                "safety data sheet",
                "setback",
                "trained",
                "legal")) {
            assertTrue(all.contains(word), word);
        }
        assertTrue(cautions.get(0).startsWith("Before you open a line"));
    }

    @Test
    void findings_are_told_with_their_rival_and_their_check() {
        PassReview.FindingLine line = PassReviewReport.of(
                        new SyntheticJob().withFinding().build(), metric())
                .content()
                .findings()
                .get(0);
        assertEquals("Row 7 looks plugged", line.title());
        assertEquals("93% confidence", line.sure());
        assertEquals("13:12 to 13:24", line.when());
        assertEquals("0.10 ha of ground, 40.0 L too little (17.0 kg N)", plain(line.cost()));
    }
}
