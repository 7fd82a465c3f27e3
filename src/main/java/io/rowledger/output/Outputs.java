package io.rowledger.output;

import io.rowledger.finding.RegularFile;
import io.rowledger.finding.UnusableInputException;
import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * A set of files that appears whole or not at all: everything is written into a hidden folder inside the target folder
 * (so that renaming stays on one disk), then renamed into place ({@link FileSwap}).
 */
public final class Outputs {
    private static final int BUFFER = 1 << 16;
    static final String HIDDEN = ".rowledger-unfinished-";

    private final Set<String> earlier = new TreeSet<>();
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

    /** Names files that belong to the same set: those of an earlier run go where this one has none of that name. */
    public Outputs instead(Collection<String> names) {
        earlier.addAll(names);
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
        FileSwap swap = new FileSwap(work.folder(), folder);
        Path fresh = swap.newFiles();
        try {
            writeAll(fresh, threads);
        } catch (IOException | RuntimeException e) {
            work.awaitExit();
            throw e;
        }
        Set<String> names = new TreeSet<>(earlier);
        names.addAll(contents.keySet());
        work.settle(() -> swap.run(names));
    }

    /** Clears what killed runs left, and puts right what such a run had begun to move. */
    private static void clearLeftovers(Path folder) throws IOException {
        List<Path> leftovers;
        try (Stream<Path> files = Files.list(folder)) {
            leftovers = files.filter(
                            file -> String.valueOf(file.getFileName()).startsWith(HIDDEN) && Files.isDirectory(file))
                    .toList();
        }
        for (Path leftover : leftovers) {
            try (WorkFolder work = WorkFolder.tryOpen(leftover, null)) {
                if (work != null) {
                    work.settle(() -> new FileSwap(leftover, folder).recover());
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
        String reason = RegularFile.reason(e);
        return UnusableInputException.found("that the outputs can't be written (" + reason + ")")
                .inFile(folder.toString())
                .expected("a folder this program may write to, with room for the outputs")
                .hint("make room or allow writing there, or name another folder");
    }
}
