package io.rowledger.document.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.document.text.Messages;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Pages set closer where that spares one. By hand: paper of 792 pt less margins of 46 and 50 pt holds 696 pt; a line of 8.8 pt at
 * 1.36 with 5 pt below takes 16.97 pt, 41 a page; set closer, at 1.3 with 3.5 pt, 14.94 pt, 46 a page.
 */
class PageCountTest {
    @TempDir
    Path folder;

    /**
     * 44 lines leave 3 on a second page, which closer lines spare; of 60 the second page holds 19, more than a quarter, and stays. 343
     * make 8 full pages and 15 lines, more than a quarter of the ninth; closer they are 7 pages and 21 lines.
     */
    @ParameterizedTest
    @CsvSource({"40, 1", "44, 1", "60, 2", "320, 8", "343, 8", "400, 9"})
    void lines_are_set_closer_where_that_spares_a_page(int lines, int pages) throws IOException {
        Files.writeString(
                folder.resolve("page.xhtml"),
                "<html xmlns=\"http://www.w3.org/1999/xhtml\"><head><title>t</title><link rel=\"stylesheet\" type=\"text/css\""
                        + " media=\"print\" href=\"report.css\"/><style type=\"text/css\" media=\"print\">@page { size: letter; }"
                        + "</style></head><body>" + "<p>line</p>".repeat(lines) + "</body></html>");
        Messages messages = Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new PdfReport("page.xhtml", folder, messages, 0).write(Map.of(), Map.of(), out);
        try (PDDocument document = Loader.loadPDF(out.toByteArray())) {
            assertEquals(pages, document.getNumberOfPages());
        }
    }
}
