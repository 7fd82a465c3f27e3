package io.rowledger.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.pdf.Paper;
import io.rowledger.report.common.Audience;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.EnumSet;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code --templates} with an unmodified copy of the built-in templates. */
@Tag("slow")
class UnmodifiedTemplatesTest {
    @TempDir
    Path temp;

    private Path write(String name, @Nullable Path templates, Analysis job) {
        ReportOptions options = new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneOffset.UTC, templates, "test");
        Path folder = temp.resolve(name);
        Reports.write(job, options, folder, EnumSet.allOf(Audience.class), List.of(), 2);
        return folder;
    }

    @Test
    void the_printed_reports_have_the_same_bytes_for_all_three_readers() throws IOException {
        Path copy = Files.createDirectory(temp.resolve("templates"));
        try (Stream<Path> templates = Files.list(Path.of("report-templates"))) {
            for (Path template : templates.toList()) {
                Files.copy(template, copy.resolve(template.getFileName()));
            }
        }
        Analysis job = new SyntheticJob().withFinding().withSecondProduct().build();
        Path built = write("built-in", null, job);
        Path own = write("own", copy, job);
        for (String pdf : List.of("pass-review.pdf", "row-diagnosis.pdf")) {
            assertTrue(Files.size(built.resolve(pdf)) > 10_000);
            assertEquals(-1, Files.mismatch(built.resolve(pdf), own.resolve(pdf)), pdf);
        }
        // The record prints the call that makes it again, with the folder of templates.
        assertEquals(
                text(built.resolve("nitrogen-record.pdf")),
                text(own.resolve("nitrogen-record.pdf")).replace("--templatestemplates", ""));
    }

    private static String text(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", "");
        }
    }
}
