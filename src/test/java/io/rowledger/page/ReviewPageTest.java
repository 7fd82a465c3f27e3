package io.rowledger.page;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.Pipeline;
import io.rowledger.analysis.Progress;
import io.rowledger.diagnose.setup.SetupCheck;
import io.rowledger.diagnose.setup.SetupMeasurement;
import io.rowledger.diagnose.setup.SetupParameter;
import io.rowledger.document.pdf.Paper;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.rows.RowDiagnosisReport;
import io.rowledger.text.Message;
import io.rowledger.units.UnitSystem;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;

/** The page as a file: what it shows without JavaScript, and that the same job gives the same bytes. */
class ReviewPageTest {
    private static final Path SAMPLE = Path.of("sample-logs/plugged-row");

    private static final ReportOptions US =
            new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneOffset.UTC, null, "test");

    /** Largest page of a sample, bytes. */
    private static final int MAX_BYTES = 600_000;

    private static Analysis analysis;

    @BeforeAll
    static void analyze() {
        analysis = Pipeline.analyze(
                new JobFiles(
                        List.of(SAMPLE.resolve("log.csv")),
                        SAMPLE.resolve("rig.yaml"),
                        SAMPLE.resolve("boundary.geojson")),
                2,
                Progress.SILENT);
    }

    private static byte[] page(ReportOptions options) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ReviewPage.write(analysis, RowDiagnosisReport.of(analysis, options), options, null, out);
        return out.toByteArray();
    }

    /** What a browser shows that runs no scripts. */
    private static String shown(byte[] page) {
        String html = new String(page, StandardCharsets.UTF_8);
        return html.substring(html.indexOf("<div id=\"body\">"), html.indexOf("<script"));
    }

    @Test
    void the_same_job_gives_the_same_bytes() throws IOException {
        byte[] once = page(US);
        assertArrayEquals(once, page(US));
        assertTrue(once.length < MAX_BYTES, once.length + " bytes");
    }

    @Test
    void verdict_actions_map_and_tables_need_no_script() throws IOException {
        String shown = shown(page(US));
        int verdict = shown.indexOf("No, by the meters");
        int action = shown.indexOf("<ol class=\"actions\">");
        int figures = shown.indexOf("<dl class=\"figures\">");
        int picture = shown.indexOf("<svg class=\"picture\"");
        int places = shown.indexOf("<td>S1</td>");
        assertTrue(0 < verdict && verdict < action && action < figures && figures < picture && picture < places, shown);
        assertTrue(shown.contains("<path class=\"skip\"") && shown.contains("<path class=\"covered\""));
        assertTrue(shown.contains("Check row 7"));
    }

    @Test
    void the_page_opens_in_the_language_that_was_asked_for() throws IOException {
        String page = new String(page(US.in(Locale.forLanguageTag("es"))), StandardCharsets.UTF_8);
        assertTrue(page.contains("<html lang=\"es\""));
        assertTrue(page.contains("<h2 id=\"h-answer\">La respuesta</h2>"));
    }

    /** Ways from corner to corner, added up from the picture's text, give the bounds of the ground that was worked. */
    @Test
    void the_picture_is_as_wide_as_the_ground() throws IOException {
        String shown = shown(page(US));
        Matcher covered =
                Pattern.compile("<path class=\"covered\"[^>]*d=\"([^\"]*)\"").matcher(shown);
        assertTrue(covered.find());
        double[] x = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
        for (String ring : covered.group(1).split("z", -1)) {
            Matcher number = Pattern.compile("-?[0-9.]+").matcher(ring);
            double at = 0;
            while (number.find()) {
                at += Double.parseDouble(number.group());
                x[0] = Math.min(x[0], at);
                x[1] = Math.max(x[1], at);
                assertTrue(number.find(), "a pair of numbers in " + ring);
            }
        }
        Envelope ground = analysis.coverage().covered().getEnvelopeInternal();
        Envelope all = new Envelope(ground);
        all.expandToInclude(
                Objects.requireNonNull(analysis.coverage().boundary()).area().getEnvelopeInternal());
        double scale = 800 / (1.04 * Math.max(all.getWidth(), all.getHeight()));
        assertEquals(ground.getWidth() * scale, x[1] - x[0], 1.5);
    }

    /** A finding that cost next to nothing has no card, so it has no number on the map either: cards and marks keep one order. */
    @Test
    void what_was_only_noticed_is_told_in_words_and_has_no_mark() throws IOException {
        Path contour = Path.of("sample-logs/contour");
        Analysis noticed = Pipeline.analyze(
                new JobFiles(List.of(contour.resolve("log.csv")), contour.resolve("rig.yaml"), null),
                2,
                Progress.SILENT);
        assertEquals(1, noticed.findings().size());
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ReviewPage.write(noticed, RowDiagnosisReport.of(noticed, US), US, null, out);
        assertTrue(shown(out.toByteArray()).contains("Also noticed"));
        assertTrue(out.toString(StandardCharsets.UTF_8).contains("\"findings\":[]"));
        assertTrue(out.size() < MAX_BYTES, out.size() + " bytes");
    }

    /** The script's hash in the policy is that of the script: a browser runs no other. */
    @Test
    void only_the_pages_own_script_may_run() throws IOException {
        String page = new String(page(US), StandardCharsets.UTF_8);
        Matcher policy = Pattern.compile("script-src '([^']*)'").matcher(page);
        assertTrue(policy.find());
        int from = page.lastIndexOf("<script>") + "<script>".length();
        assertEquals(WebAssets.sha256(page.substring(from, page.lastIndexOf("</script>"))), policy.group(1));
    }

    @Test
    void measures_that_the_log_contradicts_are_marked_on_the_bar() {
        SetupMeasurement drop = new SetupMeasurement(
                SetupParameter.DROP_OFFSET,
                -1,
                "rig.hitch_to_drop",
                5.9,
                5.4,
                5.3,
                5.5,
                true,
                Message.of("findings.none"),
                Message.of("findings.none"));
        String agrees = BarDrawing.of(analysis.rig(), SetupCheck.none(), US.messages());
        String differs = BarDrawing.of(analysis.rig(), new SetupCheck(List.of(drop)), US.messages());
        assertFalse(agrees.contains("differs"));
        assertEquals(3, differs.split("differs\"", -1).length - 1, "a line, its letter and its measure");
        assertTrue(differs.contains("the log differs"));
    }

    /** 12 rows of 30 in are 9.144 m wide: drawn to scale, a row's line is a twelfth of the bar's. */
    @Test
    void the_bar_is_drawn_to_scale() {
        String bar = BarDrawing.of(analysis.rig(), SetupCheck.none(), US.messages());
        Matcher band = Pattern.compile("class=\"band[^\"]*\" x1=\"([0-9.]+)\" y1=\"[0-9.]+\" x2=\"([0-9.]+)\"")
                .matcher(bar);
        double first = Double.NaN;
        double last = Double.NaN;
        double width = Double.NaN;
        int rows = 0;
        while (band.find()) {
            first = rows++ == 0 ? Double.parseDouble(band.group(1)) : first;
            last = Double.parseDouble(band.group(2));
            width = last - Double.parseDouble(band.group(1));
        }
        assertEquals(12, rows);
        assertEquals(12 * width, last - first, 1);
    }
}
