package io.rowledger.output;

import io.rowledger.finding.UnusableInputException;
import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A set of files that appears whole or not at all: everything is written into a hidden folder inside the target folder
 * (so that renaming stays on one disk), then renamed into place; if a rename fails, those done are taken back.
 */
public final class Outputs {
    private static final int BUFFER = 1 << 16;
    private static final String NEW = "new";
    private static final String OLD = "old";
    private static final String HIDDEN = ".rowledger-unfinished-";

    private final List<Path> kept = new ArrayList<>();
    private final Map<String, Content> contents = new LinkedHashMap<>();
    private final Map<String, Finish> finishes = new LinkedHashMap<>();

    /** Writes one file. */
    @FunctionalInterface
    public interface Content {
        /** Writes everything; need not close the stream. */
        void write(OutputStream out) throws IOException;
    }

    /** What is done to a file when it is whole, for instance signing it. */
    @FunctionalInterface
    public interface Finish {
        /** The finished bytes of these. */
        byte[] finished(byte[] whole) throws IOException;
    }

    /** Names files the user handed in: none of them is ever replaced. */
    public Outputs keeping(List<Path> inputs) {
        kept.addAll(inputs);
        return this;
    }

    /** Adds a file by its name below the target folder, with {@code /} between folders. */
    public Outputs add(String name, Content content) {
        if (contents.put(name, content) != null) {
            throw new IllegalArgumentException("two files named " + name);
        }
        return this;
    }

    /**
     * Finishes those files that are among the outputs and have one of these names.
     *
     * @return the names of the files that will be finished, in the order they were added
     */
    public List<String> finishing(Set<String> names, Finish finish) {
        List<String> found = contents.keySet().stream().filter(names::contains).toList();
        found.forEach(name -> finishes.put(name, finish));
        return found;
    }

    /**
     * Writes all files into the folder, which is made where it doesn't exist.
     *
     * @param threads how many files are written at a time; the bytes don't depend on it
     * @throws UnusableInputException where the folder or the disk doesn't allow it; then no file has changed
     */
    public void writeTo(Path folder, int threads) {
        boolean made = !Files.exists(folder);
        boolean done = false;
        try {
            check(folder);
            Files.createDirectories(folder);
            clearLeftovers(folder);
            Path hidden = Files.createTempDirectory(folder, HIDDEN);
            try (WorkFolder work = WorkFolder.tryOpen(hidden, made ? folder : null)) {
                if (work == null) {
                    throw new IOException("the folder for unfinished files is taken");
                }
                writeInto(folder, work, threads);
            }
            done = true;
        } catch (IOException e) {
            throw refused(folder, e);
        } finally {
            if (made && !done) {
                WorkFolder.clear(folder);
            }
        }
    }

    private void writeInto(Path folder, WorkFolder work, int threads) throws IOException {
        Path fresh = Files.createDirectory(work.resolve(NEW));
        Path old = Files.createDirectory(work.resolve(OLD));
        try {
            writeAll(fresh, threads);
        } catch (IOException | RuntimeException e) {
            work.awaitExit();
            throw e;
        }
        work.settle(() -> rename(fresh, old, folder));
    }

    /** Clears what killed runs left, and puts back the old files that such a run had moved away and not replaced. */
    private void clearLeftovers(Path folder) throws IOException {
        List<Path> leftovers;
        try (Stream<Path> files = Files.list(folder)) {
            leftovers = files.filter(
                            file -> String.valueOf(file.getFileName()).startsWith(HIDDEN) && Files.isDirectory(file))
                    .toList();
        }
        for (Path leftover : leftovers) {
            try (WorkFolder work = WorkFolder.tryOpen(leftover, null)) {
                for (String name : work == null ? List.<String>of() : contents.keySet()) {
                    Path old = leftover.resolve(OLD).resolve(name);
                    if (Files.exists(old) && !Files.exists(folder.resolve(name))) {
                        move(old, folder.resolve(name));
                    }
                }
            }
        }
    }

