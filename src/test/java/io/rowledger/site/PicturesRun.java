package io.rowledger.site;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.cli.Calls;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Draws the README's pictures from a sample log: {@code mvn -Ppictures test}. Not part of a build. */
class PicturesRun {
    private static final Path IMAGES = Path.of("src/site/resources/images");
    private static final Path SAMPLE = Path.of("sample-logs/plugged-row");

    /** Large enough to read the headings. */
    private static final int PAGE_DPI = 72;
    /** Three of them side by side. */
    private static final int THUMBNAIL_DPI = 26;

    @TempDir
    Path folder;

    @Test
    void page_one_of_each_report() throws IOException {
        Path out = folder.resolve("results");
        Calls call = Calls.of(
                "report",
                SAMPLE.resolve("log.csv"),
                "--rig",
                SAMPLE.resolve("rig.yaml"),
                "--boundary",
                SAMPLE.resolve("boundary.geojson"),
                "--quiet",
                "--out",
                out);
        assertEquals(0, call.status(), call.err());
        Files.createDirectories(IMAGES);
        draw(out.resolve("pass-review.pdf"), PAGE_DPI, "pass-review.png");
        for (String report : new String[] {"pass-review", "nitrogen-record", "row-diagnosis"}) {
            draw(out.resolve(report + ".pdf"), THUMBNAIL_DPI, report + "-small.png");
        }
    }

    @Test
    void the_page_of_findings() throws IOException {
        Files.writeString(FindingsPage.FILE, FindingsPage.text());
    }

    private static void draw(Path pdf, int dpi, String name) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            BufferedImage page = new PDFRenderer(document).renderImageWithDPI(0, dpi);
            ImageIO.write(page, "png", IMAGES.resolve(name).toFile());
        }
    }
}
