package io.rowledger.report.record;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.pdf.Paper;
import io.rowledger.report.common.NitrogenJobs;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.report.review.PassReviewPdfTest;
import io.rowledger.rig.Job;
import io.rowledger.units.UnitSystem;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("slow")
class NitrogenRecordPdfTest {
    private static byte[] pdf(Analysis a, UnitSystem units, Paper paper) throws IOException {
        ReportOptions options = new ReportOptions(units, paper, ZoneId.of("America/Chicago"), null, "1.2.3");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        NitrogenRecordReport.of(a, options).write(List.of(), out);
        return out.toByteArray();
    }

    private static byte[] pdf(SyntheticJob job) throws IOException {
        return pdf(job.build(), UnitSystem.US, Paper.LETTER);
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper()
                    .getText(document)
                    .replace('\u00a0', ' ')
                    .replaceAll("\\s+", " ");
        }
    }

    /** Jobs from nothing known to everything at once. */
    private static Map<String, SyntheticJob> jobs() {
        Map<String, SyntheticJob> jobs = new LinkedHashMap<>();
        jobs.put("nothing entered", new SyntheticJob());
        jobs.put("every fact", new SyntheticJob().block(NitrogenJobs.full(210, 250)));
        jobs.put(
                "two products, cap exceeded",
                new SyntheticJob().withSecondProduct().withFinding().block(NitrogenJobs.full(210, 190)));
        jobs.put("no analysis", new SyntheticJob().withoutAnalysis().withoutDensity());
        jobs.put("no boundary", new SyntheticJob().withoutBoundary().withoutTarget());
        jobs.put("setbacks", new SyntheticJob().withSetbacks().block(NitrogenJobs.full(210, 190)));
        jobs.put("no pass", new SyntheticJob().withoutPasses());
        jobs.put(
                "long words",
                new SyntheticJob()
                        .job("field", "North ".repeat(133))
                        .file("a-file-name-without-any-space-in-it-that-goes-on-and-on-2026-06-14T13-00-00.csv.gz")
                        .block(Job.of(Map.of(
                                "farm",
                                "x".repeat(800),
                                "applicator",
                                "Somebody with a name ".repeat(40),
                                "soil",
                                "W".repeat(800)))));
        return jobs;
    }

    @ParameterizedTest
    @CsvSource({"US, LETTER", "US, A4", "METRIC, LETTER", "METRIC, A4"})
    void a_field_and_a_day_take_two_pages_at_most_and_no_text_leaves_them(UnitSystem units, Paper paper)
            throws IOException {
        for (Map.Entry<String, SyntheticJob> job : jobs().entrySet()) {
            try (PDDocument document = Loader.loadPDF(pdf(job.getValue().build(), units, paper))) {
                int pages = document.getNumberOfPages();
                assertTrue(pages <= 2, job.getKey() + " takes " + pages + " pages");
                for (int page = 1; page <= pages; page++) {
                    PassReviewPdfTest.checkGlyphs(document, page);
                }
            }
        }
    }

    @Test
    void the_page_says_what_was_put_where_when_and_by_whom() throws IOException {
        String text = text(pdf(new SyntheticJob().block(NitrogenJobs.full(210, 190))));
        for (String words : List.of(
                "Nitrogen record",
                "Willow bottom†",
                "June 14, 2026, 8:00 AM to 8:24 AM (America/Chicago)",
                "Given for applicator†",
                "152 pounds of nitrogen an acre went onto 4.70 acres, 715 pounds in all",
                // 32-0-0; 1.325 kg/L / 0.119826427 = 11.06 lb/gal.
                "32-0-0 11.06 lb/gal",
                // 800 L and 770 L / 3.785411784.
                "211.3 203.4 202.0 43.0 715 152",
                "202.0 gal × 11.06 lb/gal × 32% N = 715 lb N.",
                "1.4 gal (0.7%) more than the meters counted",
                "The cap is exceeded",
                "Starter† 2026-04-28",
                "Credit: Soybeans before†",
                "within 10% of plan",
                "200 ft",
                "10, 31.5 in apart",
                "Given for depth",
                "RTK fixed 98.0%, RTK float 2.0%",
                "1,000 of 1,010 records used, 10 dropped",
                "SHA-256 " + "ab".repeat(32),
                "SHA-256 " + "cd".repeat(32),
                "java -jar rowledger.jar report willow.csv --rig willow.yaml --for landlord --units us --paper letter",
                "Rowledger 1.2.3",
                "Applicator: name, signature, date",
                "Landlord or manager: name, signature, date",
                "does not certify yields or losses",
                "not legal advice",
                "† Entered by the user and printed as entered")) {
            assertTrue(text.contains(words), () -> words + " not in:\n" + text);
        }
        assertFalse(text.contains("Not recorded"), text);
        assertFalse(text.contains("from memory"), text);
    }

    @Test
    void nothing_is_invented_where_nothing_was_entered() throws IOException {
        String text = text(pdf(new SyntheticJob()));
        for (String words : List.of(
                "Applied by: not recorded.",
                "Method not recorded",
                "Depth not recorded",
                "temperature not recorded",
                "Not recorded, and often kept in such a record:",
                "; Applicator; ",
                "Defer to your local rules")) {
            assertTrue(text.contains(words), () -> words + " not in:\n" + text);
        }
    }

    @Test
    void the_document_is_named_and_dated_by_the_work() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(new SyntheticJob()))) {
            assertEquals(
                    "Nitrogen record: Willow bottom, June 14, 2026",
                    document.getDocumentInformation().getTitle());
            assertEquals(
                    "2026-06-14T13:24:35Z",
                    document.getDocumentInformation()
                            .getCreationDate()
                            .toInstant()
                            .toString());
        }
    }

    @Test
    void the_same_job_gives_the_same_bytes() throws IOException {
        assertArrayEquals(pdf(new SyntheticJob()), pdf(new SyntheticJob()));
    }

    /** Turkish has a dotless i, Arabic and Hindi have digits of their own. */
    @ParameterizedTest
    @ValueSource(strings = {"tr-TR", "ar-EG", "hi-IN-u-nu-deva", "de-DE"})
    void the_machines_locale_and_zone_change_no_byte(String tag) throws IOException {
        SyntheticJob job = new SyntheticJob().withSecondProduct().block(NitrogenJobs.full(210, 190));
        byte[] here = pdf(job);
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag(tag));
            TimeZone.setDefault(TimeZone.getTimeZone("Asia/Kolkata"));
            assertArrayEquals(here, pdf(job));
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
    }

    @Test
    void a_log_in_another_folder_makes_the_same_record() throws IOException {
        assertArrayEquals(
                pdf(new SyntheticJob().file("here/willow.csv")), pdf(new SyntheticJob().file("/there/willow.csv")));
    }

    /** The names are our own: CJK, an emoji with its variation mark, and Greek and Cyrillic, which the font does have. */
    @Test
    void characters_the_font_lacks_are_boxes_and_the_page_says_so() throws IOException {
        String odd =
                text(pdf(new SyntheticJob().job("field", "\u5317\u7551 \u0394\u0416 \u2600\ufe0f \ud83c\udf3d end")));
        assertTrue(odd.contains("\u25a1\u25a1 \u0394\u0416 "), odd);
        assertTrue(odd.contains("\u25a1 end"), odd);
        assertTrue(odd.contains("\u25a1 stands for a character"), odd);
        assertFalse(text(pdf(new SyntheticJob())).contains("\u25a1"));
    }
}
