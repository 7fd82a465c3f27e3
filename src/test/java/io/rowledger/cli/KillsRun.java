package io.rowledger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.digest.Sha256;
import io.rowledger.faults.FaultyFiles;
import io.rowledger.results.BatchLedger;
import io.rowledger.sim.SmallJob;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Real processes of every verb that writes, ended at random moments by SIGKILL and at every rename by halting, over results of
 * an earlier run in other units. Counts what is then there: old results, new ones, files of both (mixed), some of either
 * (half); and what is there beside the results after the next run (leftovers).
 */
class KillsRun {
    private static final int RANDOM_KILLS = Integer.getInteger("kills.random", 34);
    private static final long SEED = Long.getLong("kills.seed", 7L);

    @TempDir
    Path folder;

    private final Map<String, Integer> counts = new TreeMap<>();
    private final List<String> faults = new ArrayList<>();

    /** A verb with its result's folder below the season folder. */
    private record Verb(String name, List<String> words, String results) {
        List<String> in(String units) {
            List<String> all = new ArrayList<>(words);
            all.addAll(List.of("--units", units));
            return all;
        }
    }

    @Test
    void no_kill_leaves_half_or_mixed_results() throws Exception {
        Path season = folder.resolve("fields");
        for (int field = 0; field < 2; field++) {
            SmallJob.writeTo(Files.createDirectories(season.resolve("field" + field)), 5 + field, 60);
        }
        report(season.resolve("field0"), folder.resolve("before"));
        report(season.resolve("field1"), folder.resolve("after"));
        Path work = Files.createDirectory(folder.resolve("work"));
        Random random = new Random(SEED);
        List<String> only = List.of(System.getProperty("kills.verbs", "report,batch,season,compare,check")
                .split(",", -1));
        for (Verb verb : verbs(season, work.resolve("results").toString())) {
            if (!only.contains(verb.name)) {
                continue;
            }
            Map<String, String> metric = fresh(verb, work, "metric");
            Map<String, String> old = fresh(verb, work, "us");
            Path saved = folder.resolve("saved-" + verb.name);
            copy(work, saved);
            killAtRandom(verb, work, saved, old, metric, random);
            System.out.println("random kills of " + verb.name + ": " + counts + ", faults " + faults);
            haltAtRenames(verb, work, saved, old, metric);
            System.out.println("kills up to " + verb.name + ": " + counts + ", faults " + faults);
        }
        faults.forEach(System.out::println);
        assertTrue(counts.values().stream().mapToInt(Integer::intValue).sum() > 0);
        assertEquals(List.of(), faults);
    }

    private void report(Path field, Path out) throws IOException {
        run(List.of(
                "report",
                field.resolve("log.csv").toString(),
                "--rig",
                field.resolve("rig.yaml").toString(),
                "--out",
                out.toString()));
    }

    private List<Verb> verbs(Path season, String out) {
        Path first = season.resolve("field0");
        String log = first.resolve("log.csv").toString();
        String rig = first.resolve("rig.yaml").toString();
        String boundary = first.resolve("boundary.geojson").toString();
        String before = folder.resolve("before").toString();
        String after = folder.resolve("after").toString();
        return List.of(
                new Verb("report", List.of("report", log, "--rig", rig, "--boundary", boundary, "--out", out), out),
                new Verb("batch", List.of("batch", season.toString(), "--out", out, "--again"), out),
                new Verb("season", List.of("season", before, after, "--out", out), out),
                new Verb("compare", List.of("compare", before, after, "--out", out), out),
                new Verb("check", List.of("check", log, "--out", out), out));
    }

