package io.rowledger.report.compare;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.pdf.Paper;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.report.common.Views;
import io.rowledger.report.review.PassReviewPdfTest;
import io.rowledger.report.rows.RowDiagnosisPdfTest;
import io.rowledger.units.UnitSystem;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.ZoneId;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

public class ComparisonPdfTest {
    public static byte[] pdf(SyntheticJob before, SyntheticJob after, Paper paper) throws IOException {
        ReportOptions options = new ReportOptions(UnitSystem.US, paper, ZoneId.of("America/Chicago"), null, "1.2.3");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ComparisonReport.of(Views.saved(before.build(), options), Views.saved(after.build(), options), options)
                .write(out);
        return out.toByteArray();
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper()
                    .getText(document)
                    .replace('\u00a0', ' ')
                    .replaceAll("\\s+", " ");
        }
    }

    @Test
    void a_repair_that_worked_reads_so() throws IOException {
        String text = text(pdf(new SyntheticJob().withFinding(), new SyntheticJob().even(), Paper.LETTER));
        for (String words : List.of(
                "Yes: of 1 finding before, 1 is gone; nothing new shows.",
                "Before and after, side by side: UAN 32-0-0",
                "Row 7 looks plugged 93% confidence, 8:12 AM to 8:24 AM. Row 7 fell to 0 % of its neighbors. Not found in 20 min 0 s of"
                        + " checked work.",
                "7 −50.0% 50.0% 0.0% 0.0% like the other rows again",
                "Pass 3 holds too few records to judge.")) {
            assertTrue(text.contains(words), () -> words + " not in:\n" + text);
        }
        assertFalse(text.contains("trap pressure"), "cautions where there is nothing to open");
    }

    private static List<String> answer(SyntheticJob before, SyntheticJob after) {
        ReportOptions options = new ReportOptions(UnitSystem.US, Paper.A4, ZoneId.of("UTC"), null, "1.2.3");
        return ComparisonReport.of(Views.saved(before.build(), options), Views.saved(after.build(), options), options)
                .content()
                .answer();
    }

    /** Row counts that differ are refused before; see the command's own test. */
    @Test
    void jobs_of_two_fields_or_with_another_product_come_with_a_warning() {
        assertEquals(1, answer(new SyntheticJob(), new SyntheticJob()).size());
        // Case and spaces make no other field.
        assertEquals(
                1,
                answer(new SyntheticJob(), new SyntheticJob().job("field", " willow  Bottom"))
                        .size());
        List<String> fields = answer(new SyntheticJob(), new SyntheticJob().job("field", "North forty"));
        assertTrue(fields.get(0).startsWith("Careful: the fields differ, Willow bottom and North forty."), "" + fields);
        List<String> products = answer(new SyntheticJob().withSecondProduct(), new SyntheticJob());
        assertTrue(products.get(0).startsWith("Careful: only one of the jobs applied"), "" + products);
    }

    @Test
    void what_is_left_to_do_comes_after_the_cautions() throws IOException {
        String text = text(pdf(new SyntheticJob().even(), new SyntheticJob().withFinding(), Paper.LETTER));
        assertTrue(text.contains("New: Row 7 looks plugged."), text);
        assertTrue(text.indexOf("trap pressure") > 0 && text.indexOf("trap pressure") < text.indexOf("Findings"), text);
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void no_text_leaves_the_page_or_lies_on_other_text(Paper paper) throws IOException {
        List<byte[]> all = List.of(
                pdf(new SyntheticJob().withFinding(), new SyntheticJob().even(), paper),
                pdf(
                        new SyntheticJob().withSecondProduct().withFindings(RowDiagnosisPdfTest.oneOfEveryKind()),
                        new SyntheticJob().withSecondProduct().withFinding(),
                        paper));
        for (byte[] pdf : all) {
            try (PDDocument document = Loader.loadPDF(pdf)) {
                assertEquals("en-US", document.getDocumentCatalog().getLanguage());
                for (int page = 1; page <= document.getNumberOfPages(); page++) {
                    PassReviewPdfTest.checkGlyphs(document, page);
                }
            }
        }
    }

    /** ISO 32000-1, 9.3.6: text is filled (rendering mode 0), never thickened by a stroke. */
    @Test
    void no_text_is_thickened() throws IOException {
        for (byte[] pdf : List.of(
                pdf(new SyntheticJob().even(), new SyntheticJob().withFinding(), Paper.LETTER),
                pdf(new SyntheticJob().withFinding(), new SyntheticJob().even(), Paper.LETTER))) {
            try (PDDocument document = Loader.loadPDF(pdf)) {
                for (PDPage page : document.getPages()) {
                    List<Object> tokens = new PDFStreamParser(page).parse();
                    for (int i = 1; i < tokens.size(); i++) {
                        if (tokens.get(i) instanceof Operator operator && "Tr".equals(operator.getName())) {
                            assertEquals("COSInt{0}", tokens.get(i - 1).toString());
                        }
                    }
                }
            }
        }
    }

    @Test
    void the_same_jobs_give_the_same_bytes() throws IOException {
        assertArrayEquals(
                pdf(new SyntheticJob().withFinding(), new SyntheticJob().even(), Paper.A4),
                pdf(new SyntheticJob().withFinding(), new SyntheticJob().even(), Paper.A4));
    }
}
