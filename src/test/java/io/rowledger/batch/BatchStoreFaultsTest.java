package io.rowledger.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.faults.FaultyFiles;
import io.rowledger.faults.FaultyFiles.Fault;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.results.BatchLedger;
import io.rowledger.results.ResultFile;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Kills, full disks and other faults at every change that putting a batch's results in place makes. */
class BatchStoreFaultsTest {
    private static final List<String> FIELDS = List.of("farm/south", "north");
    private static final List<String> FILES = List.of(ResultFile.SUMMARY.fileName(), "rows.csv", "layers/a.geojson");
    private static final String OWN = "north/own.txt";

    @TempDir
    Path temporary;

    private int waitingFields;
    private int waitingOwnFiles;

    /** Puts generation 1, 2 or 3 of each field's results in place; each has other bytes in every file. */
    private static void run(Path folder, int generation) {
        try (BatchStore store = BatchStore.open(folder, null)) {
            for (String name : FIELDS) {
                store.recover(name);
                FieldJob job = new FieldJob(name, List.of(), null, "by hand", null);
                Path fresh = store.room(job);
                for (String file : FILES) {
                    Path place = fresh.resolve(file);
                    Files.createDirectories(Objects.requireNonNull(place.getParent()));
                    try (OutputStream out = Files.newOutputStream(place)) {
                        out.write((generation + " " + name + " " + file).getBytes(StandardCharsets.UTF_8));
                    }
                }
                Map<String, String> options = Map.of("generation", String.valueOf(generation));
                store.put(job, new BatchLedger.Basis("1", options, List.of()), fresh);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = Fault.class,
            names = {"KILL", "FAIL_ONCE", "DISK_FULL", "READ_ONLY"})
    void each_field_is_old_or_new_after_every_fault(Fault kind) throws IOException {
        int at = 0;
        for (boolean more = true; more; at++) {
            FaultyFiles files = new FaultyFiles(kind, at);
            once(files, kind, at);
            more = files.changes() > at;
        }
        assertTrue(at > 40, at + " changes");
        // Between the two renames of each field's folder.
        int fields = kind == Fault.KILL || kind == Fault.READ_ONLY ? FIELDS.size() : 0;
        assertEquals(fields, waitingFields, "fields without results until the next run");
        // From the second of these renames on until its own; and where that one fails.
        assertTrue(waitingOwnFiles <= 3, "own files that wait for the next run: " + waitingOwnFiles);
    }

    private void once(FaultyFiles files, Fault kind, int at) throws IOException {
        Path folder = temporary.resolve(kind + "-" + at);
        run(folder, 1);
        Files.writeString(folder.resolve(OWN), "own");
        String where = kind + " at change " + at + ": ";
        boolean done = false;
        try {
            run(files.path(folder), 2);
            done = true;
        } catch (FaultyFiles.Killed e) {
            assertEquals(Fault.KILL, kind);
        } catch (UnusableInputException e) {
            assertTrue(String.valueOf(e.getMessage()).contains("Hint: "), where + e.getMessage());
        } catch (UncheckedIOException e) {
            // Batch tells what a job met; here it is enough that it didn't pass for done.
            assertTrue(kind != Fault.KILL, where + e);
        }
        for (String name : FIELDS) {
            List<String> generations = generations(folder.resolve(name));
            assertTrue(generations.stream().distinct().count() <= 1, where + name + " is mixed: " + generations);
            boolean whole = generations.size() == FILES.size();
            assertTrue(whole || generations.isEmpty(), where + name + " is half: " + generations);
            assertTrue(!done || generations.get(0).equals("2"), where + name + " said done: " + generations);
            waitingFields += whole ? 0 : 1;
        }
        waitingOwnFiles += Files.exists(folder.resolve(OWN)) ? 0 : 1;
        assertEquals(1, everything(folder).values().stream().filter("o"::equals).count(), where + "the own file");

        run(folder, 3);
        for (String name : FIELDS) {
            assertEquals(List.of("3", "3", "3"), generations(folder.resolve(name)), where + "after the next run");
        }
        assertTrue(Files.exists(folder.resolve(OWN)), where + "the own file");
        List<String> left = everything(folder).keySet().stream()
                .filter(name -> name.contains(".rowledger") || name.startsWith("."))
                .filter(name -> !name.endsWith("/lock"))
                .toList();
        assertEquals(List.of(), left, where + "leftovers after the next run");
        try (BatchStore store = BatchStore.open(folder, null)) {
            for (String name : FIELDS) {
                assertTrue(store.holds(Objects.requireNonNull(store.ledger().entry(name))), where + name);
            }
        }
    }

    /** First characters of the result files in a folder. */
    private static List<String> generations(Path folder) throws IOException {
        List<String> generations = new ArrayList<>();
        for (String file : FILES) {
            if (Files.exists(folder.resolve(file))) {
                generations.add(Files.readString(folder.resolve(file)).substring(0, 1));
            }
        }
        return generations;
    }

    /** Files below a folder with their first characters. */
    private static Map<String, String> everything(Path folder) throws IOException {
        Map<String, String> content = new TreeMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                String text = Files.readString(file);
                content.put(
                        folder.relativize(file).toString().replace('\\', '/'),
                        text.isEmpty() ? "" : text.substring(0, 1));
            }
        }
        return content;
    }

    @Test
    void a_folder_that_could_not_be_opened_is_free_for_the_next_run() {
        for (int at = 0; at < 6; at++) {
            Path folder = temporary.resolve("open-" + at);
            try (BatchStore store = BatchStore.open(new FaultyFiles(Fault.READ_ONLY, at).path(folder), null)) {
                store.recover("north");
            } catch (UnusableInputException e) {
                assertTrue(String.valueOf(e.getMessage()).contains("Hint: "), e.getMessage());
            }
            run(folder, 1);
        }
    }
}
