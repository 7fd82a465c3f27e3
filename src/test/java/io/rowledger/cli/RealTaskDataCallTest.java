package io.rowledger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.rowledger.log.taskdata.TaskDataDecoder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The public task data of a boom with 16 sections (folder named by {@code -Dreal.data=DIR}) from the draft of a rig file to
 * the review.
 */
@Tag("slow")
class RealTaskDataCallTest {
    private static Path data = Path.of("");

    @TempDir
    Path folder;

    @BeforeAll
    static void needsTheFolder() {
        data = Path.of(System.getProperty("real.data", ""), "taskdata-sections");
        assumeTrue(
                Files.exists(data.resolve("TASKDATA.XML")),
                "needs -Dreal.data=DIR with taskdata-sections/TASKDATA.XML");
    }

    /** The draft that inspect writes, with the places filled in that a device description leaves open. */
    private Path rig() throws IOException {
        Path draft = folder.resolve("draft.yaml");
        Calls inspect = Calls.of("inspect", data.resolve("TLG00011.BIN"), "--draft-rig", draft);
        assertEquals(0, inspect.status(), inspect.err());
        String text = Files.readString(draft)
                .replace("measure this", "1.2 m")
                .replaceFirst("name: fill in", "name: UAN 32")
                .replaceFirst("density: fill in", "density: 11.06 lb/gal")
                .replaceFirst("analysis: fill in", "analysis: 32-0-0")
                .replaceFirst(" *target: fill in[^\n]*\n", "")
                .replaceFirst("outer_share: fill in", "outer_share: 1");
        int columns = text.indexOf("columns:");
        return Files.writeString(folder.resolve("rig.yaml"), columns < 0 ? text : text.substring(0, columns));
    }

    private JsonNode review(String name, Path rig) throws IOException {
        Path out = folder.resolve(name);
        Calls call = Calls.of("report", data.resolve(name + ".BIN"), "--rig", rig, "--out", out, "--quiet");
        assertEquals(0, call.status(), call.err());
        return new ObjectMapper().readTree(out.resolve("summary.json").toFile());
    }

    private String firstPage(String name) throws IOException {
        try (PDDocument pdf =
                Loader.loadPDF(folder.resolve(name).resolve("pass-review.pdf").toFile())) {
            PDFTextStripper first = new PDFTextStripper();
            first.setEndPage(1);
            return first.getText(pdf).replaceAll("\\s+", " ");
        }
    }

    @Test
    void a_driven_task_has_the_volume_and_area_of_an_independent_decoder() throws IOException {
        double[] expected = TaskDataDecoder.volumeAndArea(data, "TLG00011");
        JsonNode summary = review("TLG00011", rig());
        JsonNode field = summary.get("field");
        assertEquals(
                expected[0],
                field.at("/products").elements().next().get("volume_l").asDouble(),
                0.02 * expected[0]);
        double appliedM2 = 0;
        for (JsonNode row : summary.get("rows")) {
            appliedM2 += row.get("applied_area_m2").asDouble();
        }
        // The boom swings in turns where the decoder's width times distance runs straight.
        assertEquals(expected[1], appliedM2, 0.03 * expected[1]);
        String page = firstPage("TLG00011");
        assertTrue(page.contains("by the controller's own total"), page);
        assertTrue(page.contains("times less"), page);
    }

    @Test
    void a_task_in_which_nothing_was_applied_has_a_review_too() throws IOException {
        JsonNode summary = review("TLG00012", rig());
        assertEquals(0, summary.at("/field/covered_area_m2").asDouble(), 0);
        assertFalse(firstPage("TLG00012").contains("by the controller's own total"));
    }
}
