package io.rowledger.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.faults.FaultyFiles;
import io.rowledger.faults.FaultyFiles.Fault;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Writes results over older ones with a fault at every change of the file system in turn, and holds what is then there against
 * the old and the new files.
 */
final class OutputFaults {
    /** How a kind of results is written. */
    interface Writer {
        /** Writes generation 1, 2 or 3 of the results; each has other bytes in every file. */
        void write(Path folder, int generation);
    }

    /** What is counted over all faults. */
    record Tally(int faults, int killed, int keptOld, int gotNew, int incomplete) {}

    private final Path temp;
    private final Writer writer;
    private int kept;
    private int fresh;
    private int incomplete;

    OutputFaults(Path temp, Writer writer) {
        this.temp = temp;
        this.writer = writer;
    }

    /** Outputs of a generation, with more than one buffer in a file so that it is written in several steps. */
    static Outputs outputs(int generation, List<String> names) {
        Outputs outputs = new Outputs();
        for (String name : names) {
            outputs.add(
                    name,
                    out -> out.write((generation + " " + name + " ".repeat(70_000)).getBytes(StandardCharsets.UTF_8)));
        }
        return outputs;
    }

    /**
     * One run for every change and kind of fault.
     *
     * @param overOld true to write over results of an earlier run
     */
    Tally run(boolean overOld, Fault... kinds) throws IOException {
        int faults = 0;
        int killed = 0;
        for (Fault kind : kinds) {
            for (int at = 0; ; at++) {
                FaultyFiles files = new FaultyFiles(kind, at);
                once(files, kind, at, overOld);
                if (files.changes() <= at) {
                    break;
                }
                faults++;
                killed += kind == Fault.KILL ? 1 : 0;
            }
        }
        return new Tally(faults, killed, kept, fresh, incomplete);
    }

    private void once(FaultyFiles files, Fault kind, int at, boolean overOld) throws IOException {
        Path place = Files.createDirectory(temp.resolve(kind + "-" + at));
        Path folder = place.resolve("results");
        if (overOld) {
            writer.write(folder, 1);
        }
        Map<String, String> old = content(place);
        boolean done = false;
        try {
            writer.write(files.path(folder), 2);
            done = true;
        } catch (UnusableInputException e) {
            String message = String.valueOf(e.getMessage());
            assertTrue(message.contains("Hint: ") && kind != Fault.KILL, message);
        } catch (FaultyFiles.Killed | IllegalStateException e) {
            assertEquals(Fault.KILL, kind, String.valueOf(e));
        }
        String where = kind + " at change " + at;
        Map<String, String> now = visible(content(place));
        boolean mixed = now.values().stream().distinct().count() > 1;
        assertTrue(!mixed, () -> where + ": files of two runs beside one another " + now);
        boolean isOld = now.equals(visible(old));
        boolean isNew = now.keySet().containsAll(visible(old).keySet()) && now.containsValue("2");
        kept += isOld ? 1 : 0;
        fresh += isNew ? 1 : 0;
        if (!isOld && !isNew) {
            incomplete++;
        }
        assertTrue(!done || isNew, () -> where + ": said done, but " + now);
        assertTrue(isOld || isNew || kind == Fault.KILL || kind == Fault.READ_ONLY, () -> where + ": half " + now);
        // Nothing is lost: what isn't in its place waits in the hidden folder, and the next run puts it right.
        if (!isOld && !isNew) {
            assertTrue(content(place).size() >= old.size(), () -> where + ": lost files");
        }
        writer.write(folder, 3);
        Map<String, String> after = content(place);
        assertEquals(visible(after), after, where + ": leftovers after the next run");
        assertTrue(after.values().stream().allMatch("3"::equals) && !after.isEmpty(), () -> where + ": " + after);
        WorkFolder.clear(place);
    }

    /** Files below a folder with the generation they are of. */
    private static Map<String, String> content(Path folder) throws IOException {
        Map<String, String> content = new TreeMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.toList()) {
                String name = folder.relativize(file).toString();
                if (Files.isRegularFile(file)) {
                    String text = Files.readString(file);
                    content.put(name, text.isEmpty() ? "" : text.substring(0, 1));
                } else if (name.contains(".rowledger")) {
                    content.put(name, "folder");
                }
            }
        }
        return content;
    }

    private static Map<String, String> visible(Map<String, String> content) {
        Map<String, String> visible = new TreeMap<>(content);
        visible.keySet().removeIf(name -> name.contains(".rowledger"));
        return visible;
    }
}
