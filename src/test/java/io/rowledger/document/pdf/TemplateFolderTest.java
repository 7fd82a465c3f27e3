package io.rowledger.document.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.report.review.PassReviewPdfTest;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("slow")
class TemplateFolderTest {
    private static final String HEAD = "<html><head><title>t</title></head>\n<body>\n";

    @TempDir
    private Path folder;

    private byte[] pdf() throws IOException {
        ReportOptions options = new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneOffset.UTC, folder, "test");
        return PassReviewPdfTest.pdf(new SyntheticJob().build(), options);
    }

    private UnusableInputException refused(String template) throws IOException {
        Files.writeString(folder.resolve("pass-review.xhtml"), template);
        return assertThrows(UnusableInputException.class, this::pdf);
    }

    @Test
    void a_template_in_the_folder_replaces_the_built_in_one() throws IOException {
        Files.writeString(
                folder.resolve("pass-review.xhtml"),
                HEAD + "{{#review}}<p>Mine: {{head.field}}, {{paper}}</p>{{/review}}</body></html>");
        try (PDDocument document = Loader.loadPDF(pdf())) {
            assertEquals(
                    "Mine: Willow bottom, letter",
                    new PDFTextStripper().getText(document).strip());
        }
    }

    @Test
    void a_style_sheet_alone_replaces_only_the_style_sheet() throws IOException {
        Files.writeString(folder.resolve("report.css"), "h2 { page-break-before: always; }");
        try (PDDocument document = Loader.loadPDF(pdf())) {
            assertTrue(document.getNumberOfPages() >= 7, "pages: " + document.getNumberOfPages());
            assertTrue(new PDFTextStripper().getText(document).contains("Willow bottom"));
        }
    }

    @Test
    void a_template_that_is_not_well_formed_is_refused_by_file_and_line() throws IOException {
        UnusableInputException e = refused(HEAD + "<p>open\n</body></html>");
        assertEquals(folder.resolve("pass-review.xhtml").toString(), e.file());
        assertEquals(4, e.line());
        assertTrue(e.getMessage().contains("Hint:"), e.getMessage());
    }

    @Test
    void a_tag_that_means_nothing_is_refused_by_file_and_line() throws IOException {
        UnusableInputException e = refused(HEAD + "<p>{{review.head.feild}}</p></body></html>");
        assertEquals(3, e.line());
        assertTrue(e.getMessage().contains("feild"), e.getMessage());
    }

    @Test
    void a_section_left_open_is_refused_by_file_and_line() throws IOException {
        UnusableInputException e = refused(HEAD + "<p>{{#review}}</p></body></html>");
        assertEquals(3, e.line());
        assertTrue(e.getMessage().contains("{{/name}}"), e.getMessage());
    }

    @Test
    void a_chart_that_does_not_exist_is_refused_with_those_that_do() throws IOException {
        UnusableInputException e = refused(HEAD + "<div data-chart=\"pie\"></div></body></html>");
        assertTrue(e.getMessage().contains("pie") && e.getMessage().contains("rate-map/uan"), e.getMessage());
    }

    @Test
    void a_template_that_is_not_utf_8_is_refused() throws IOException {
        Files.write(folder.resolve("pass-review.xhtml"), new byte[] {'<', (byte) 0xff, '>'});
        UnusableInputException e = assertThrows(UnusableInputException.class, this::pdf);
        assertTrue(e.getMessage().contains("UTF-8"), e.getMessage());
    }

    @Test
    void a_folder_that_does_not_exist_is_refused() throws IOException {
        ReportOptions options =
                new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneOffset.UTC, folder.resolve("none"), "test");
        UnusableInputException e = assertThrows(
                UnusableInputException.class, () -> PassReviewPdfTest.pdf(new SyntheticJob().build(), options));
        assertTrue(e.getMessage().contains("no such folder"), e.getMessage());
    }

    @Test
    void an_unclosed_element_inside_a_section_is_refused_by_the_line_in_the_template() throws IOException {
        UnusableInputException e =
                refused(HEAD + "{{#review}}\n<p>{{head.field}}\n\n<b>open\n</p>{{/review}}</body></html>");
        assertEquals(7, e.line(), e.getMessage());
    }

    @Test
    void parts_in_other_files_are_refused_by_line() throws IOException {
        Files.writeString(folder.resolve("part.mustache"), "secret words");
        UnusableInputException e = refused(HEAD + "<p>\n{{> part.mustache}}</p></body></html>");
        assertEquals(4, e.line(), e.getMessage());
        assertTrue(e.getMessage().contains("{{>part.mustache}}"), e.getMessage());
        UnusableInputException renamed = refused(HEAD + "{{=<% %>=}}<p><%> part.mustache%></p></body></html>");
        assertTrue(renamed.getMessage().contains("part.mustache"), renamed.getMessage());
    }

    @Test
    void endless_nesting_is_refused_by_line() throws IOException {
        for (String start : List.of("<div>", "{{#review}}", "<i class=\"a\">\n")) {
            UnusableInputException e = refused(HEAD + start.repeat(40_000));
            assertTrue(e.line() >= 3 && e.line() < 110, e.getMessage());
            assertTrue(e.getMessage().contains("deep"), e.getMessage());
        }
    }

    @Test
    void style_sheets_come_from_the_folder_alone() throws IOException {
        Path outside =
                Files.writeString(folder.resolveSibling(folder.getFileName() + "-outside.css"), "p { color: red }");
        try {
            for (String sheet : List.of(
                    "other.css", "../" + outside.getFileName(), outside.toUri().toString())) {
                UnusableInputException e = refused(
                        "<html><head>\n<link rel=\"stylesheet\" href=\"" + sheet + "\"/></head><body>x</body></html>");
                assertEquals(2, e.line(), e.getMessage());
                assertTrue(e.getMessage().contains("a style sheet that isn't in the folder"), e.getMessage());
            }
            Files.createSymbolicLink(folder.resolve("report.css"), outside);
            UnusableInputException e =
                    refused("<html><head><link rel=\"stylesheet\" href=\"report.css\"/></head><body>x</body></html>");
            assertTrue(e.getMessage().contains("a link to a file outside"), e.getMessage());
        } finally {
            Files.delete(outside);
        }
    }

    @Test
    void a_style_sheet_that_takes_in_another_is_refused_by_line() throws IOException {
        for (String rule : List.of("@import \"x.css\";", "@IMPORT url(file:///etc/passwd);", "@\\69mport 'x.css';")) {
            Files.writeString(folder.resolve("report.css"), "/* @import\n */\np { margin: 0 }\n" + rule);
            UnusableInputException e = assertThrows(UnusableInputException.class, this::pdf);
            assertEquals(4, e.line(), e.getMessage());
        }
        Files.writeString(
                folder.resolve("pass-review.xhtml"),
                "<html><head>\n<style>@import \"x.css\";</style></head><body>x</body></html>");
        UnusableInputException e = assertThrows(UnusableInputException.class, this::pdf);
        assertEquals(2, e.line(), e.getMessage());
    }

    @Test
    void fonts_pictures_and_objects_of_a_style_sheet_are_not_fetched() throws IOException {
        Path secret = Files.writeString(folder.resolve("secret.txt"), "secret words");
        Files.writeString(
                folder.resolve("report.css"),
                "@font-face { font-family: x; src: url(" + secret.toUri() + "); -fs-pdf-font-embed: embed }\n"
                        + "p { background: url(" + secret.toUri() + "); font-family: x }");
        Files.writeString(
                folder.resolve("pass-review.xhtml"),
                "<html><head><link rel=\"stylesheet\" href=\"report.css\"/></head><body><p>here</p><object data=\""
                        + secret.toUri() + "\"></object></body></html>");
        byte[] pdf = pdf();
        assertTrue(new String(pdf, StandardCharsets.ISO_8859_1).indexOf("secret") < 0);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertEquals("here", new PDFTextStripper().getText(document).strip());
        }
    }

    /** A template must not be a way to read other files (XML external entities). */
    @Test
    void a_template_reads_no_file_but_templates() throws IOException {
        Files.writeString(folder.resolve("secret.txt"), "secret words");
        Files.writeString(
                folder.resolve("pass-review.xhtml"),
                "<!DOCTYPE html [<!ENTITY s SYSTEM \""
                        + folder.resolve("secret.txt").toUri() + "\">]>\n" + HEAD
                        + "<p>here &s; there</p><img src=\""
                        + folder.resolve("x.png").toUri()
                        + "\"/></body></html>");
        try (PDDocument document = Loader.loadPDF(pdf())) {
            String text = new PDFTextStripper().getText(document);
            assertTrue(text.contains("here"), text);
            assertTrue(!text.contains("secret words"), text);
        }
    }
}
