package io.rowledger.report.rows;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.pdf.Paper;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.report.review.PassReviewPdfTest;
import io.rowledger.text.Message;
import io.rowledger.units.UnitSystem;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

@Tag("slow")
public class RowDiagnosisPdfTest {
    public static byte[] pdf(SyntheticJob job, UnitSystem units, Paper paper) throws IOException {
        ReportOptions options = new ReportOptions(units, paper, ZoneId.of("America/Chicago"), null, "1.2.3");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        RowDiagnosisReport.of(job.build(), options).write(out);
        return out.toByteArray();
    }

    private static byte[] pdf(SyntheticJob job) throws IOException {
        return pdf(job, UnitSystem.US, Paper.LETTER);
    }

    private static String text(PDDocument document, int first, int last) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(first);
        stripper.setEndPage(last);
        return stripper.getText(document).replace('\u00a0', ' ').replaceAll("\\s+", " ");
    }

    /** One finding of every kind, of one row, of two or of the whole bar. */
    public static List<Finding> oneOfEveryKind() {
        List<Finding> findings = new ArrayList<>();
        double startS = new SyntheticJob().build().track().passes().get(1).startS();
        for (FindingKind kind : FindingKind.values()) {
            int n = findings.size();
            List<Integer> rows =
                    switch (n % 3) {
                        case 0 -> List.of(1 + n % 10);
                        case 1 -> List.of(4, 5);
                        default -> List.of();
                    };
            findings.add(new Finding(
                    kind,
                    rows,
                    startS + n * 40,
                    startS + 600 + n * 40,
                    0.9 - n * 0.02,
                    kind == FindingKind.METER_STUCK ? 0 : 900,
                    kind == FindingKind.METER_STUCK ? Double.NaN : -12.5 + n,
                    kind == FindingKind.METER_STUCK ? Double.NaN : -5.3,
                    44.0001 + n * 0.00004,
                    -93.0001,
                    Message.of(
                            "findings.text",
                            "Rows ran at 0.82 of what the other rows imply for 4 min, against 1.00 in the 20 min before."),
                    Message.of(
                            "findings.text", "a meter that reads low would look the same, though not in its pressure"),
                    Message.of("findings.text", "catch both rows over the same minute"),
                    List.of()));
        }
        return findings;
    }

    @Test
    void the_page_says_what_the_diagnosis_says() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(new SyntheticJob().withFinding()))) {
            String text = text(document, 1, document.getNumberOfPages());
            for (String words : List.of(
                    "Row diagnosis",
                    "Willow bottom",
                    "Row 7 looks plugged from 8:12 AM on (93% confidence).",
                    "Every row, start to end: UAN 32-0-0",
                    "Row 7 looks plugged (93% confidence)",
                    "onset 8:12:30 AM",
                    "what the other rows imply",
                    "44.000000, -93.000000, first in pass 6",
                    "0.25 ac of ground, 10.6 gal too little (37.4 lb N)",
                    "the meter stopped",
                    "With the system bled, look at knife 7.",
                    "Pass 3 holds too few records to judge.",
                    "Healthy rows: UAN 32-0-0",
                    "3 +6.0% 1.2% 1.4 s 20 min 0 s stands apart",
                    "Rowledger 1.2.3")) {
                assertTrue(text.contains(words), () -> words + " not in:\n" + text);
            }
        }
    }

    /** The order of M. Hanna, Iowa State University, and what stands beside it. */
    @Test
    void cautions_stand_on_page_one_in_their_order_and_before_every_check() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(new SyntheticJob().withFinding()))) {
            String first = text(document, 1, 1);
            int at = 0;
            for (String words : List.of(
                    "Stop on level ground",
                    "Shut the tank valve",
                    "farthest downstream knife and section valves",
                    "section valves upstream",
                    "main valve",
                    "until the lines are clear",
                    "goggles rated for the product, gauntlet gloves, long sleeves",
                    "at least 5 gallons",
                    "15 minutes and get medical help",
                    "upwind",
                    "trap pressure: never assume a line is empty",
                    "Anhydrous ammonia: trained people only",
                    "label, the safety data sheet, local rules and the maker's manual come first")) {
                int next = first.indexOf(words);
                assertTrue(next > at, () -> words + " missing or out of order in:\n" + first);
                at = next;
            }
            String all = text(document, 1, document.getNumberOfPages());
            assertTrue(all.indexOf("come first") < all.indexOf("What tells them apart, cheapest and safest first"));
        }
    }

    @Test
    void where_nothing_was_found_it_says_so_and_why() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(new SyntheticJob().even()))) {
            String text = text(document, 1, document.getNumberOfPages());
            assertTrue(text.contains("Nothing was found. All 10 rows"), text);
            assertTrue(text.contains("What this rests on"), text);
            assertFalse(text.contains("most certain first"), text);
        }
    }

    @Test
    void a_log_without_a_pass_still_prints() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(new SyntheticJob().withoutPasses()))) {
            assertTrue(text(document, 1, 1).contains("no row could be checked"));
        }
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void no_text_leaves_the_page_or_lies_on_other_text(Paper paper) throws IOException {
        for (SyntheticJob job : List.of(
                new SyntheticJob().even(),
                new SyntheticJob().withSecondProduct().withFinding(),
                new SyntheticJob().withFindings(oneOfEveryKind()))) {
            for (UnitSystem units : UnitSystem.values()) {
                try (PDDocument document = Loader.loadPDF(pdf(job, units, paper))) {
                    for (int page = 1; page <= document.getNumberOfPages(); page++) {
                        PassReviewPdfTest.checkGlyphs(document, page);
                    }
                }
            }
        }
    }

    @Test
    void no_card_is_broken_across_pages() throws IOException {
        List<Finding> findings = oneOfEveryKind();
        try (PDDocument document = Loader.loadPDF(pdf(new SyntheticJob().withFindings(findings)))) {
            int cards = 0;
            // Page 1 holds the answer, which names confidences too.
            for (int page = 2; page <= document.getNumberOfPages(); page++) {
                String text = text(document, page, page);
                int begun = text.split("% confidence\\)", -1).length;
                int ended = text.split("What tells them apart, cheapest and safest first", -1).length;
                assertEquals(begun, ended, "page " + page + ":\n" + text);
                cards += begun - 1;
            }
            assertEquals(findings.size(), cards);
        }
    }

    @Test
    void every_font_is_embedded_and_nothing_is_a_bitmap() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(new SyntheticJob().withFinding()))) {
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
        try (PDDocument document = Loader.loadPDF(pdf(new SyntheticJob().withFinding()))) {
            assertEquals(
                    "Row diagnosis: Willow bottom, June 14, 2026",
                    document.getDocumentInformation().getTitle());
            assertEquals("en-US", document.getDocumentCatalog().getLanguage());
            List<String> titles = new ArrayList<>();
            for (PDOutlineItem item :
                    document.getDocumentCatalog().getDocumentOutline().children()) {
                titles.add(item.getTitle());
                assertTrue(item.findDestinationPage(document) != null, item.getTitle());
                item.children().forEach(child -> titles.add(child.getTitle()));
            }
            assertEquals(
                    List.of(
                            "Which row, and since when?",
                            "Before you touch the machine",
                            "Every row, start to end",
                            "The rate of every row",
                            "Findings",
                            "1 Row 7 looks plugged",
                            "Checks by what you see",
                            "Catch the liquid",
                            "What this rests on",
                            "Healthy rows"),
                    titles);
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
        assertArrayEquals(pdf(new SyntheticJob().withFinding()), pdf(new SyntheticJob().withFinding()));
    }
}
