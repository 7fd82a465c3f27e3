package io.rowledger.document.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.text.Messages;
import io.rowledger.report.common.BatchOutcomes;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.report.compare.ComparisonPdfTest;
import io.rowledger.report.review.PassReviewPdfTest;
import io.rowledger.report.rows.RowDiagnosisPdfTest;
import io.rowledger.report.season.BatchOutcome;
import io.rowledger.report.season.BatchReport;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.verapdf.pdfa.flavours.PDFAFlavour;

/** Reports are PDF/A-2a or, with a file inside, PDF/A-3a (ISO 19005-2 and -3), by veraPDF's reading of the standards. */
@Tag("slow")
class ArchiveTest {
    private static final ReportOptions OPTIONS =
            new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneId.of("America/Chicago"), null, "1.2.3");
    /** ISO 14289-1, clause 5: a file says itself that it is PDF/UA. Ours doesn't: a person must judge half its rules. */
    private static final Set<String> NO_CLAIM_TO_UA = Set.of("5-1");

    private static final byte[] FIGURES =
            "{\"field\": \"Willow bottom\", \"nitrogen_kg\": 1289.2}\n".getBytes(StandardCharsets.UTF_8);

    private static byte[] review(SyntheticJob job) throws IOException {
        return PassReviewPdfTest.pdf(job.build(), OPTIONS);
    }

    private static byte[] diagnosis(SyntheticJob job) throws IOException {
        return RowDiagnosisPdfTest.pdf(job, UnitSystem.METRIC, Paper.A4);
    }

    static byte[] withAttachments(Path folder, List<Attachment> attachments) throws IOException {
        Files.writeString(
                folder.resolve("page.xhtml"),
                "<html lang=\"en-US\"><head><title>Record of {{field}}</title></head><body><h1>{{field}}</h1>"
                        + "<p>1,289 kg</p></body></html>");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new PdfReport(
                        "page.xhtml",
                        folder,
                        Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC)),
                        Instant.parse("2026-06-02T14:50:10Z").getEpochSecond())
                .write(Map.of("field", "Willow & <bottom>"), Map.of(), attachments, out);
        return out.toByteArray();
    }

    private static void check(byte[] pdf) throws IOException {
        Archivist.check(pdf, PDFAFlavour.PDFA_2_A);
    }

    private static void checkBoth(byte[] pdf) throws IOException {
        check(pdf);
        assertEquals(
                NO_CLAIM_TO_UA,
                Archivist.opinion(pdf, PDFAFlavour.PDFUA_1).broken().keySet());
    }

    @Test
    void the_review_is_fit_for_an_archive() throws IOException {
        checkBoth(review(new SyntheticJob().withSecondProduct().withFinding()));
    }

    @Test
    void the_diagnosis_is_fit_for_an_archive() throws IOException {
        checkBoth(diagnosis(new SyntheticJob().withFindings(RowDiagnosisPdfTest.oneOfEveryKind())));
    }

    @Test
    void the_comparison_is_fit_for_an_archive() throws IOException {
        check(ComparisonPdfTest.pdf(new SyntheticJob().even(), new SyntheticJob().withFinding(), Paper.LETTER));
    }

    @Test
    void the_summary_of_a_batch_is_fit_for_an_archive() throws IOException {
        checkBoth(batch(BatchOutcomes.ofEveryResult()));
        check(batch(BatchOutcomes.ofEveryResult().subList(2, 3)));
    }

    private static byte[] batch(List<BatchOutcome> outcomes) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        BatchReport.of(outcomes, OPTIONS).write(out);
        return out.toByteArray();
    }

    @Test
    void what_a_user_writes_does_not_spoil_the_archive() throws IOException {
        check(review(new SyntheticJob()
                .withoutPasses()
                .job("field", "<b>Tom & Co</b> ]]> \u0001 \u571f\u5730 \ud83d\ude9c \u05d0\u0663")
                .job("note", "{{verdict}}")));
    }

    @Test
    void the_validator_refuses_a_page_that_claims_too_much() throws IOException {
        byte[] pdf = review(new SyntheticJob().withoutPasses());
        String text = new String(pdf, StandardCharsets.ISO_8859_1);
        byte[] claim = text.replace("<pdfaid:part>2</pdfaid:part>", "<pdfaid:part>1</pdfaid:part>")
                .getBytes(StandardCharsets.ISO_8859_1);
        assertFalse(Archivist.opinion(claim, PDFAFlavour.PDFA_1_A).broken().isEmpty());
        byte[] untagged = text.replace("/Marked true", "/Marked 12345").getBytes(StandardCharsets.ISO_8859_1);
        assertFalse(Archivist.opinion(untagged, PDFAFlavour.PDFA_2_A).broken().isEmpty());
    }

    @Test
    void an_attachment_comes_out_as_it_went_in(@TempDir Path folder) throws IOException {
        byte[] pdf = withAttachments(
                folder,
                List.of(
                        new Attachment("record.json", "application/json", "The figures of this page", FIGURES),
                        new Attachment("a.csv", "text/csv", "A table", new byte[] {1, 2, 3})));
        Archivist.check(pdf, PDFAFlavour.PDFA_3_A);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            Map<String, PDComplexFileSpecification> files =
                    document.getDocumentCatalog().getNames().getEmbeddedFiles().getNames();
            assertEquals(List.of("a.csv", "record.json"), List.copyOf(files.keySet()));
            PDComplexFileSpecification file = files.get("record.json");
            PDEmbeddedFile embedded = file.getEmbeddedFile();
            assertArrayEquals(FIGURES, embedded.toByteArray());
            assertEquals("application/json", embedded.getSubtype());
            assertEquals("The figures of this page", file.getFileDescription());
            assertEquals("record.json", file.getFileUnicode());
            assertEquals("Data", file.getCOSObject().getNameAsString("AFRelationship"));
            assertEquals(
                    Instant.parse("2026-06-02T14:50:10Z"), embedded.getModDate().toInstant());
            COSArray associated = document.getDocumentCatalog().getCOSObject().getCOSArray(COSName.getPDFName("AF"));
            assertEquals(2, associated.size());
        }
    }

    @Test
    void the_same_attachments_give_the_same_bytes_and_others_another_identity(@TempDir Path folder) throws IOException {
        Attachment one = new Attachment("record.json", "application/json", "Figures", FIGURES);
        Attachment other = new Attachment("record.json", "application/json", "Figures", new byte[] {'{', '}'});
        byte[] pdf = withAttachments(folder, List.of(one));
        assertArrayEquals(pdf, withAttachments(folder, List.of(one)));
        try (PDDocument a = Loader.loadPDF(pdf);
                PDDocument b = Loader.loadPDF(withAttachments(folder, List.of(other)))) {
            assertFalse(a.getDocument().getDocumentID().equals(b.getDocument().getDocumentID()));
            assertEquals(
                    "Record of Willow & <bottom>", a.getDocumentInformation().getTitle());
        }
    }

    @Test
    void a_listener_hears_the_review_in_its_own_order_and_every_word_once() throws IOException {
        TagTree tree = TagTree.read(review(new SyntheticJob().withFinding()));
        String heard = tree.heard();
        int at = -1;
        for (String words : List.of(
                "Pass review",
                "Willow bottom",
                "No, by the meters: 1 of 10 rows is more than 10% off its target volume",
                "Before anything else",
                "Rate on the ground against target: UAN 32-0-0",
                "Row 7 looks plugged (93% confidence)",
                "Skips and overlaps",
                "What the figures rest on")) {
            assertTrue(heard.indexOf(words) > at, words + " after " + at + " in " + heard);
            at = heard.indexOf(words);
        }
        assertFalse(heard.contains("page 1 of"), "the foot of a page is no part of the text");
        assertEquals(1, tree.all("H1").size());
        assertEquals("Willow bottom", tree.all("H1").get(0).heard());
        assertEquals(at, heard.lastIndexOf("What the figures rest on"));
    }

    /** ISO 32000-1, table 337: a Table holds TR, or THead and TBody that hold TR; a TR holds TH and TD. */
    @Test
    void tables_have_rows_of_one_length_with_headings_that_say_what_they_head() throws IOException {
        for (byte[] pdf : List.of(
                review(new SyntheticJob().withSecondProduct().withFinding()),
                diagnosis(new SyntheticJob().withFindings(RowDiagnosisPdfTest.oneOfEveryKind())))) {
            List<TagTree> tables = TagTree.read(pdf).all("Table");
            assertTrue(tables.size() > 4, "tables: " + tables.size());
            for (TagTree table : tables) {
                Set<Integer> lengths = new HashSet<>();
                assertFalse(table.all("TH").isEmpty(), table.heard());
                for (TagTree row : table.all("TR")) {
                    int cells = 0;
                    for (TagTree cell : row.kids()) {
                        assertTrue(Set.of("TH", "TD").contains(cell.type()), cell.type());
                        assertTrue(!cell.type().equals("TH") || cell.attribute("Scope") != null, cell.heard());
                        cells += cell.attribute("ColSpan") == null ? 1 : Integer.parseInt(cell.attribute("ColSpan"));
                    }
                    lengths.add(cells);
                }
                assertEquals(1, lengths.size(), table.heard());
            }
        }
    }

    @Test
    void every_chart_says_what_is_seen_in_it() throws IOException {
        for (byte[] pdf : List.of(
                review(new SyntheticJob().withFinding()),
                diagnosis(new SyntheticJob().withFinding()),
                ComparisonPdfTest.pdf(new SyntheticJob().even(), new SyntheticJob().withFinding(), Paper.LETTER))) {
            List<TagTree> figures = TagTree.read(pdf).all("Figure");
            assertTrue(figures.size() >= 3, "figures: " + figures.size());
            for (TagTree figure : figures) {
                assertNotNull(figure.alt());
                assertTrue(figure.alt().length() > 40 && !figure.alt().startsWith("Chart. "), figure.alt());
            }
        }
    }

    @Test
    void the_steps_of_a_list_are_heard_with_their_numbers() throws IOException {
        List<TagTree> lists = TagTree.read(diagnosis(new SyntheticJob().withFinding())).all("L").stream()
                .filter(list -> "Decimal".equals(list.attribute("ListNumbering")))
                .toList();
        assertFalse(lists.isEmpty());
        for (TagTree list : lists) {
            for (int i = 0; i < list.kids().size(); i++) {
                TagTree item = list.kids().get(i);
                assertEquals(
                        List.of("Lbl", "LBody"),
                        item.kids().stream().map(TagTree::type).toList());
                assertEquals((i + 1) + ".", item.kids().get(0).heard());
            }
        }
    }
}