    private void killAtRandom(
            Verb verb, Path work, Path saved, Map<String, String> old, Map<String, String> metric, Random random)
            throws IOException, InterruptedException {
        long start = System.nanoTime();
        assertEquals(0, process(verb.in("metric"), List.of()).waitFor());
        long millis = (System.nanoTime() - start) / 1_000_000;
        for (int i = 0; i < RANDOM_KILLS; i++) {
            restore(saved, work);
            Process process = process(verb.in("metric"), List.of());
            if (!process.waitFor((long) (millis * (0.3 + 0.8 * random.nextDouble())), TimeUnit.MILLISECONDS)) {
                process.destroyForcibly().waitFor();
                count(verb.name + " killed at random");
            } else {
                count(verb.name + " ended before the kill");
            }
            compare(verb, work, old, metric, "random " + i);
        }
    }

    private void haltAtRenames(Verb verb, Path work, Path saved, Map<String, String> old, Map<String, String> metric)
            throws IOException, InterruptedException {
        for (int rename = 0; ; rename++) {
            restore(saved, work);
            List<String> halting = List.of(
                    "-Djava.nio.file.spi.DefaultFileSystemProvider=" + FaultyFiles.class.getName(),
                    "-Dfaults.under=" + work,
                    "-Dfaults.renames=true",
                    "-Dfaults.at=" + rename);
            int status = process(verb.in("metric"), halting).waitFor();
            if (status != FaultyFiles.HALTED) {
                assertEquals(0, status, verb.name + " " + Files.readString(folder.resolve("out.txt")));
                return;
            }
            count(verb.name + " halted at a rename");
            compare(verb, work, old, metric, "rename " + rename);
        }
    }

    private void count(String what) {
        counts.merge(what, 1, Integer::sum);
    }

    /** The results of a run into an empty folder. */
    private Map<String, String> fresh(Verb verb, Path work, String units) throws IOException {
        clear(work);
        run(verb.in(units));
        Path ledger = Path.of(verb.results, BatchLedger.FILE);
        if (Files.exists(ledger)) {
            Path kept = Files.createDirectories(folder.resolve("ledger-" + units));
            Files.copy(ledger, kept.resolve(BatchLedger.FILE), StandardCopyOption.REPLACE_EXISTING);
        }
        return content(work);
    }

