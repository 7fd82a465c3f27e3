package io.rowledger.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.rowledger.digest.Sha256;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Processes of {@code open} that are ended by SIGKILL at random moments while calls of the page are under way: a log and a map
 * come in, a rig file is written and a field is run, over the same field of the process before. After each kill the files that
 * a call had confirmed are there byte by byte, the results are those of a whole run or none, and nothing lies outside the
 * season folder; the next process starts, works with the folder, and leaves no part of a file behind.
 */
class WorkbenchKillsRun {
    private static final int KILLS = Integer.getInteger("kills.workbench", 20);
    private static final long SEED = Long.getLong("kills.seed", 7L);
    /** In the place of a digest: no such file. */
    private static final String NONE = "";

    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Path SAMPLE = Path.of("sample-logs/plugged-row");

    @TempDir
    Path around;

    private Path season;
    private byte[] log = new byte[0];
    private byte[] rig = new byte[0];
    /** Digests of the results of whole runs, one for each rig file. */
    private final List<Map<String, String>> whole = new ArrayList<>();

    private final Map<String, Integer> counts = new TreeMap<>();
    private final List<String> faults = new ArrayList<>();
    /** Files below the season folder by name, with the digests of what each may be after the calls so far. */
    private final Map<String, Set<String>> contents = new TreeMap<>();

    @Test
    void no_kill_loses_a_confirmed_file_or_leaves_half_of_one() throws Exception {
        season = Files.createDirectory(around.resolve("season"));
        Files.writeString(around.resolve("outside.txt"), "not of the season");
        List<String> lines = Files.readAllLines(SAMPLE.resolve("log.csv"));
        log = (String.join("\n", lines.subList(0, 1500)) + "\n").getBytes(StandardCharsets.UTF_8);
        rig = Files.readAllBytes(SAMPLE.resolve("rig.yaml"));
        long millis = uninterrupted();
        Random random = new Random(SEED);
        for (int kill = 0; kill < KILLS; kill++) {
            // One in five while the program starts, the others at any moment of two rounds of calls.
            killed(kill, kill % 5 == 0, (long) (2 * millis * random.nextDouble()));
            requireWhole("kill " + kill);
        }
        Map<String, String> last = results();
        try (Opened opened = new Opened()) {
            calls(opened, KILLS * 1000);
        }
        requireWhole("the end");
        assertTrue(!last.equals(results()), "the last run changed nothing");
        try (Stream<Path> left = Files.list(season.resolve(".rowledger"))) {
            left.filter(path -> path.toString().endsWith(".tmp")).forEach(path -> faults.add("left over: " + path));
        }
        System.out.println(KILLS + " kills of the workbench, " + counts + ", faults " + faults);
        assertEquals(List.of(), faults);
    }

    /** Runs the field with each rig file and without a kill; returns the time of the first round of calls, ms. */
    private long uninterrupted() throws Exception {
        try (Opened opened = new Opened()) {
            require("making a field", opened.page().json("POST", "/api/fields", "{\"name\": \"north\"}"));
            long start = System.nanoTime();
            calls(opened, -2);
            long millis = (System.nanoTime() - start) / 1_000_000;
            whole.add(results());
            calls(opened, -1);
            whole.add(results());
            assertTrue(whole.get(0).size() > 8, whole.toString());
            assertTrue(!whole.get(0).equals(whole.get(1)), "both rig files give the same results");
            return millis;
        }
    }

    /** The calls of the page, with a process that is killed while they are under way. */
    private void killed(int kill, boolean whileStarting, long afterMs) throws Exception {
        try (Opened opened = new Opened()) {
            if (!whileStarting) {
                opened.page();
            }
            Thread killer = new Thread(() -> {
                try {
                    Thread.sleep(afterMs);
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                }
                opened.kill();
            });
            killer.start();
            try {
                for (int round = 0; ; round++) {
                    calls(opened, kill * 1000 + round);
                }
            } catch (IOException e) {
                counts.merge("killed at " + e.getMessage(), 1, Integer::sum);
            }
            killer.join();
            opened.process.waitFor(10, TimeUnit.SECONDS);
        }
    }

