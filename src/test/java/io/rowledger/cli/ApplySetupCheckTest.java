package io.rowledger.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.rowledger.results.ResultFile;
import io.rowledger.results.Schemas;
import io.rowledger.sim.GnssModel;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimRig;
import io.rowledger.sim.SpeedsByPass;
import io.rowledger.sim.Truth;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** {@code --apply-setup-check} on a simulated job whose rig file has the drop line 1.2 m too far back, against its truth. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ApplySetupCheckTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    private Path folder;
    private Path rig;
    private Truth.Ground truth;
    private byte[] rigBytes;
    private Calls call;

    @BeforeAll
    void simulate_and_report(@TempDir Path temporary) throws IOException {
        folder = temporary;
        SimRig bar = SimRig.drawn(8);
        // At one speed no log tells a wrong length from a habit of lifting late.
        truth = new Scenario(9, bar, new SpeedsByPass(PassPlan.rectangle(120, 10, 0, bar.widthM()), 0.75, 1, 1.3))
                .gnss(GnssModel.rtk(5))
                .run()
                .writeTo(folder)
                .truth()
                .ground();
        rig = folder.resolve("rig.yaml");
        // 5.9 m are 232.283 in; 1.2 m more are 279.5 in.
        Files.writeString(rig, Files.readString(rig).replace("hitch_to_drop: 232.283 in", "hitch_to_drop: 279.5 in"));
        rigBytes = Files.readAllBytes(rig);
        call = report("out", "--apply-setup-check");
    }

    private Calls report(String out, String... more) {
        List<Object> words = new ArrayList<>(List.of("report", folder.resolve("log.csv"), "--rig", rig));
        words.addAll(List.of("--boundary", folder.resolve("boundary.geojson"), "--out", folder.resolve(out)));
        words.addAll(List.of(more));
        return Calls.of(words.toArray());
    }

    private JsonNode json(String file) throws IOException {
        return JSON.readTree(folder.resolve(file).toFile());
    }

    @Test
    void the_users_rig_file_stays_and_the_corrected_one_differs_in_that_figure_only() throws IOException {
        assertEquals(0, call.status(), call.err());
        assertArrayEquals(rigBytes, Files.readAllBytes(rig));
        List<String> before = Files.readAllLines(rig);
        List<String> after = Files.readAllLines(folder.resolve("out/rig-corrected.yaml"));
        assertEquals(before.size(), after.size());
        for (int i = 0; i < before.size(); i++) {
            if (before.get(i).contains("hitch_to_drop")) {
                assertTrue(after.get(i).endsWith("in             # hitch pin back to where the liquid meets the ground")
                        || after.get(i).contains("# hitch pin back to where the liquid meets the ground"));
                assertTrue(after.get(i).matches("  hitch_to_drop: 2[23]\\d\\.?\\d? in .*"), after.get(i));
            } else {
                assertEquals(before.get(i), after.get(i));
            }
        }
    }

    @Test
    void the_ground_comes_near_the_simulators_truth() throws IOException {
        JsonNode check = json("out/setup-check.json");
        JsonNode before = check.get("corrected").get("before");
        JsonNode after = check.get("corrected").get("after");
        // Set 1.2 m too far back, each of 10 passes of 6.096 m stops 1.2 m short: 73 m² bare, give or take three sigmas
        // of
        // how well the bar is lifted on the line, 3 · 0.15 m · 6.096 m · √10 = 9 m².
        assertTrue(before.get("skip_area_m2").asDouble() > 64, before + " " + truth);
        assertEquals(truth.skipM2(), after.get("skip_area_m2").asDouble(), 20);
        assertEquals(truth.overlapM2(), after.get("overlap_area_m2").asDouble(), 20);
        assertEquals(json("out/summary.json").get("setup").get("corrected"), check.get("corrected"));
    }

    @Test
    void the_measure_is_found_and_the_file_keeps_to_its_schema() throws IOException {
        JsonNode check = json("out/setup-check.json");
        assertEquals(Set.of(), Schemas.faults(ResultFile.SETUP_CHECK, check));
        JsonNode drop = check.get("parameters").get(1);
        assertEquals("drop_offset", drop.get("parameter").asText());
        assertEquals(5.9, drop.get("estimate").asDouble(), 0.15);
        assertTrue(drop.get("differs").asBoolean());
        assertEquals("279.5 in", drop.get("written_before").asText());
        List<String> kinds = new ArrayList<>();
        json("out/summary.json")
                .get("findings")
                .forEach(f -> kinds.add(f.get("kind").asText()));
        assertTrue(kinds.contains("drop_offset"), kinds.toString());
        assertFalse(kinds.contains("side_offset"), kinds.toString());
    }

    @Test
    void the_review_shows_both_side_by_side() throws IOException {
        String text = new PDFTextStripper()
                .getText(Loader.loadPDF(folder.resolve("out/pass-review.pdf").toFile()))
                .replaceAll("\\s+", " ");
        assertTrue(text.contains("The rig file compared with the log"), text);
        assertTrue(text.contains("Coverage was computed a second time"), text);
        assertTrue(text.contains("rig.hitch_to_drop: from 279.5 in to "), text);
        assertTrue(text.contains("Measure with a tape"), text);
    }

    @Test
    void without_the_option_nothing_is_corrected() throws IOException {
        assertEquals(0, report("plain").status());
        assertFalse(Files.exists(folder.resolve("plain/rig-corrected.yaml")));
        assertTrue(json("plain/setup-check.json").get("corrected").isNull());
        assertTrue(json("plain/setup-check.json")
                .get("parameters")
                .get(1)
                .get("differs")
                .asBoolean());
    }
}
