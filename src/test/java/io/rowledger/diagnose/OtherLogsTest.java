package io.rowledger.diagnose;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import io.rowledger.finding.FindingKind;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Logs of another simulator, in forms that consoles write, with what is true of each. They are not part of the project: run with
 * {@code -Dreal.data=DIR}, where DIR holds a folder per log with {@code log.csv.gz} and {@code rig.yaml}.
 */
class OtherLogsTest {
    private static final Map<String, List<String>> EXPECTED = Map.of(
            "clean03", List.of(),
            "clean17", List.of(),
            "clean24", List.of(),
            "gapfast0", List.of(FindingKind.INTERMITTENT + "[7]"),
            "tank0", List.of(FindingKind.RAN_EMPTY + "[]"),
            "pump0", List.of(FindingKind.SUPPLY_FAILING + "[]"),
            "open0", List.of(FindingKind.VALVE_STUCK_OPEN + "[4]"),
            "short1", List.of(FindingKind.SUPPLY_LIMITED + "[]"),
            "crash-with-stops", List.of());

    @Test
    void what_is_true_of_each_log_is_found_and_nothing_else() {
        String folder = System.getProperty("real.data", "");
        assumeTrue(
                !folder.isEmpty(),
                "skipped: no logs of another simulator; run with -Dreal.data=DIR, with console-forms/ in it");
        Map<String, List<String>> found = new TreeMap<>();
        for (String name : EXPECTED.keySet()) {
            Path log = Path.of(folder, "console-forms", name);
            assertTrue(Files.exists(log.resolve("log.csv.gz")), log + " is missing");
            found.put(
                    name,
                    JobOnDisk.of(log, "log.csv.gz").findings().stream()
                            .map(f -> f.kind() + "" + f.rows())
                            .collect(Collectors.toList()));
        }
        assertEquals(new TreeMap<>(EXPECTED), found);
    }
}