    /** Sends the calls; an IOException names the one that was not answered. */
    private void calls(Opened opened, int round) throws Exception {
        Visitor page = opened.page();
        byte[] notes = ("round " + round + "\n").repeat(20_000).getBytes(StandardCharsets.UTF_8);
        put(page, "log.csv", log);
        // A file with other bytes each time takes the place of the one before, which is put away.
        put(page, "notes.txt", notes);
        // The rig file whose results aren't there, so that the field is run again: its digest stands in the record.
        int which = !whole.isEmpty() && results().equals(whole.get(0)) ? 1 : 0;
        byte[] changed =
                (new String(rig, StandardCharsets.UTF_8) + "# " + which + "\n").getBytes(StandardCharsets.UTF_8);
        put(page, "rig.yaml", changed);
        require("starting the run", page.json("POST", "/api/work", "{\"fields\": [\"north\"]}"));
        for (int i = 0; i < 1200; i++) {
            JsonNode work =
                    JSON.readTree(require("the run", page.get("/api/work")).bytes());
            if (!work.has("busy")) {
                throw new IOException("the run's answer");
            }
            if (!work.path("busy").asBoolean()) {
                assertEquals("done", work.path("lines").get(0).path("state").asText(), work.toString());
                return;
            }
            Thread.sleep(20);
        }
        throw new AssertionError("still at work");
    }

    private void put(Visitor page, String file, byte[] bytes) throws IOException {
        Set<String> may = contents.computeIfAbsent("north/" + file, name -> new HashSet<>(Set.of(NONE)));
        // Until the answer is there it may be the old content or the new.
        may.add(Sha256.of(bytes));
        require("putting " + file, page.put("/api/fields/north/files/" + file + "?replace=true", bytes));
        may.clear();
        may.add(Sha256.of(bytes));
    }

    private static Visitor.Answer require(String what, Visitor.Answer answer) throws IOException {
        if (answer.status() == 0) {
            throw new IOException(what);
        }
        assertEquals(200, answer.status(), what + ": " + answer.text());
        return answer;
    }

    /** What a person finds in the folder between two processes. */
    private void requireWhole(String where) throws IOException {
        for (Map.Entry<String, Set<String>> file : contents.entrySet()) {
            Path path = season.resolve(file.getKey());
            String now = Files.isRegularFile(path) ? Sha256.of(path) : NONE;
            if (!file.getValue().contains(now)) {
                faults.add(where + ": " + (now.equals(NONE) ? "lost " : "half of ") + file.getKey());
            }
        }
        Map<String, String> now = results();
        // Between the two renames of a swap there are none; the next run brings them back.
        if (!now.isEmpty() && !whole.contains(now)) {
            Map<String, String> changed = new TreeMap<>(now);
            whole.forEach(each -> changed.entrySet().removeAll(each.entrySet()));
            faults.add(where + ": results of no whole run " + changed.keySet());
        }
        counts.merge(now.isEmpty() ? "no results" : "results of rig file " + whole.indexOf(now), 1, Integer::sum);
        try (Stream<Path> beside = Files.list(around)) {
            List<String> names = beside.map(path -> String.valueOf(path.getFileName()))
                    .sorted()
                    .toList();
            if (!names.equals(List.of("outside.txt", "season"))) {
                faults.add(where + ": outside the folder " + names);
            }
        }
        assertEquals("not of the season", Files.readString(around.resolve("outside.txt")));
    }

    /** Digests of the files of the results. */
    private Map<String, String> results() throws IOException {
        Map<String, String> files = new TreeMap<>();
        Path folder = season.resolve("results/north");
        if (Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
            try (Stream<Path> all = Files.walk(folder)) {
                for (Path path : all.filter(Files::isRegularFile).toList()) {
                    files.put(folder.relativize(path).toString(), Sha256.of(path));
                }
            }
        }
        return files;
    }

    /** A process of the workbench. */
    private final class Opened implements AutoCloseable {
        private final Process process;
        private final BufferedReader out;
        private @Nullable Visitor visitor;
        private volatile boolean killed;

        Opened() throws IOException {
            List<String> call = new ArrayList<>();
            call.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
            call.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC"));
            call.addAll(List.of("-cp", System.getProperty("kills.classpath", System.getProperty("java.class.path"))));
            call.addAll(List.of("io.rowledger.cli.Main", "open", season.toString(), "--no-browser"));
            process = new ProcessBuilder(call).redirectErrorStream(true).start();
            out = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        }

        /** Somebody at its page. */
        Visitor page() throws IOException {
            if (visitor != null) {
                return visitor;
            }
            StringBuilder said = new StringBuilder();
            try {
                for (String line = out.readLine(); line != null; line = out.readLine()) {
                    said.append(line).append('\n');
                    if (line.startsWith("http://")) {
                        visitor = Visitor.at(line);
                        return visitor;
                    }
                }
            } catch (IllegalStateException e) {
                throw new IOException("opening the page", e);
            }
            if (!killed) {
                throw new AssertionError("not started: " + said);
            }
            throw new IOException("starting");
        }

        void kill() {
            killed = true;
            process.destroyForcibly();
        }

        @Override
        public void close() throws IOException {
            process.destroyForcibly();
            try {
                process.waitFor();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
            out.close();
        }
    }
}
