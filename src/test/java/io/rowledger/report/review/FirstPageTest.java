package io.rowledger.report.review;

import static io.rowledger.report.review.HeldField.actions;
import static io.rowledger.report.review.HeldField.figure;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.Pipeline;
import io.rowledger.analysis.Progress;
import io.rowledger.diagnose.FaultField;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.sim.SimFault;
import io.rowledger.sim.SimFault.Kind;
import io.rowledger.text.Message;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What the first page says of jobs whose truth is known. Figures are worked by hand from {@link HeldField}: a target of 0.02 L/m²,
 * rows of 0.75 m, passes of 320 m that cover 1,440 m² and take 28.8 L, a row of a pass 240 m² and 4.8 L.
 */
class FirstPageTest {
    @TempDir
    Path folder;

    private static PassReview metric(Analysis analysis) {
        return PassReviewReport.of(analysis, PassReviewTest.metric()).content();
    }

    private static String page(Analysis analysis, ReportOptions options, int page) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PassReviewReport.of(analysis, options).write(out);
        try (PDDocument document = Loader.loadPDF(out.toByteArray())) {
            assertTrue(document.getNumberOfPages() <= 8, "pages: " + document.getNumberOfPages());
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setStartPage(page);
            stripper.setEndPage(page);
            return stripper.getText(document).replace('\u00a0', ' ').replaceAll("\\s+", " ");
        }
    }

    private static String verdict(PassReview review) {
        return String.join(" ", review.verdict()).replace('\u00a0', ' ');
    }

    /** 8 · 1,440 m² = 1.152 ha, 8 · 28.8 L = 230.4 L; 230.4 L · 1.325 kg/L · 0.32 = 97.7 kg N, on 1.152 ha 84.8 kg/ha. */
    @Test
    void clean() throws IOException {
        Analysis analysis = new HeldField().analyze(folder);
        PassReview review = metric(analysis);
        assertTrue(verdict(review).startsWith("Yes, by the meters: every row came within 5% of its target volume."));
        assertTrue(verdict(review).contains("No ground inside the boundary was skipped"), verdict(review));
        assertEquals(List.of(), review.next().actions());
        assertEquals(List.of(), review.next().alsoFound());
        assertEquals(
                "Nothing to do: no row is suspected, and no skip is worth driving back to.",
                review.next().nothing());
        assertEquals("1.152 ha", figure(review, "Covered"));
        assertEquals("230 L", figure(review, "Applied"));
        assertEquals("100.0%", figure(review, "Ground on rate"));
        assertEquals("none", figure(review, "Skipped"));
        assertEquals("84.8 kg N/ha", figure(review, "Nitrogen"));
        assertEquals(5, review.figures().size());
        // Answer, then cautions, then what to do, figures and map, all on one page; 1.152 ha ÷ 0.40468564224.
        String page = page(analysis, PassReviewTest.us(), 1);
        int at = -1;
        for (String words : List.of(
                "Held field",
                "9:00 AM to 9:",
                "Yes, by the meters",
                "Before anything else.",
                "What to do",
                "Nothing to do: no row is suspected",
                "2.847 ac",
                "Rate on the ground against target: UAN 32-0-0")) {
            assertTrue(page.indexOf(words) > at, words + " after " + at + " in " + page);
            at = page.indexOf(words);
        }
    }

    /**
     * Row 4 falls to 3 % from 100 m of pass 3 on: 220 m and five passes of 320 m of 0.75 m are 1,365 m², on which it lacks 97 %
     * of 27.3 L, 26.5 L. Below 5 % of its target a row counts as not applying: of the six strips the one of 165 m² is not worth a
     * stop, five of 240 m² are, 1,200 m² or 24.0 L. Row 4 had to give 38.4 L and gave 11.9 L: 69 % less.
     */
    @Test
    void plugged() throws IOException {
        Analysis analysis = new HeldField()
                .flow((pass, row, m) ->
                        HeldField.ON_TARGET_LPM * (row == 4 && (pass > 3 || (pass == 3 && m > 100)) ? 0.03 : 1))
                .analyze(folder);
        PassReview review = metric(analysis);
        assertTrue(
                verdict(review)
                        .startsWith(
                                "No, by the meters: 1 of 6 rows is more than 10% off its target volume: row 4 at −69.0%."),
                verdict(review));
        assertEquals(2, review.next().actions().size());
        assertEquals(List.of(4), review.next().actions().get(0).rows());
        assertTrue(
                actions(review)
                        .get(0)
                        .matches(
                                "Check row 4\\. Row 4 looks plugged: 26\\.[3-5] L too little on 0\\.14 ha\\. Look from a safe"
                                        + " distance, upwind, whether the row puts out liquid\\."),
                actions(review).get(0));
        assertTrue(
                actions(review).get(1).startsWith("Drive back to 5 places. Go in this order: S")
                        && actions(review)
                                .get(1)
                                .endsWith(
                                        ". 0.12 ha got nothing; take 24.0 L along. Shut off the rows that would run over covered corn."),
                actions(review).get(1));
        assertEquals(5, review.next().actions().get(1).places().size());
        // The suspected row, the cautions and the map stand on the first page; the steps at the machine come after.
        String page = page(analysis, PassReviewTest.us(), 1);
        assertTrue(page.indexOf("Before you open a line") < page.indexOf("Check row 4"), page);
        assertTrue(page.contains("more than 20% under"), page);
        assertFalse(page.contains("strainer"), page);
    }

    /**
     * From 160 m of pass 7 on the flow of all rows falls to nothing within 6 m. What is left out: 154 m of pass 7 and all of pass 8,
     * 474 m · 4.5 m = 2,133 m², 42.7 L.
     */
    @Test
    void empty_tank() throws IOException {
        PassReview review = metric(new HeldField()
                .flow((pass, row, m) -> HeldField.ON_TARGET_LPM
                        * (pass == 8 || (pass == 7 && m > 166) ? 0 : pass == 7 && m > 160 ? (166 - m) / 8 : 1))
                .analyze(folder));
        // 42.7 of 230.4 L.
        assertTrue(
                verdict(review).startsWith("No, by the meters: all 6 rows are off alike: the bar put on \u221218."),
                verdict(review));
        assertEquals(2, actions(review).size());
        assertTrue(
                actions(review).get(0).startsWith("Check the whole bar. The supply ran empty and driving went on:"),
                actions(review).get(0));
        assertEquals(
                "Drive back to 1 place. Go to S1. 0.21 ha got nothing; take 42.7 L along.",
                actions(review).get(1));
        assertTrue(figure(review, "Skipped").startsWith("0.213 ha"), figure(review, "Skipped"));
    }

    /** Nobody drove pass 5: 1,440 m², 28.8 L, the width of the bar. The rows are sound. */
    @Test
    void skipped_strip() throws IOException {
        PassReview review = metric(new HeldField().leftOut(5).analyze(folder));
        // An eighth of the field: the rows don't make that good.
        assertTrue(verdict(review).startsWith("No: 0.144 ha skipped in 1 place; no overlap."), verdict(review));
        assertTrue(
                verdict(review).contains("As the meters read: every row came within 5% of its target volume."),
                verdict(review));
        assertEquals(
                List.of("Drive back to 1 place. Go to S1. 0.14 ha got nothing; take 28.8 L along."), actions(review));
        assertEquals("0.144 ha", figure(review, "Skipped"));
        assertTrue(review.ground().skips().get(0).isLong(), "one waypoint doesn't mark 320 m");
        assertEquals("1.008 ha", figure(review, "Covered"));
    }

    /** Passes 1 to 5 on June 2, 7,200 m², 144.0 L; passes 6 to 8 a day later, 4,320 m², 86.4 L. */
    @Test
    void two_days() throws IOException {
        Analysis analysis = new HeldField().nextDayFrom(6).analyze(folder);
        PassReview review = metric(analysis);
        assertEquals(List.of(), review.next().actions());
        assertEquals(
                List.of("2026-06-02 1–5 0.72 ha", "2026-06-03 6–8 0.43 ha"),
                review.days().stream()
                        .map(day -> (day.date() + " " + day.passes() + " " + day.area()).replace('\u00a0', ' '))
                        .toList());
        assertEquals(
                "144 L",
                review.days().get(0).volumes().get(0).replace('\u00a0', ' ').replaceAll("\\.\\d", ""));
        assertTrue(
                review.passes().get(5).start().startsWith("2026-06-03 "),
                review.passes().get(5).start());
        // 0.72 ha ÷ 0.40468564224 is 1.78 ac, 0.432 ha 1.07 ac.
        String page = page(analysis, PassReviewTest.us(), 1);
        assertTrue(page.contains("June 2, 2026, 9:00 AM to June 3, 2026, 9:"), page);
        assertTrue(page.contains("June 2, 2026: ") && page.contains("1.78 ac worked, 9:00 AM to 9:"), page);
        assertTrue(page.contains("June 3, 2026: ") && page.contains("1.07 ac worked, 9:"), page);
    }

    /** The same clean job with one meter: the total is known, no row is. */
    @Test
    void one_meter() throws IOException {
        Analysis analysis = new HeldField().oneMeter().analyze(folder);
        PassReview review = metric(analysis);
        assertTrue(verdict(review).startsWith("The bar has one meter. By that meter it put on 230."), verdict(review));
        assertTrue(verdict(review).contains("What single rows put on is not known."), verdict(review));
        assertEquals(List.of(), review.next().actions());
        assertTrue(review.next().nothing().contains("one meter"), review.next().nothing());
        assertFalse(page(analysis, PassReviewTest.us(), 1).contains("no row is suspected"));
    }

    /** 0.85 · 230.4 L = 195.8 L. */
    @Test
    void one_meter_that_counts_too_little_is_no_yes() throws IOException {
        PassReview review = metric(new HeldField()
                .flow((pass, row, m) -> 0.85 * HeldField.ON_TARGET_LPM)
                .oneMeter()
                .analyze(folder));
        String verdict = verdict(review);
        assertTrue(
                verdict.matches(
                        "No: The bar has one meter\\. By that meter it put on 19[5-6]( L|\\.\\d L), \u221215\\.\\d% .*"),
                verdict);
    }

    /** The same clean job as rates in the order driven: areas and volumes as before, nothing that needs a clock. */
    @Test
    void without_times() throws IOException {
        Analysis analysis = new HeldField().withoutTimes().analyze(folder);
        PassReview review = metric(analysis);
        assertFalse(review.timed());
        assertEquals("1.152 ha", figure(review, "Covered"));
        assertEquals(List.of(), review.days());
        assertFalse(
                review.next().nothing().contains("no row is suspected"),
                review.next().nothing());
        String page = page(analysis, PassReviewTest.us(), 1);
        assertTrue(page.contains("Date and time of day are not in this file"), page);
        for (int i = 2; i <= 5; i++) {
            assertFalse(page(analysis, PassReviewTest.us(), i).contains("Duration"), "page " + i);
        }
    }

    private static Finding finding(FindingKind kind, List<Integer> rows, double volumeL) {
        return new Finding(
                kind,
                rows,
                SyntheticJob.START_S,
                SyntheticJob.START_S + 1475,
                0.9,
                4000,
                volumeL,
                volumeL * 0.424,
                44,
                -93,
                Message.of("findings.text", "evidence."),
                Message.of("findings.text", "other."),
                Message.of("findings.text", "first look; then touch."),
                List.of());
    }

    /**
     * Rows 2 and 7 take each other's flow in turns of 40 m: one gets too much where the other gets too little, on 6 arcs of 160 m
     * times 2 rows of 0.762 m, 1,463 m².
     */
    @Test
    void crossed() {
        new FaultField().onArcs().write(folder, new SimFault(Kind.CHANNELS_SWAPPED, List.of(2, 7), 0, 1e9, 0, 0));
        PassReview review = metric(Pipeline.analyze(
                new JobFiles(List.of(folder.resolve("log.csv")), folder.resolve("rig.yaml"), null),
                1,
                Progress.SILENT));
        assertEquals(1, actions(review).size(), actions(review).toString());
        String action = actions(review).get(0);
        assertTrue(action.startsWith("Check rows 2, 7. The channels of rows 2, 7 look swapped:"), action);
        assertTrue(action.contains(": on 0.15 ha some rows got too much and others too little."), action);
    }

    /**
     * A row takes 0.9 L/min for each m/s; the supply gives every row 2.16 L/min, enough for 2.4 m/s or 8.64 km/h. Passes 1, 4, 5 and 8
     * at 1.6 m/s get their 28.8 L. At 2.9, 3.05, 3.5 and 3.65 m/s the others get 82.8, 78.7, 68.6 and 65.8 %: 4.97, 6.14, 9.05 and
     * 9.86 L too little, 30.0 L in all, 13.0 % of 230.4 L.
     */
    @Test
    void supply_short() throws IOException {
        HeldField.Speed speed = pass -> pass % 4 < 2 ? 1.6 : 2.6 + 0.15 * pass;
        PassReview review = metric(new HeldField()
                .speed(speed)
                .flow((pass, row, m) -> 0.9 * Math.min(2.4, speed.mps(pass)))
                .analyze(folder));
        Matcher bar = Pattern.compile("No, by the meters: all 6 rows are off alike: the bar put on \u2212([0-9.]+)%.*")
                .matcher(verdict(review));
        assertTrue(bar.matches(), verdict(review));
        assertEquals(13.0, Double.parseDouble(bar.group(1)), 0.6);
        String first = actions(review).get(0);
        assertTrue(first.startsWith("Before the next field."), first);
        Matcher words =
                Pattern.compile("([0-9.]+) L too little.* ([0-9.]+) km/h").matcher(first);
        assertTrue(words.find(), first);
        assertEquals(30.0, Double.parseDouble(words.group(1)), 1.5, first);
        // A speed that the supply holds, so not above its limit, and not far below.
        double kmh = Double.parseDouble(words.group(2));
        assertTrue(kmh > 0.9 * 8.64 && kmh <= 8.64, first);
    }

    /** A finding as the diagnosis hands it over, where no what-if stands beside it: the first step of the check is told. */
    @Test
    void a_finding_without_what_if_tells_its_check() {
        PassReview review = metric(new SyntheticJob()
                .even()
                .withFindings(List.of(finding(FindingKind.SUPPLY_LIMITED, List.of(), -24)))
                .build());
        assertEquals(
                List.of(
                        "Before the next field. The supply runs short for the whole bar: 24.0 L too little on 0.40 ha. first"
                                + " look."),
                actions(review));
    }
}
