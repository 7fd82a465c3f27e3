package io.rowledger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.rowledger.sim.GnssModel;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimFault;
import io.rowledger.sim.SimRig;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.io.TempDir;

/** A bar with a plugged knife, the same bar repaired, and another bar: simulated, reported, compared. */
@TestInstance(Lifecycle.PER_CLASS)
@Tag("slow")
class CompareTest {
    private Path folder;
    private Path faulty;
    private Path repaired;
    private Path other;

    @BeforeAll
    void report_on_three_jobs(@TempDir Path temporary) {
        folder = temporary;
        faulty = report("faulty", job(8, 11).fault(SimFault.of(SimFault.Kind.PLUGGED, 5, 150, 0.02)));
        repaired = report("repaired", job(8, 12));
        other = report("other", job(6, 13));
    }

    private static Scenario job(int rows, long seed) {
        SimRig bar = SimRig.carried(rows);
        return new Scenario(seed, bar, PassPlan.rectangle(220, 6, 0, bar.widthM()))
                .gnss(GnssModel.rtk(5))
                .withoutGround();
    }

    private Path report(String name, Scenario job) {
        Path at = folder.resolve(name);
        job.run().writeTo(at);
        Path out = at.resolve("out");
        Calls call = Calls.of("report", at.resolve("log.csv"), "--rig", at.resolve("rig.yaml"), "--out", out);
        assertEquals(0, call.status(), call.err());
        return out;
    }

    @Test
    void the_plugged_row_is_printed_for_the_dealer_and_stands_in_the_files() throws IOException {
        assertTrue(Files.size(faulty.resolve("row-diagnosis.pdf")) > 10_000);
        JsonNode finding = new ObjectMapper()
                .readTree(faulty.resolve("diagnosis.json").toFile())
                .get("findings")
                .get(0);
        assertEquals("plugged", finding.get("kind").asText());
        assertEquals(5, finding.get("rows").get(0).asInt());
    }

    @Test
    void the_repair_shows() throws IOException {
        Path out = folder.resolve("repair");
        Calls call = Calls.of("compare", faulty, repaired, "--out", out, "--units", "metric");
        assertEquals(0, call.status(), call.err());
        assertTrue(call.out().startsWith("Yes: of 1"), call.out());
        assertTrue(call.out().contains(out.toString()), call.out());
        assertTrue(Files.size(out.resolve("comparison.pdf")) > 10_000);
        JsonNode json =
                new ObjectMapper().readTree(out.resolve("comparison.json").toFile());
        assertEquals("plugged", json.get("gone").get(0).get("kind").asText());
        assertEquals(
                "repaired",
                json.get("products").get(0).get("rows").get(4).get("verdict").asText());
    }

    @Test
    void a_new_fault_shows() {
        Calls call = Calls.of("compare", repaired, faulty, "--out", folder.resolve("worse"), "--quiet");
        assertEquals(0, call.status(), call.err());
        assertEquals("", call.err());
        assertTrue(call.out().contains("New: Row 5 looks plugged."), call.out());
    }

    @Test
    void another_bar_can_not_be_compared() {
        Path out = folder.resolve("never");
        Calls call = Calls.of("compare", faulty, other, "--out", out);
        assertEquals(2, call.status(), call.err());
        assertEquals(
                "rowledger: " + other
                        + ": found a bar of 6 rows; expected one of 8 rows as in the job before. Hint:"
                        + " compare two jobs of the same bar.",
                call.err().strip());
        assertFalse(Files.exists(out));
    }

    @Test
    void only_what_is_asked_for_is_printed() {
        Path out = folder.resolve("applicator");
        Path at = folder.resolve("repaired");
        Calls call = Calls.of(
                "report", at.resolve("log.csv"), "--rig", at.resolve("rig.yaml"), "--out", out, "--for", "applicator");
        assertEquals(0, call.status(), call.err());
        assertTrue(Files.exists(out.resolve("pass-review.pdf")));
        assertTrue(Files.exists(out.resolve("diagnosis.json")));
        assertFalse(Files.exists(out.resolve("row-diagnosis.pdf")));
    }
}
