package io.rowledger.report.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.cli.Calls;
import io.rowledger.rig.Job;
import io.rowledger.rig.RigReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordFieldsTest {
    private static final String RIG = """
            rig: {antenna: {ahead_of_axle: 1 m}, axle_to_hitch: 1 m, hitch: mounted, hitch_to_drop: 2 m}
            rows: {count: 2, spacing: 76 cm}
            products:
              uan: {density: 11.06 lb/gal, analysis: 32-0-0}
            """;

    @TempDir
    Path folder;

    private Job job(String block) throws IOException {
        return RigReader.read(Files.writeString(folder.resolve("rig.yaml"), RIG + block))
                .rig()
                .job();
    }

    @Test
    void the_list_is_printed_as_it_stands() {
        Calls call = Calls.of("record-fields");
        assertEquals(0, call.status(), call.err());
        assertEquals("", call.err());
        assertTrue(call.out().contains("  Applicator [job: applicator]\n      asked for by Ohio;"), call.out());
        for (String line : call.out().split("\n", -1)) {
            assertTrue(line.length() <= 100, line);
        }
    }

    @Test
    void the_block_to_fill_in_says_nothing_as_printed_and_everything_once_filled_in() throws IOException {
        Calls call = Calls.of("record-fields", "--format", "yaml");
        assertEquals(0, call.status(), call.err());
        Job empty = job(call.out());
        assertEquals(Job.NONE.facts(), empty.facts());
        assertTrue(empty.earlier().isEmpty());
        String filled = call.out()
                .replaceAll("(?m)^  # ([a-z_]+:)$", "  $1 entered")
                .replaceAll("(?m)^  # ([a-z_]+: )", "  $1");
        Job full = job(filled);
        assertEquals("entered", full.facts().get("applicator"));
        assertEquals(1, full.earlier().size());
        assertEquals(1, full.tickets().size());
        assertEquals(1, full.credits().size());
        assertTrue(full.planKgPerM2() > 0);
        assertTrue(full.order().containsKey("uan"));
        assertTrue(full.prices().containsKey("uan"));
        for (String key : Job.keys()) {
            assertTrue(filled.contains("\n  " + key + ": "), key);
        }
    }
}
