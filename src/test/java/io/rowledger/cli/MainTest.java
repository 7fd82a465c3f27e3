package io.rowledger.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("slow")
class MainTest {
    @TempDir
    Path folder;

    @Test
    void the_demo_unpacks_the_samples_and_reports_on_each() throws IOException {
        Calls call = Calls.of("demo", "--out", folder);
        assertEquals(0, call.status(), call.err());
        for (DemoCommand.Sample sample : DemoCommand.SAMPLES) {
            Path results = folder.resolve(sample.name());
            assertTrue(call.out().contains(results.toString()), call.out());
            assertTrue(call.out().contains("Nitrogen record: " + results.resolve("nitrogen-record.pdf")), call.out());
            for (String file : List.of(
                    "pass-review.pdf",
                    "nitrogen-record.pdf",
                    "nitrogen-record.json",
                    "row-diagnosis.pdf",
                    "summary.json",
                    "diagnosis.json",
                    "setup-check.json",
                    "rows.csv",
                    "passes.csv")) {
                assertTrue(Files.size(results.resolve(file)) > 100, sample.name() + " " + file);
            }
            assertArrayEquals(
                    Files.readAllBytes(Path.of("sample-logs", sample.name(), sample.log())),
                    Files.readAllBytes(
                            folder.resolve("logs").resolve(sample.name()).resolve(sample.log())));
        }
    }

    @Test
    void the_demo_knows_every_sample_log_of_the_project() throws IOException {
        Map<String, List<String>> there = new TreeMap<>();
        try (Stream<Path> folders = Files.list(Path.of("sample-logs"))) {
            for (Path sample : folders.filter(Files::isDirectory).toList()) {
                try (Stream<Path> files = Files.list(sample)) {
                    there.put(
                            sample.getFileName().toString(),
                            files.map(file -> file.getFileName().toString())
                                    .filter(file -> !file.equals("rig.yaml"))
                                    .sorted()
                                    .toList());
                }
            }
        }
        Map<String, List<String>> known = new TreeMap<>();
        for (DemoCommand.Sample sample : DemoCommand.SAMPLES) {
            known.put(
                    sample.name(),
                    Stream.of(sample.log(), sample.boundary() == null ? "" : sample.boundary())
                            .filter(file -> !file.isEmpty())
                            .sorted()
                            .toList());
        }
        assertEquals(there, known);
    }

    @Test
    void inspect_tells_how_the_sample_is_understood_and_analyzes_nothing() {
        Calls call = Calls.of("inspect", Path.of("sample-logs/contour/log.csv"));
        assertEquals(0, call.status(), call.err());
        assertTrue(call.out().contains("flow_01"), call.out());
        assertTrue(call.out().contains("gal/min"), call.out());
    }

    /** Each question stands below the columns it is about, and nowhere else. */
    @Test
    void inspect_prints_each_question_once() throws IOException {
        Path log = Files.writeString(folder.resolve("open.csv"), """
                Date,Time,Lat,Lon,Row 1 Rate,Target
                02/06/26,10:00:00,41.70000,-88.1,42,42
                02/06/26,10:00:01,41.70002,-88.1,42,42
                """);
        Calls call = Calls.of("inspect", log);
        assertEquals(2, call.status());
        for (String question : List.of("a rate without a unit", "no unit in the column name", "which is 2026-02-06")) {
            assertEquals(2, (call.out() + call.err()).split(question, -1).length, question);
            assertTrue(call.out().contains(question), call.out());
        }
        assertEquals(1, call.err().lines().count(), call.err());
        assertTrue(call.err().contains("open.csv: found 3 open questions"), call.err());
        Calls gone = Calls.of("inspect", folder.resolve("gone.csv"));
        assertEquals(1, gone.err().lines().count(), gone.err());
        assertTrue(gone.err().contains("Hint: ") && !gone.out().contains("Hint: "), gone.err());
    }

    @Test
    void help_and_version_are_not_errors() {
        assertEquals(0, Calls.of("--help").status());
        assertEquals(0, Calls.of("report", "--help").status());
        Calls version = Calls.of("--version");
        assertEquals(0, version.status());
        assertTrue(version.out().startsWith("rowledger "), version.out());
    }

    @Test
    void the_logs_are_never_touched() throws IOException {
        Path log = Path.of("sample-logs/contour/log.csv");
        byte[] before = Files.readAllBytes(log);
        long stamp = Files.getLastModifiedTime(log).toMillis();
        Calls call =
                Calls.of("report", log, "--rig", "sample-logs/contour/rig.yaml", "--out", folder, "--units", "metric");
        assertEquals(0, call.status(), call.err());
        assertArrayEquals(before, Files.readAllBytes(log));
        assertEquals(stamp, Files.getLastModifiedTime(log).toMillis());
    }
}
