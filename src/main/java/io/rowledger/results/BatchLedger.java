package io.rowledger.results;

import com.fasterxml.jackson.annotation.JsonProperty;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * {@code batch-ledger.json}: what was done, from which files and how, by digest. Written whole and then renamed, so that a run that is
 * killed leaves the one before.
 */
public final class BatchLedger {
    /** The file's name in the folder of the results. */
    public static final String FILE = ResultFile.BATCH_LEDGER.fileName();

    private final Path folder;
    /** What stands in the file. */
    private final Map<String, Entry> entries = new TreeMap<>();
    /** What other ledgers say, for reading alone. */
    private final Map<String, Entry> others = new TreeMap<>();

    private BatchLedger(Path folder) {
        this.folder = folder;
    }

    /** A file that went into a job: what for, its name without folders, SHA-256 in lower-case hex. */
    public record Input(
            String role,
            String file,
            @JsonProperty("sha256") String sha256) {}

    /**
     * What a job's results depend on: the same makes the same bytes.
     *
     * @param version of the program
     * @param options as words, by name
     * @param inputs in the order they are handed to the job
     */
    public record Basis(String version, Map<String, String> options, List<Input> inputs) {
        /** Copies the collections. */
        public Basis {
            options = Collections.unmodifiableMap(new TreeMap<>(options));
            inputs = List.copyOf(inputs);
        }
    }

    /**
     * A job that was done.
     *
     * @param name of the job and of the folder of its results
     * @param outputs names of the files written
     * @param summarySha256 digest of its {@code summary.json}
     */
    public record Entry(String name, Basis basis, List<String> outputs, String summarySha256) {
        /** Copies the names. */
        public Entry {
            outputs = List.copyOf(outputs);
        }
    }

    /**
     * Reads the ledger of this folder; an empty one where there is none.
     *
     * @throws UnusableInputException where there is one that can't be read
     */
    public static BatchLedger of(Path folder) {
        BatchLedger ledger = new BatchLedger(folder);
        if (Files.exists(folder.resolve(FILE))) {
            JsonFile.read(folder, ResultFile.BATCH_LEDGER, Document.class)
                    .content()
                    .jobs()
                    .forEach(job -> ledger.entries.put(job.name(), job.entry()));
        }
        return ledger;
    }

    /** Also shows what the ledgers of these folders hold, a later one before an earlier one, and writes none of it. */
    public synchronized void alsoShow(List<Path> folders) {
        for (Path other : folders) {
            others.putAll(of(other).entries);
        }
    }

    /** Takes over the entries of the ledgers of these folders, writes the ledger and returns their names. */
    public synchronized Set<String> takeOver(List<Path> folders) {
        Map<String, Entry> taken = new TreeMap<>();
        for (Path other : folders) {
            taken.putAll(of(other).entries);
        }
        if (!taken.isEmpty()) {
            entries.putAll(taken);
            save();
        }
        return taken.keySet();
    }

    /** All entries, by name. */
    public synchronized List<Entry> entries() {
        Map<String, Entry> all = new TreeMap<>(others);
        all.putAll(entries);
        return List.copyOf(all.values());
    }

    /** The entry of this name, or null. */
    public synchronized @Nullable Entry entry(String name) {
        Entry own = entries.get(name);
        return own == null ? others.get(name) : own;
    }

    /** Adds or replaces an entry, and writes the ledger. */
    public synchronized void put(Entry entry) {
        entries.put(entry.name, entry);
        save();
    }

    private void save() {
        Path fresh = folder.resolve("." + FILE);
        try (FileChannel channel = FileChannel.open(
                fresh, StandardOpenOption.CREATE, StandardOpenOption.WRITE, StandardOpenOption.TRUNCATE_EXISTING)) {
            write(Channels.newOutputStream(channel));
            channel.force(true);
            Files.move(
                    fresh, folder.resolve(FILE), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw UnusableInputException.found("that the ledger can't be written (" + e.getMessage() + ")")
                    .inFile(folder.resolve(FILE).toString())
                    .expected("a folder this program may write to, with room for the results")
                    .hint("make room or allow writing there, and call again: what is done stays done");
        }
    }

    private void write(OutputStream out) throws IOException {
        JsonFile.write(
                new Document(
                        ResultFile.BATCH_LEDGER.schemaId(),
                        entries.values().stream().map(Job::of).toList()),
                out);
    }

    /** The file. */
    private record Document(String schema, List<Job> jobs) {}

    /** A job as it stands in the file. */
    private record Job(
            String name,
            String programVersion,
            Map<String, String> options,
            List<Input> inputs,
            List<String> outputs,
            @JsonProperty("summary_sha256") String summarySha256) {
        static Job of(Entry entry) {
            return new Job(
                    entry.name,
                    entry.basis.version,
                    entry.basis.options,
                    entry.basis.inputs,
                    entry.outputs,
                    entry.summarySha256);
        }

        Entry entry() {
            return new Entry(name, new Basis(programVersion, options, inputs), outputs, summarySha256);
        }
    }
}
