package io.rowledger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimResult;
import io.rowledger.sim.SimRig;
import io.rowledger.sim.TaskDataWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.io.TempDir;

/** Task data from the command line: inspected, drafted from, reported. */
@TestInstance(Lifecycle.PER_CLASS)
@Tag("slow")
class TaskDataCallsTest {
    private static final SimRig DRAWN = SimRig.drawn(6);

    private Path folder;
    private Path data;
    private SimResult run;

    @BeforeAll
    void simulate_a_job(@TempDir Path temporary) {
        folder = temporary;
        run = new Scenario(9, DRAWN, PassPlan.rectangle(100, 3, 0, DRAWN.widthM())).run();
        data = TaskDataWriter.of(run).writeTo(folder.resolve("TASKDATA"));
    }

    private static String sha256(Path file) throws IOException, NoSuchAlgorithmException {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
    }

    @Test
    void inspect_shows_how_it_was_understood() {
        Calls call = Calls.of("inspect", data);
        assertEquals(0, call.status(), call.err());
        assertTrue(call.out().contains("ISO 11783-10 time log"), call.out());
        assertTrue(call.out().contains("DET-26: actual volume per time (DDI 37)"), call.out());
        assertTrue(call.out().contains("outlets  6"), call.out());
    }

    @Test
    void a_draft_has_the_measures_of_the_device_description() throws IOException {
        Path draft = folder.resolve("draft.yaml");
        Calls call = Calls.of("inspect", data, "--draft-rig", draft);
        assertEquals(0, call.status(), call.err());
        String text = Files.readString(draft);
        // SimRig.drawn: antenna 1.6 m ahead of the axle, hitch 0.9 m behind it, wheels 4.4 m and drop line 5.9 m behind
        // that.
        for (String line : new String[] {
            "ahead_of_axle: 1.6 m",
            "right_of_center: 0 m",
            "axle_to_hitch: 0.9 m",
            "hitch: pull-type",
            "hitch_to_wheels: 4.4 m",
            "hitch_to_drop: 5.9 m",
            "spacing: 0.762 m"
        }) {
            assertTrue(text.contains(line), line + " in\n" + text);
        }
        assertFalse(text.contains("measure this"), text);
        Files.writeString(
                draft,
                text.replace("name: fill in", "name: UAN")
                        .replace("density: fill in", "density: 11.06 lb/gal")
                        .replace("analysis: fill in", "analysis: 32-0-0")
                        .replace("target: fill in", "target: 42 gal/ac"));
        Calls report = Calls.of("report", data, "--rig", draft, "--out", folder.resolve("from-draft"), "--quiet");
        assertEquals(0, report.status(), report.err());
    }

    @Test
    void a_report_names_every_file_it_rests_on() throws Exception {
        Path zip = folder.resolve("card.zip");
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(zip))) {
            for (String name : TaskDataWriter.names()) {
                out.putNextEntry(new ZipEntry("TASKDATA/" + name));
                out.write(Files.readAllBytes(data.resolve(name)));
            }
        }
        JsonNode first = null;
        for (Path log : new Path[] {data, data.resolve("TASKDATA.XML"), zip}) {
            Path out = folder.resolve("results-" + log.getFileName());
            Calls call = Calls.of("report", log, "--rig", data.resolve("rig.yaml"), "--out", out, "--quiet");
            assertEquals(0, call.status(), call.err());
            JsonNode summary =
                    new ObjectMapper().readTree(out.resolve("summary.json").toFile());
            assertEquals(1, summary.get("inputs").size());
            assertEquals(
                    sha256(data.resolve("TLG00001.BIN")),
                    summary.get("inputs").get(0).get("sha256").asText());
            JsonNode record = new ObjectMapper()
                    .readTree(out.resolve("nitrogen-record.json").toFile());
            String text = record.toString();
            assertTrue(text.contains(sha256(data.resolve("TASKDATA.XML"))), text);
            assertTrue(text.contains(sha256(data.resolve("TLG00001.XML"))), text);
            first = first == null ? summary.get("field") : first;
            assertEquals(first, summary.get("field"));
        }
    }

    @Test
    void one_flow_for_the_bar_gives_the_bars_figures_with_one_outlet_or_all_rows() throws IOException {
        Path bar = TaskDataWriter.forTheWholeBar(run).writeTo(folder.resolve("bar"));
        // Six rows of 30 in: 180 in.
        Path rig = folder.resolve("one.yaml");
        Files.writeString(
                rig,
                Files.readString(bar.resolve("rig.yaml"))
                        .replaceFirst(
                                "(?s)rows:.*?products:",
                                "rows:\n  outlets: [{at: 0 in, band: [-90 in, 90 in]}]\nproducts:"));
        JsonNode whole = field(bar, rig, "whole");
        JsonNode rows = field(data, data.resolve("rig.yaml"), "by-row");
        double litres = rows.at("/products/uan/volume_l").asDouble();
        // Each row's flow is rounded to whole mm3/s, and so is their sum.
        assertEquals(litres, whole.at("/products/uan/volume_l").asDouble(), 1e-4 * litres);
        // The rows start and stop together here: their ground is the bar's, but for the centimeter polygons are drawn
        // to.
        double areaM2 = rows.get("covered_area_m2").asDouble();
        assertEquals(areaM2, whole.get("covered_area_m2").asDouble(), 2e-3 * areaM2);
        // The rig file's six rows under the one meter.
        JsonNode shared = field(bar, bar.resolve("rig.yaml"), "shared");
        assertEquals(litres, shared.at("/products/uan/volume_l").asDouble(), 1e-4 * litres);
        assertEquals(areaM2, shared.get("covered_area_m2").asDouble(), 2e-3 * areaM2);
    }

    private JsonNode field(Path log, Path rig, String name) throws IOException {
        Path out = folder.resolve(name);
        Calls call = Calls.of("report", log, "--rig", rig, "--out", out, "--quiet");
        assertEquals(0, call.status(), call.err());
        return new ObjectMapper().readTree(out.resolve("summary.json").toFile()).get("field");
    }

    @Test
    void a_rig_of_other_rows_is_asked_about() throws IOException {
        Path rig = folder.resolve("eight.yaml");
        Files.writeString(rig, Files.readString(data.resolve("rig.yaml")).replaceFirst("count: 6", "count: 8"));
        Calls call = Calls.of("report", data, "--rig", rig, "--out", folder.resolve("eight"));
        assertEquals(2, call.status());
        assertTrue(call.err().contains("found flows of 6 sections where the rig file has 8 rows"), call.err());
        assertFalse(Files.exists(folder.resolve("eight")));
    }

    @Test
    void half_a_record_at_the_end_is_left_out_and_said() throws IOException {
        Path cut = Files.createDirectory(folder.resolve("cut"));
        for (String name : TaskDataWriter.names()) {
            Files.copy(data.resolve(name), cut.resolve(name));
        }
        byte[] bytes = Files.readAllBytes(data.resolve("TLG00001.BIN"));
        Files.write(cut.resolve("TLG00001.BIN"), java.util.Arrays.copyOf(bytes, bytes.length - 3));
        Calls call = Calls.of("report", cut, "--rig", data.resolve("rig.yaml"), "--out", folder.resolve("none"));
        assertEquals(0, call.status(), call.err());
        assertTrue(Files.readString(folder.resolve("none/summary.json"))
                .contains("TLG00001.BIN breaks off within a record"));
    }
}
