package io.rowledger.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.cli.Calls;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code report} over results of the same log, ended from outside while it writes. */
@Tag("slow")
class KilledRunTest {
    private static final Path SAMPLE = Path.of("sample-logs/contour");

    /** The first Java that warns of native libraries. */
    private static final int WARNS_OF_NATIVE = 24;

    @TempDir
    Path folder;

    private List<String> call(String units) {
        return List.of(
                "report",
                SAMPLE.resolve("log.csv").toString(),
                "--rig",
                SAMPLE.resolve("rig.yaml").toString(),
                "--units",
                units,
                "--out",
                folder.resolve("results").toString());
    }

    private Map<String, byte[]> results() throws IOException {
        Map<String, byte[]> bytes = new TreeMap<>();
        try (Stream<Path> files = Files.walk(folder.resolve("results"))) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                bytes.put(folder.relativize(file).toString(), Files.readAllBytes(file));
            }
        }
        return bytes;
    }

    private void assertSame(Map<String, byte[]> before) throws IOException {
        Map<String, byte[]> now = results();
        assertEquals(before.keySet(), now.keySet());
        now.forEach((name, bytes) ->
                assertTrue(java.util.Arrays.equals(bytes, before.get(name)), () -> name + " is of another run"));
    }

    /** Starts a run in metric units and waits until some of its files are written. */
    private Process writing() throws IOException, InterruptedException {
        List<String> words = new ArrayList<>();
        words.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        if (Runtime.version().feature() >= WARNS_OF_NATIVE) {
            // As the jar's manifest has it.
            words.add("--enable-native-access=ALL-UNNAMED");
        }
        words.addAll(List.of("-cp", System.getProperty("java.class.path"), "io.rowledger.cli.Main"));
        words.addAll(call("metric"));
        Process process = new ProcessBuilder(words)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("out.txt").toFile())
                .start();
        Path written = folder.resolve(".results.rowledger/new/layers");
        for (int i = 0; i < 12_000 && process.isAlive() && !Files.exists(written); i++) {
            Thread.sleep(5);
        }
        assertTrue(process.isAlive(), () -> "ended before: " + folder.resolve("out.txt"));
        return process;
    }

    @Test
    void ended_by_a_signal_it_leaves_the_old_results_and_nothing_else() throws Exception {
        assertEquals(0, Calls.of(call("us").toArray()).status());
        Map<String, byte[]> before = results();
        Process process = writing();
        // SIGTERM on systems that have signals.
        process.destroy();
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        assertSame(before);
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(2, files.count(), "results and out.txt");
        }
        assertEquals("", Files.readString(folder.resolve("out.txt")));
    }

    @Test
    void killed_it_leaves_the_old_results_and_the_next_run_clears_the_rest() throws Exception {
        assertEquals(0, Calls.of(call("us").toArray()).status());
        Map<String, byte[]> before = results();
        Process process = writing();
        process.destroyForcibly();
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        assertSame(before);
        assertEquals(0, Calls.of(call("us").toArray()).status());
        assertSame(before);
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(2, files.count(), "results and out.txt");
        }
    }
}
