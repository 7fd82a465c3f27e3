package io.rowledger.report.review;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.pdf.Paper;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.units.UnitSystem;
import java.awt.geom.Rectangle2D;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Calendar;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.InflaterInputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionURI;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.PDFTextStripperByArea;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("slow")
public class PassReviewPdfTest {
    private static ReportOptions options(UnitSystem units, Paper paper, Path templates) {
        return new ReportOptions(units, paper, ZoneId.of("America/Chicago"), templates, "1.2.3");
    }

    public static byte[] pdf(Analysis a, ReportOptions options) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PassReviewReport.of(a, options).write(out);
        return out.toByteArray();
    }

    private static byte[] pdf(SyntheticJob job) throws IOException {
        return pdf(job.build(), options(UnitSystem.US, Paper.LETTER, null));
    }

    private static String text(PDDocument document) throws IOException {
        return new PDFTextStripper().getText(document).replace('\u00a0', ' ').replaceAll("\\s+", " ");
    }

    @Test
    void setbacks_are_a_section_where_a_keep_out_file_was_given_and_nothing_where_none_was() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(new SyntheticJob().withSetbacks()))) {
            String text = text(document);
            for (String words : List.of(
                    "Liquid was applied within the setbacks of 1 of the 3 places given: Well & pump (10.6 gal).",
                    "Well & pump 60.0 ft 0.0 ft 10.6 gal 37.4 lb N 0.15 ac 8:03:20 AM–8:03:51 AM 2 3–5",
                    "Ditch 9.8 ft 13.8 ft none none none – – –",
                    "Pond 98.4 ft not reached none",
                    "Well & pump: most of it, 10.6 gal, in pass 2 about 8:03:35 AM, at 44.000900, -92.999938.",
                    "local rules and licensed practice decide how far to keep away",
                    "setback, user's own")) {
                assertTrue(text.contains(words), () -> words + " not in:\n" + text);
            }
        }
        try (PDDocument document = Loader.loadPDF(pdf(new SyntheticJob()))) {
            assertFalse(text(document).contains("etback, user"), text(document));
            assertFalse(text(document).contains("Setbacks"), text(document));
        }
    }

    @Test
    void the_page_says_what_the_review_says() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(new SyntheticJob().withFinding()))) {
            String text = text(document);
            for (String words : List.of(
                    "Pass review",
                    "Willow bottom",
                    "No, by the meters: 1 of 10 rows is more than 10% off its target volume",
                    "4.94 ac",
                    "202.0 gal",
                    "43.0 gal/ac",
                    "152 lb N/ac",
                    "flush with water for at least 15 minutes",
                    "Rate on the ground against target: UAN 32-0-0",
                    "more than 20% under",
                    "200 ft",
                    "Row 7 looks plugged (93% confidence)",
                    "row not applying",
                    "S1 2,153 ft² 44.001",
                    "7 0.49 0.25 10.6 21.1 42.8 −50.0%",
                    "6 8:12:30 AM 2 min 5 s 820 S 4.5 0.49 19.1 38.7 −9.4%",
                    "RTK fixed 98.0%, RTK float 2.0%",
                    "Times carry no zone: taken as UTC.",
                    "0.020%, within 0.1%",
                    "SHA-256 abab",
                    "Rowledger 1.2.3")) {
                assertTrue(text.contains(words), () -> words + " not in:\n" + text);
            }
        }
    }

    /** RFC 5870, 3.3: geo:latitude,longitude in degrees on WGS 84. Each link lies on the coordinates that it leads to. */
    @Test
    void places_are_links_that_a_map_program_opens() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(new SyntheticJob().withFinding()))) {
            int links = 0;
            for (PDPage page : document.getPages()) {
                for (PDAnnotation annotation : page.getAnnotations()) {
                    PDAnnotationLink link = (PDAnnotationLink) annotation;
                    if (!(link.getAction() instanceof PDActionURI action)) {
                        continue;
                    }
                    String uri = action.getURI();
                    assertTrue(uri.matches("geo:4[34]\\.\\d{6},-9[23]\\.\\d{6}"), uri);
                    PDRectangle area = link.getRectangle();
                    PDFTextStripperByArea stripper = new PDFTextStripperByArea();
                    stripper.addRegion(
                            "link",
                            new Rectangle2D.Float(
                                    area.getLowerLeftX(),
                                    page.getMediaBox().getHeight() - area.getUpperRightY(),
                                    area.getWidth(),
                                    area.getHeight()));
                    stripper.extractRegions(page);
                    String text = stripper.getTextForRegion("link").strip();
                    assertTrue(text.endsWith(uri.substring(4).replace(",", ", ")), text + " under " + uri);
                    links++;
                }
            }
            // The finding, both ends of five skips, both ends of the overlap's 20 m: one point.
            assertEquals(1 + 2 * 5 + 1, links);
        }
    }

    @Test
    void where_nothing_was_found_nothing_is_said_about_faults() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(new SyntheticJob().even()))) {
            String text = text(document).toLowerCase(Locale.ROOT);
            assertFalse(text.contains("probably wrong"));
            assertFalse(text.contains("fault"));
        }
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void pages_have_the_size_of_the_paper_and_count_themselves(Paper paper) throws IOException {
        byte[] bytes = pdf(new SyntheticJob().build(), options(UnitSystem.METRIC, paper, null));
        try (PDDocument document = Loader.loadPDF(bytes)) {
            int pages = document.getNumberOfPages();
            assertTrue(pages >= 4 && pages <= 7, "pages: " + pages);
            // ISO 216 and ANSI Y14.1 in points of 1/72 inch.
            float width = paper == Paper.A4 ? 210 / 25.4f * 72 : 612;
            float height = paper == Paper.A4 ? 297 / 25.4f * 72 : 792;
            for (int i = 0; i < pages; i++) {
                assertEquals(width, document.getPage(i).getMediaBox().getWidth(), 0.5);
                assertEquals(height, document.getPage(i).getMediaBox().getHeight(), 0.5);
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(i + 1);
                stripper.setEndPage(i + 1);
                String page = stripper.getText(document).replace('\u00a0', ' ');
                assertTrue(page.contains("page " + (i + 1) + " of " + pages), page);
            }
        }
    }

    @Test
    void every_font_is_embedded_and_nothing_is_a_bitmap() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(new SyntheticJob()))) {
            int fonts = 0;
            for (PDPage page : document.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    assertTrue(page.getResources().getFont(name).isEmbedded(), name.getName());
                    fonts++;
                }
                for (COSName name : page.getResources().getXObjectNames()) {
                    assertFalse(page.getResources().getXObject(name) instanceof PDImageXObject, name.getName());
                }
            }
            assertTrue(fonts > 0);
        }
    }

    @Test
    void the_document_carries_title_language_bookmarks_and_the_date_of_the_work() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(new SyntheticJob()))) {
            assertEquals(
                    "Pass review: Willow bottom, June 14, 2026",
                    document.getDocumentInformation().getTitle());
            assertNull(document.getDocumentInformation().getAuthor());
            assertEquals("en-US", document.getDocumentCatalog().getLanguage());
            assertTrue(document.getDocumentCatalog().getViewerPreferences().displayDocTitle());
            List<String> titles = new ArrayList<>();
            for (PDOutlineItem item :
                    document.getDocumentCatalog().getDocumentOutline().children()) {
                titles.add(item.getTitle());
                assertTrue(item.findDestinationPage(document) != null, item.getTitle());
            }
            assertEquals(
                    List.of(
                            "Did every row get its rate?",
                            "What to do",
                            "Rate on the ground",
                            "The worst places, row by row",
                            "Skips and overlaps",
                            "Passes",
                            "Rows",
                            "Turns",
                            "What the ground received",
                            "What the figures rest on"),
                    titles);
            // The last pass starts 1,350 s after 13:00 UTC and lasts 125 s.
            Calendar made = document.getDocumentInformation().getCreationDate();
            assertEquals("2026-06-14T13:24:35Z", made.toInstant().toString());
        }
    }

    @Test
    void no_text_leaves_the_page_or_lies_on_other_text() throws IOException {
        for (SyntheticJob job : List.of(
                new SyntheticJob(),
                new SyntheticJob().withSecondProduct().withFinding().extraPlaces(30),
                new SyntheticJob()
                        .job(
                                "field",
                                "The long and narrow piece beyond the second gate by the old willow at the river bend")
                        .job(
                                "applicator",
                                "Nobody in particular, who has a name that needs more than one line of the table")
                        .file(
                                "a-file-name-without-any-space-in-it-that-goes-on-and-on-2026-06-14T13-00-00-north.csv.gz"))) {
            for (Paper paper : Paper.values()) {
                byte[] bytes = pdf(job.build(), options(UnitSystem.US, paper, null));
                try (PDDocument document = Loader.loadPDF(bytes)) {
                    for (int page = 1; page <= document.getNumberOfPages(); page++) {
                        checkGlyphs(document, page);
                    }
                }
            }
        }
    }

    /** The check above must be able to fail. */
    @Test
    void the_check_for_overlaps_finds_overlaps(@TempDir Path folder) throws IOException {
        Files.writeString(
                folder.resolve("pass-review.xhtml"),
                "<html><body><p style=\"margin:0 0 -11pt 0\">words below</p><p style=\"margin:0\">words above</p></body></html>");
        byte[] bytes = pdf(new SyntheticJob().build(), options(UnitSystem.US, Paper.LETTER, folder));
        try (PDDocument document = Loader.loadPDF(bytes)) {
            assertThrows(AssertionError.class, () -> checkGlyphs(document, 1));
        }
    }

    public static void checkGlyphs(PDDocument document, int page) throws IOException {
        List<TextPosition> glyphs = new ArrayList<>();
        PDFTextStripper stripper = new PDFTextStripper() {
            @Override
            protected void processTextPosition(TextPosition glyph) {
                if (!glyph.getUnicode().isBlank() && !"\u00a0".equals(glyph.getUnicode())) {
                    glyphs.add(glyph);
                }
            }
        };
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        stripper.getText(document);
        double width = document.getPage(page - 1).getMediaBox().getWidth();
        double[][] boxes = new double[glyphs.size()][];
        for (int i = 0; i < boxes.length; i++) {
            TextPosition g = glyphs.get(i);
            assertTrue(g.getX() >= 36 && g.getX() + g.getWidth() <= width - 36, "off the page: " + g + " on " + page);
            // Half the font size is about the height of a small letter.
            boxes[i] = new double[] {g.getX(), g.getY() - g.getFontSizeInPt() / 2, g.getX() + g.getWidth(), g.getY()};
        }
        for (int i = 0; i < boxes.length; i++) {
            for (int j = i + 1; j < boxes.length; j++) {
                double across = Math.min(boxes[i][2], boxes[j][2]) - Math.max(boxes[i][0], boxes[j][0]);
                double up = Math.min(boxes[i][3], boxes[j][3]) - Math.max(boxes[i][1], boxes[j][1]);
                double least = Math.min(boxes[i][2] - boxes[i][0], boxes[j][2] - boxes[j][0]);
                if (across > least / 2 && up > 1) {
                    throw new AssertionError(glyphs.get(i) + " lies on " + glyphs.get(j) + " on page " + page);
                }
            }
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
        byte[] here = pdf(new SyntheticJob());
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag(tag));
            TimeZone.setDefault(TimeZone.getTimeZone("Asia/Kolkata"));
            assertArrayEquals(here, pdf(new SyntheticJob()));
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
    }

    /** ISO 32000-1, 7.5.8: an entry of type 1 in a cross-reference stream holds the offset at which "N G obj" stands. */
    @Test
    void the_cross_reference_stream_points_at_the_objects_in_every_locale() throws IOException {
        Locale locale = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG"));
            byte[] bytes = pdf(new SyntheticJob());
            String pdf = new String(bytes, StandardCharsets.ISO_8859_1);
            Matcher start = Pattern.compile("startxref\\s+(\\d+)\\s+%%EOF\\s*$").matcher(pdf);
            assertTrue(start.find());
            int table = Integer.parseInt(start.group(1));
            Matcher widths = Pattern.compile("/W\\[1 (\\d) 2\\]").matcher(pdf);
            assertTrue(widths.find(table));
            int width = Integer.parseInt(widths.group(1));
            Matcher stream = Pattern.compile("stream\r?\n").matcher(pdf);
            assertTrue(stream.find(table));
            byte[] entries = new InflaterInputStream(
                            new ByteArrayInputStream(bytes, stream.end(), bytes.length - stream.end()))
                    .readAllBytes();
            int inUse = 0;
            for (int i = 0; i < entries.length / (3 + width); i++) {
                int at = i * (3 + width);
                int offset = new BigInteger(1, Arrays.copyOfRange(entries, at + 1, at + 1 + width)).intValueExact();
                if (entries[at] == 1) {
                    inUse++;
                    assertTrue(pdf.startsWith(i + " 0 obj", offset), "object " + i + " at " + offset);
                }
            }
            assertTrue(inUse > 10);
        } finally {
            Locale.setDefault(locale);
        }
    }

    @Test
    void jobs_without_target_boundary_or_density_still_print() throws IOException {
        SyntheticJob job = new SyntheticJob().withoutBoundary().withoutTarget().withoutDensity();
        try (PDDocument document = Loader.loadPDF(pdf(job))) {
            String text = text(document);
            assertTrue(text.contains("Rate on the ground against its mean"), text);
            assertTrue(text.contains("no density in the rig file"), text);
        }
    }

    @Test
    void a_log_without_a_pass_still_prints() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(new SyntheticJob().withoutPasses()))) {
            assertTrue(text(document).contains("there is nothing to evaluate"));
            assertFalse(text(document).contains("Rate on the ground"), "a map of nothing");
        }
    }

    @Test
    void text_from_the_user_is_text_and_never_markup() throws IOException {
        SyntheticJob job = new SyntheticJob().job("field", "<b>Tom & Co</b>").job("note", "{{verdict}}");
        try (PDDocument document = Loader.loadPDF(pdf(job))) {
            String text = text(document);
            assertTrue(text.contains("<b>Tom & Co</b>"), text);
            assertTrue(text.contains("{{verdict}}"), text);
        }
    }

    @Test
    void a_map_of_two_million_cells_stays_a_light_file() throws IOException {
        byte[] bytes = pdf(new SyntheticJob().cell(0.1));
        assertTrue(bytes.length < 400_000, "bytes: " + bytes.length);
    }
}
