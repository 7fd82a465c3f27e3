package io.rowledger.results;

import com.fasterxml.jackson.core.JsonGenerator;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * {@code batch-ledger.json}: what was done, from which files and how, by digest. Its schema is
 * {@code /schema/rowledger-batch-ledger-1.schema.json} in the jar. Written whole and then renamed, so that a run that is
 * killed leaves the one before.
 */
public final class BatchLedger {
    /** The file's name in the folder of the results. */
    public static final String FILE = "batch-ledger.json";

    /** The value of {@code schema}. */
    static final String SCHEMA_ID = "rowledger-batch-ledger/1";

    private final Path folder;
    private final Map<String, Entry> entries = new TreeMap<>();

    private BatchLedger(Path folder) {
        this.folder = folder;
    }

    /** A file that went into a job: what for, its name without folders, SHA-256 in lower-case hex. */
    public record Input(String role, String file, String sha256) {}

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
            options = java.util.Collections.unmodifiableMap(new TreeMap<>(options));
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
            ResultValue root = ResultFile.open(folder, FILE, SCHEMA_ID);
            for (ResultValue job : root.at("jobs").list()) {
                Entry entry = entry(job);
                ledger.entries.put(entry.name, entry);
            }
        }
        return ledger;
    }

    /** All entries, by name. */
    public synchronized List<Entry> entries() {
        return List.copyOf(entries.values());
    }

    /** The entry of this name, or null. */
    public synchronized @org.jspecify.annotations.Nullable Entry entry(String name) {
        return entries.get(name);
    }

    /** Adds or replaces an entry, and writes the ledger. */
    public synchronized void put(Entry entry) {
        entries.put(entry.name, entry);
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
        JsonFile.write(out, json -> {
            json.writeStringField("schema", SCHEMA_ID);
            json.writeArrayFieldStart("jobs");
            for (Entry entry : entries.values()) {
                write(json, entry);
            }
            json.writeEndArray();
        });
    }

    private static void write(JsonGenerator json, Entry entry) throws IOException {
        json.writeStartObject();
        json.writeStringField("name", entry.name);
        json.writeStringField("program_version", entry.basis.version);
        json.writeObjectFieldStart("options");
        for (Map.Entry<String, String> option : entry.basis.options.entrySet()) {
            json.writeStringField(option.getKey(), option.getValue());
        }
        json.writeEndObject();
        json.writeArrayFieldStart("inputs");
        for (Input input : entry.basis.inputs) {
            json.writeStartObject();
            json.writeStringField("role", input.role);
            json.writeStringField("file", input.file);
            json.writeStringField("sha256", input.sha256);
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("outputs");
        for (String output : entry.outputs) {
            json.writeString(output);
        }
        json.writeEndArray();
        json.writeStringField("summary_sha256", entry.summarySha256);
        json.writeEndObject();
    }

    private static Entry entry(ResultValue job) {
        Map<String, String> options = new TreeMap<>();
        for (String key : job.at("options").keys()) {
            options.put(key, job.at("options").at(key).text());
        }
        List<Input> inputs = new ArrayList<>();
        for (ResultValue input : job.at("inputs").list()) {
            inputs.add(new Input(
                    input.at("role").text(),
                    input.at("file").text(),
                    input.at("sha256").text()));
        }
        List<String> outputs =
                job.at("outputs").list().stream().map(ResultValue::text).toList();
        return new Entry(
                job.at("name").text(),
                new Basis(job.at("program_version").text(), options, inputs),
                outputs,
                job.at("summary_sha256").text());
    }
}
