package io.rowledger.batch;

import io.rowledger.finding.RegularFile;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.results.BatchLedger;
import io.rowledger.results.ResultFile;
import io.rowledger.results.SummaryReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The folder of a batch's results. A job's results are written into a hidden folder and change places with the old ones
 * by renaming, whole: killed at any moment, each field's folder holds all of the new results or all of the old ones. What
 * a person has put there is kept.
 *
 * <p>Two renames are not one: killed between them, the old results lie in {@code before} and {@link #recover} puts them back.
 */
final class BatchStore implements AutoCloseable {
    /** Work of one season lies nearer together than half a year, that of two farther apart. */
    private static final double SEASONS_APART_S = 180 * 86_400.0;

    private static final String HIDDEN = ".rowledger-batch";

    private final Path folder;
    private final Path work;
    private final Path before;
    private final BatchLocks locks;
    private final BatchLedger ledger;
    /** Folders of shards that this run takes over. */
    private final List<Path> shards;
    /** Names of the fields that those shards have done. */
    private final Set<String> doneByShards;
    /** SIGINT, SIGTERM and SIGHUP leave no unfinished results; what is done stays. */
    private final Thread atExit = new Thread(this::clearWork, "clear unfinished results");

    private BatchStore(Path folder, Path own, BatchLocks locks, BatchLedger ledger, List<Path> shards) {
        this.folder = folder;
        this.work = own.resolve("work");
        this.before = own.resolve("before");
        this.locks = locks;
        this.ledger = ledger;
        this.shards = shards;
        this.doneByShards = ledger.takeOver(shards);
    }

    /**
     * Opens the folder, which is made where it doesn't exist, for this process alone, or for one shard. Without a shard what
     * shards have done is taken over.
     *
     * @throws UnusableInputException where it can't be written, or another batch writes there
     */
    static BatchStore open(Path folder, @Nullable Shard shard) {
        try {
            Path hidden = folder.resolve(HIDDEN);
            Path own = shard == null ? hidden : hidden.resolve(shard.folder());
            Files.createDirectories(own);
            BatchLocks locks = BatchLocks.take(folder, hidden, shard);
            boolean opened = false;
            try {
                BatchStore store = locked(folder, own, locks, BatchLocks.shards(hidden), shard);
                opened = true;
                return store;
            } finally {
                // The program may live on, as the workbench does, and try again.
                if (!opened) {
                    locks.close();
                }
            }
        } catch (IOException e) {
            throw refused(folder, e);
        }
    }

    private static BatchStore locked(Path folder, Path own, BatchLocks locks, List<Path> shards, @Nullable Shard shard)
            throws IOException {
        BatchStore store;
        if (shard == null) {
            store = new BatchStore(folder, own, locks, BatchLedger.of(folder), shards);
        } else {
            BatchLedger ledger = BatchLedger.of(own);
            ledger.alsoShow(List.of(folder));
            ledger.alsoShow(shards.stream().filter(other -> !other.equals(own)).toList());
            store = new BatchStore(folder, own, locks, ledger, List.of());
        }
        clear(store.work);
        Files.createDirectories(store.work);
        Runtime.getRuntime().addShutdownHook(store.atExit);
        return store;
    }

    /** True if shards have done this field since the last run without a shard. */
    boolean doneByShards(String name) {
        return doneByShards.contains(name);
    }

    /** Removes what shards have left, after everything of it is taken over. */
    void clearShards() {
        try {
            for (Path shard : shards) {
                clear(shard);
            }
        } catch (IOException e) {
            throw refused(folder, e);
        }
    }

    BatchLedger ledger() {
        return ledger;
    }

    /** The folder of a job's results. */
    Path results(String name) {
        return folder.resolve(name);
    }

    /** Puts right what a run left that was killed while this job's results changed places. */
    void recover(String name) {
        recover(name, before);
        shards.forEach(shard -> recover(name, shard.resolve("before")));
    }

    private void recover(String name, Path before) {
        Path old;
        try {
            old = before.resolve(name);
        } catch (InvalidPathException e) {
            // No folder of this name can have been made here.
            return;
        }
        if (!Files.isDirectory(old)) {
            return;
        }
        try {
            if (Files.exists(results(name))) {
                keepOthers(name, old);
            } else {
                Files.createDirectories(parent(results(name)));
                Files.move(old, results(name), StandardCopyOption.ATOMIC_MOVE);
            }
        } catch (IOException e) {
            throw refused(results(name), e);
        }
    }

    /** True where all files of this entry are there and its summary is the one it was made with. */
    boolean holds(BatchLedger.Entry entry) {
        Path results = results(entry.name());
        for (String file : entry.outputs()) {
            if (!Files.isRegularFile(results.resolve(file))) {
                return false;
            }
        }
        Path summary = results.resolve(ResultFile.SUMMARY.fileName());
        return Files.isRegularFile(summary) && Digests.of(summary).equals(entry.summarySha256());
    }

    /**
     * The folder to write a job's results into, not made yet.
     *
     * @throws UnusableInputException where the place they go to is taken by something else
     */
    Path room(FieldJob job) throws IOException {
        Path place = results(job.name());
        boolean ours = ledger.entry(job.name()) != null || Files.exists(place.resolve(ResultFile.SUMMARY.fileName()));
        if (Files.exists(place)
                && !ours
                && !(Files.isDirectory(place) && files(place).isEmpty())) {
            throw UnusableInputException.found("something that is no result of a batch where this field's results go")
                    .inFile(place.toString())
                    .expected("nothing, or the results of an earlier run")
                    .hint("move it away, or name another folder with --out");
        }
        for (Path input : job.files() == null ? job.logs() : job.files().all()) {
            if (input.toAbsolutePath()
                    .normalize()
                    .startsWith(place.toAbsolutePath().normalize())) {
                throw UnusableInputException.found("a file that was handed in where its results go")
                        .inFile(input.toString())
                        .expected("a folder of results apart from the logs")
                        .hint("name another folder with --out; the file is as it was");
            }
        }
        // One folder deeper, since a temporary folder may be read by nobody else and this one becomes the user's.
        return Files.createTempDirectory(work, "job-").resolve("results");
    }

    /**
     * Refuses to put results over those of another season: a field has the same name every year, and its record of the year
     * before must not go.
     *
     * @throws UnusableInputException where the work of the results that are there was done half a year away
     */
    void requireSameSeason(FieldJob job, Path fresh) {
        double newS = SummaryReader.figures(fresh).job().startS();
        double oldS;
        try {
            oldS = SummaryReader.figures(results(job.name())).job().startS();
        } catch (UnusableInputException e) {
            // Nothing there, or nothing that anybody could read.
            return;
        }
        if (Math.abs(newS - oldS) > SEASONS_APART_S) {
            throw UnusableInputException.found(
                            "results of work on " + day(oldS) + " where those of " + day(newS) + " go")
                    .inFile(results(job.name()).toString())
                    .expected("a folder of results for each season")
                    .hint("name another folder with --out, or move the old results away if they are not to be kept");
        }
    }

    private static String day(double timeS) {
        return Instant.ofEpochSecond((long) timeS)
                .atOffset(ZoneOffset.UTC)
                .toLocalDate()
                .toString();
    }

    /** Puts results in place of those before, and says so in the ledger. */
    void put(FieldJob job, BatchLedger.Basis basis, Path fresh) throws IOException {
        List<String> outputs = files(fresh);
        String summary = Digests.of(fresh.resolve(ResultFile.SUMMARY.fileName()));
        Path place = results(job.name());
        Path old = before.resolve(job.name());
        Files.createDirectories(parent(place));
        if (Files.exists(place)) {
            clear(old);
            Files.createDirectories(parent(old));
            Files.move(place, old, StandardCopyOption.ATOMIC_MOVE);
        }
        try {
            Files.move(fresh, place, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            if (Files.exists(old)) {
                Files.move(old, place, StandardCopyOption.ATOMIC_MOVE);
            }
            throw e;
        }
        if (Files.exists(old)) {
            keepOthers(job.name(), old);
        }
        ledger.put(new BatchLedger.Entry(job.name(), basis, outputs, summary));
    }

    /** Moves what is no result from the old folder to the new one, and clears the old one. */
    private void keepOthers(String name, Path old) throws IOException {
        BatchLedger.Entry entry = ledger.entry(name);
        Set<String> ours = new HashSet<>(entry == null ? List.of() : entry.outputs());
        for (String file : files(old)) {
            Path place = results(name).resolve(file);
            if (!ours.contains(file) && !Files.exists(place)) {
                Files.createDirectories(parent(place));
                Files.move(old.resolve(file), place, StandardCopyOption.ATOMIC_MOVE);
            }
        }
        clear(old);
    }

    @Override
    public void close() {
        try {
            Runtime.getRuntime().removeShutdownHook(atExit);
        } catch (IllegalStateException e) {
            // The program is being ended, and the hook clears the folder.
            return;
        }
        try (locks) {
            clear(work);
        } catch (IOException e) {
            // What stays behind is hidden, and the next run clears it.
            return;
        }
    }

    private void clearWork() {
        try {
            clear(work);
        } catch (IOException e) {
            // The next run clears it.
            return;
        }
    }

    /** Names of the files below a folder, {@code /} between folders. */
    private static List<String> files(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile)
                    .map(file -> folder.relativize(file).toString().replace('\\', '/'))
                    .sorted()
                    .toList();
        }
    }

    private static void clear(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> files = Files.walk(folder)) {
            List<Path> deepestFirst = new ArrayList<>(files.toList());
            Collections.reverse(deepestFirst);
            for (Path file : deepestFirst) {
                Files.deleteIfExists(file);
            }
        }
    }

    private static Path parent(Path file) {
        return java.util.Objects.requireNonNull(file.getParent());
    }

    private static UnusableInputException refused(Path folder, IOException e) {
        String reason = RegularFile.reason(e);
        return UnusableInputException.found("that the results can't be written (" + reason + ")")
                .inFile(folder.toString())
                .expected("a folder this program may write to, with room for the results")
                .hint("make room or allow writing there, or name another folder with --out");
    }
}