    private static void restore(Path saved, Path work) throws IOException {
        clear(work);
        copy(saved, work);
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> walk = Files.walk(from)) {
            for (Path path : walk.toList()) {
                Path copy = to.resolve(from.relativize(path).toString());
                if (Files.isDirectory(path)) {
                    Files.createDirectories(copy);
                } else {
                    Files.copy(path, copy);
                }
            }
        }
    }

    private void compare(Verb verb, Path work, Map<String, String> old, Map<String, String> metric, String where)
            throws IOException {
        Map<String, String> now = content(work);
        boolean incomplete = false;
        // Each folder is a set that appears as a whole; those of a batch's fields and its summary change one after the
        // other.
        for (Map.Entry<String, Map<String, String>> set : sets(now, old, metric).entrySet()) {
            Map<String, String> files = set.getValue();
            Map<String, String> was = sets(old, old, metric).getOrDefault(set.getKey(), Map.of());
            Map<String, String> is = sets(metric, old, metric).getOrDefault(set.getKey(), Map.of());
            if (files.equals(was) || files.equals(is)) {
                continue;
            }
            if (set.getKey().equals(BatchLedger.FILE) && !files.isEmpty()) {
                requireEntriesOfRuns(verb, where);
                continue;
            }
            boolean someOld = files.entrySet().stream()
                    .anyMatch(file -> file.getValue().equals(was.get(file.getKey()))
                            && !file.getValue().equals(is.get(file.getKey())));
            boolean someNew = files.entrySet().stream()
                    .anyMatch(file -> file.getValue().equals(is.get(file.getKey()))
                            && !file.getValue().equals(was.get(file.getKey())));
            if (someOld && someNew) {
                faults.add(verb.name + " " + where + ": mixed " + set.getKey() + " " + files.keySet());
            }
            incomplete = true;
        }
        if (incomplete) {
            count(verb.name + " waits for the next run to be whole");
        }
        run(verb.in("us"));
        Map<String, String> after = content(work);
        Map<String, String> all = everything(work);
        if (!after.equals(old)) {
            faults.add(verb.name + " " + where + ": after the next run " + after.keySet());
        }
        all.keySet().removeAll(after.keySet());
        all.keySet()
                .removeIf(name ->
                        name.contains(".rowledger-batch") && !name.contains("work/") && !name.contains("before/"));
        if (!all.isEmpty()) {
            faults.add(verb.name + " " + where + ": leftovers " + all.keySet());
        }
    }

    /** Each entry of a ledger that is neither the old nor the new one is an entry of one of them. */
    private void requireEntriesOfRuns(Verb verb, String where) {
        List<BatchLedger.Entry> allowed = new ArrayList<>(ledger(folder.resolve("ledger-us")));
        allowed.addAll(ledger(folder.resolve("ledger-metric")));
        for (BatchLedger.Entry entry : ledger(Path.of(verb.results))) {
            if (!allowed.contains(entry)) {
                faults.add(verb.name + " " + where + ": ledger entry of no run, " + entry.name());
            }
        }
        count(verb.name + " ledger with a field of each run");
    }

    private static List<BatchLedger.Entry> ledger(Path folder) {
        return BatchLedger.of(folder).entries();
    }

    /** Files by the folder that holds them as a set: one of results with its layers, or the files of a batch beside. */
    private static Map<String, Map<String, String>> sets(
            Map<String, String> files, Map<String, String> old, Map<String, String> metric) {
        Map<String, Map<String, String>> sets = new TreeMap<>();
        for (Map<String, String> all : List.of(files, old, metric)) {
            for (String name : all.keySet()) {
                sets.computeIfAbsent(set(name), key -> new LinkedHashMap<>());
            }
        }
        files.forEach((name, digest) ->
                sets.computeIfAbsent(set(name), key -> new LinkedHashMap<>()).put(name, digest));
        return sets;
    }

    /**
     * The folder of a field, the ledger of a batch, or "" for the files beside them. The ledger is a set of its own: it records
     * each field when its folder is replaced, before the summary is, and names the digest of that folder's
     * {@code summary.json}. The next run does a field again where the digest is another one, so an entry that is older than
     * its folder misleads nobody; the figures of the batch are in the summary alone.
     */
    private static String set(String name) {
        String[] parts = name.split("/", -1);
        if (parts.length == 2 && parts[1].equals(BatchLedger.FILE)) {
            return parts[1];
        }
        return parts.length > 2 && parts[1].startsWith("field") ? parts[1] : "";
    }

    private static Map<String, String> content(Path work) throws IOException {
        Map<String, String> files = everything(work);
        files.keySet().removeIf(name -> name.contains(".rowledger"));
        return files;
    }

    private static Map<String, String> everything(Path work) throws IOException {
        Map<String, String> files = new TreeMap<>();
        try (Stream<Path> walk = Files.walk(work)) {
            for (Path path : walk.filter(Files::isRegularFile).toList()) {
                files.put(work.relativize(path).toString(), Sha256.of(path));
            }
        }
        return files;
    }

    private static void run(List<String> words) {
        Calls call = Calls.of(words.toArray());
        assertEquals(0, call.status(), words + ": " + call.err());
    }

    private Process process(List<String> words, List<String> options) throws IOException {
        List<String> call = new ArrayList<>();
        call.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        call.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC"));
        String shared = System.getProperty("kills.archive", "");
        if (!shared.isEmpty()) {
            call.add("-XX:SharedArchiveFile=" + shared);
        }
        call.addAll(options);
        call.addAll(List.of("-cp", System.getProperty("kills.classpath", System.getProperty("java.class.path"))));
        call.add("io.rowledger.cli.Main");
        call.addAll(words);
        return new ProcessBuilder(call)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("out.txt").toFile())
                .start();
    }

    private static void clear(Path work) throws IOException {
        try (Stream<Path> walk = Files.walk(work)) {
            List<Path> all = new ArrayList<>(walk.toList());
            java.util.Collections.reverse(all);
            all.remove(work);
            for (Path path : all) {
                Files.delete(path);
            }
        }
    }
}