    /** Writes all files into an empty folder. */
    void writeAll(Path fresh, int threads) throws IOException {
        // All folders first: a writer never makes one again that an end of the program has cleared.
        for (String name : contents.keySet()) {
            Files.createDirectories(parent(fresh.resolve(name)));
        }
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<?>> files = new ArrayList<>();
            for (Map.Entry<String, Content> entry : contents.entrySet()) {
                Path file = fresh.resolve(entry.getKey());
                Finish finish = finishes.get(entry.getKey());
                Content content = finish == null ? entry.getValue() : finished(entry.getValue(), finish);
                files.add(pool.submit(() -> {
                    writeOne(file, content);
                    return null;
                }));
            }
            for (Future<?> file : files) {
                file.get();
            }
        } catch (ExecutionException e) {
            // The exception itself goes on, so that a caller sees what it would have seen without threads.
            Throwable cause = e.getCause();
            if (cause instanceof IOException io) {
                throw io;
            }
            if (cause instanceof RuntimeException bug) {
                throw bug;
            }
            throw new IllegalStateException("writing the outputs", cause);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while writing", e);
        } finally {
            pool.shutdownNow();
            awaitEnd(pool);
        }
    }

    /** A writer still at work would fill the folder that is about to be cleared. */
    private static void awaitEnd(ExecutorService pool) {
        boolean interrupted = false;
        while (!pool.isTerminated()) {
            try {
                pool.awaitTermination(1, TimeUnit.SECONDS);
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    private static Content finished(Content content, Finish finish) {
        return out -> {
            ByteArrayOutputStream whole = new ByteArrayOutputStream(BUFFER);
            content.write(whole);
            out.write(finish.finished(whole.toByteArray()));
        };
    }

    private static void writeOne(Path file, Content content) throws IOException {
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), BUFFER)) {
            content.write(out);
        }
    }

    private void checkKept(Path target) throws IOException {
        for (Path input : kept) {
            if (Files.exists(target) && Files.exists(input) && Files.isSameFile(target, input)) {
                throw UnusableInputException.found("that a result would replace " + input + ", which was handed in")
                        .inFile(target.toString())
                        .expected("an output folder without logs, rig file or boundary under a result's name")
                        .hint("name another folder with --out; the file is as it was");
            }
        }
    }

    private void check(Path folder) throws IOException {
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw UnusableInputException.found("a file where the output folder should be")
                    .inFile(folder.toString())
                    .expected("a folder, or a name not yet taken")
                    .hint("name another folder");
        }
        for (String name : contents.keySet()) {
            if (Files.isDirectory(folder.resolve(name))) {
                throw UnusableInputException.found("a folder where the file " + name + " should go")
                        .inFile(folder.resolve(name).toString())
                        .expected("a file or nothing")
                        .hint("move that folder away or name another output folder");
            }
            checkKept(folder.resolve(name));
        }
    }

    /** One file that has been put in place, and what was there before. */
    private record Move(Path target, @Nullable Path before) {}

    private void rename(Path fresh, Path old, Path folder) throws IOException {
        Deque<Move> moves = new ArrayDeque<>();
        List<Path> madeFolders = new ArrayList<>();
        try {
            for (String name : contents.keySet()) {
                Path target = folder.resolve(name);
                if (!Files.exists(parent(target))) {
                    Files.createDirectories(parent(target));
                    madeFolders.add(parent(target));
                }
                Path before = null;
                if (Files.exists(target)) {
                    before = old.resolve(name);
                    Files.createDirectories(parent(before));
                    move(target, before);
                }
                moves.push(new Move(target, before));
                move(fresh.resolve(name), target);
            }
        } catch (IOException e) {
            for (Move move : moves) {
                undo(move, e);
            }
            for (Path made : madeFolders) {
                Files.deleteIfExists(made);
            }
            throw e;
        }
    }

    private static void undo(Move move, IOException why) {
        try {
            if (move.before == null) {
                Files.deleteIfExists(move.target);
            } else if (Files.exists(move.before)) {
                move(move.before, move.target);
            }
        } catch (IOException e) {
            why.addSuppressed(e);
        }
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    static Path parent(Path file) {
        Path parent = file.getParent();
        if (parent == null) {
            throw new IllegalArgumentException("a file without a folder: " + file);
        }
        return parent;
    }

    static UnusableInputException refused(Path folder, IOException e) {
        String reason = e instanceof FileSystemException fs && fs.getReason() != null
                ? fs.getReason()
                : e.getClass().getSimpleName().replace("Exception", "") + " " + e.getMessage();
        return UnusableInputException.found("that the outputs can't be written (" + reason + ")")
                .inFile(folder.toString())
                .expected("a folder this program may write to, with room for the outputs")
                .hint("make room or allow writing there, or name another folder");
    }
}
