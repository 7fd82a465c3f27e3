package io.rowledger.report.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.rowledger.cli.Calls;
import io.rowledger.document.text.Messages;
import io.rowledger.rig.Job;
import io.rowledger.rig.RigReader;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of the sample field, read as a landlord would. */
@Tag("slow")
class NitrogenRecordTest {
    private static final Path SAMPLE = Path.of("sample-logs/clean");
    /** Exact by definition: NIST Handbook 44, Appendix C. */
    private static final double ACRE_M2 = 4046.8564224;

    private static final double GALLON_L = 3.785411784;
    private static final double POUND_KG = 0.45359237;

    private static final Messages MESSAGES = Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC));

    @TempDir
    Path folder;

    private static void report(Path out, String... more) {
        List<Object> call = new java.util.ArrayList<>(List.of(
                "report",
                SAMPLE.resolve("log.csv.gz"),
                "--rig",
                SAMPLE.resolve("rig.yaml"),
                "--boundary",
                SAMPLE.resolve("boundary.geojson"),
                "--out",
                out,
                "--for",
                "landlord"));
        call.addAll(List.of(more));
        Calls called = Calls.of(call.toArray());
        assertEquals(0, called.status(), called.err());
    }

    private static String text(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            assertTrue(document.getNumberOfPages() <= 2);
            return new PDFTextStripper()
                    .getText(document)
                    .replace('\u00a0', ' ')
                    .replaceAll("\\s+", " ");
        }
    }

    private static String rounded(double value, int decimals) {
        return String.format(
                Locale.ROOT, "%,." + decimals + "f", new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP));
    }

    @Test
    void totals_on_the_page_equal_the_summary_after_rounding() throws IOException {
        report(folder.resolve("us"));
        String text = text(folder.resolve("us/nitrogen-record.pdf"));
        JsonNode field = new ObjectMapper()
                .readTree(Files.readString(folder.resolve("us/summary.json")))
                .get("field");
        JsonNode uan = field.get("products").get("uan");
        double acres = field.get("covered_area_m2").doubleValue() / ACRE_M2;
        double gallons = uan.get("volume_l").doubleValue() / GALLON_L;
        double pounds = uan.get("nitrogen_kg").doubleValue() / POUND_KG;
        assertTrue(
                text.contains("went onto " + rounded(acres, 2) + " acres, " + rounded(pounds, 0) + " pounds in all"),
                text);
        assertTrue(text.contains(rounded(gallons, 1) + " gal of UAN 32-0-0"), text);
        assertTrue(
                text.contains(" " + rounded(gallons, 1) + " " + rounded(gallons / acres, 1) + " " + rounded(pounds, 0)
                        + " " + rounded(pounds / acres, 0) + " "),
                text);
        JsonNode record = new ObjectMapper().readTree(Files.readString(folder.resolve("us/nitrogen-record.json")));
        assertEquals(
                uan.get("nitrogen_kg").doubleValue(),
                record.get("nitrogen").get("job_kg").doubleValue(),
                0);
        assertEquals(
                field.get("covered_area_m2").doubleValue(),
                record.get("coverage").get("covered_area_m2").doubleValue(),
                0);
    }

    @Test
    void every_item_of_the_list_is_there_or_listed_as_not_recorded() throws IOException {
        report(folder.resolve("us"));
        String text = text(folder.resolve("us/nitrogen-record.pdf"));
        Job job = RigReader.read(SAMPLE.resolve("rig.yaml")).rig().job();
        List<RecordField> missing = RecordFields.notRecorded(job);
        assertFalse(missing.isEmpty(), "the sample leaves something out, so that the list is shown");
        String list = text.substring(text.indexOf("Not recorded,"));
        for (RecordField field : RecordFields.all()) {
            if (missing.contains(field)) {
                String item = MESSAGES.text(field.label());
                // The sample names no state: what at least two published rules ask for.
                assertEquals(field.rules().size() >= 2, list.contains(item), item + " in " + list);
            } else if (field.from() == RecordField.From.JOB && !field.key().equals("zone")) {
                job.fact(field.key())
                        .ifPresent(
                                value -> assertTrue(text.contains(words(field, value)), field.key() + " in " + text));
            }
        }
        for (String ofLogAndRig : List.of(
                "2026-06-02",
                "(America/Chicago)",
                "UAN 32-0-0 32-0-0 11.06 lb/gal at 60 °F",
                "Nitrogen the ground received",
                "Ground covered",
                "inside the boundary as entered",
                "30.0 in apart",
                "each outside knife feeds a full row's width",
                "Twelve-row pull-type bar",
                "delivered on 2 load tickets (no. SAMPLE-1, SAMPLE-2)",
                "Starter with the planter† 2026-04-28",
                "Credit: Soybeans before†",
                "Plan†",
                "Cap: not to be exceeded†",
                "In 9 of 10 jobs logged like this one, the true mean lies between")) {
            assertTrue(text.contains(ofLogAndRig), ofLogAndRig + " in " + text);
        }
    }

    /** Plan and cap are printed as figures, all else as entered. */
    private static String words(RecordField field, String value) {
        return switch (field.key()) {
            case "plan", "cap" -> value.substring(0, value.indexOf(' '));
            default -> value;
        };
    }

    @Test
    void the_same_inputs_give_the_same_bytes_in_another_folder_locale_and_zone() throws IOException {
        report(folder.resolve("here"), "--units", "metric");
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG"));
            TimeZone.setDefault(TimeZone.getTimeZone("Asia/Kolkata"));
            report(folder.resolve("there"), "--units", "metric", "--threads", "1");
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
        for (String file : List.of("nitrogen-record.pdf", "nitrogen-record.json")) {
            assertEquals(
                    -1,
                    Files.mismatch(
                            folder.resolve("here").resolve(file),
                            folder.resolve("there").resolve(file)),
                    file);
        }
    }

    @Test
    void the_record_for_programs_travels_inside_the_page() throws IOException {
        report(folder.resolve("us"));
        try (PDDocument document =
                Loader.loadPDF(folder.resolve("us/nitrogen-record.pdf").toFile())) {
            byte[] inside = document.getDocumentCatalog()
                    .getNames()
                    .getEmbeddedFiles()
                    .getValue("nitrogen-record.json")
                    .getEmbeddedFile()
                    .toByteArray();
            assertEquals(
                    Files.readString(folder.resolve("us/nitrogen-record.json")),
                    new String(inside, java.nio.charset.StandardCharsets.UTF_8));
        }
    }
}
