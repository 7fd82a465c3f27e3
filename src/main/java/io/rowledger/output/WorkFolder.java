package io.rowledger.output;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A hidden folder that one run writes in. A lock in it tells whether that run is still alive: a folder without a held lock was
 * left by a run that was killed. The folder is cleared when the run ends, also by SIGINT, SIGTERM or SIGHUP.
 */
final class WorkFolder implements AutoCloseable {
    private static final String LOCK = "lock";

    /** Times that a folder is cleared at the end of the program, 20 ms apart: other threads still write into it meanwhile. */
    private static final int MAX_CLEARINGS = 50;

    private final Path folder;
    private final FileChannel channel;
    private final Thread atExit = new Thread(this::end, "clear " + LOCK);
    private final @Nullable Path made;
    private boolean ended;
    private boolean settled = true;

    private WorkFolder(Path folder, @Nullable Path made, FileChannel channel) {
        this.folder = folder;
        this.made = made;
        this.channel = channel;
    }

    /**
     * Opens a folder, which is made where it doesn't exist; what a killed run left in it is still there.
     *
     * @param made the uppermost folder around it that this run made, or null; empty, it goes with the work folder
     * @return null where another run works in it
     */
    static @Nullable WorkFolder tryOpen(Path folder, @Nullable Path made) throws IOException {
        Files.createDirectories(folder);
        FileChannel channel =
                FileChannel.open(folder.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        FileLock lock = tryLock(channel);
        // A run that ended meanwhile has taken the lock's file away with the folder.
        if (lock == null || !Files.exists(folder.resolve(LOCK))) {
            channel.close();
            return null;
        }
        WorkFolder work = new WorkFolder(folder, made, channel);
        Runtime.getRuntime().addShutdownHook(work.atExit);
        return work;
    }

    private static @Nullable FileLock tryLock(FileChannel channel) throws IOException {
        try {
            return channel.tryLock();
        } catch (OverlappingFileLockException e) {
            return null;
        }
    }

    /** A file or folder in it. */
    Path resolve(String name) {
        return folder.resolve(name);
    }

    /** Moves files. */
    interface Moves {
        void run() throws IOException;
    }

    /** Some files have been moved and could neither be moved on nor back. */
    static final class UnsettledException extends IOException {
        private static final long serialVersionUID = 1L;

        UnsettledException(IOException why) {
            super(why.getMessage(), why);
        }
    }

    /**
     * Moves files to their place; an end of the program waits until that is done, or has come before and nothing moves.
     * Where the moves end half done, the folder is not cleared: the next run finds in it what lacks.
     *
     * @param moves throws {@link UnsettledException} where it ends half done; after any other IOException all is as before
     */
    synchronized void settle(Moves moves) throws IOException {
        awaitExit();
        settled = false;
        try {
            moves.run();
            settled = true;
        } catch (UnsettledException e) {
            throw e;
        } catch (IOException e) {
            settled = true;
            throw e;
        }
    }

    Path folder() {
        return folder;
    }

    /** Never returns where the program is being ended: its files are gone, and no message could say more than that. */
    synchronized void awaitExit() {
        while (ended) {
            try {
                wait();
            } catch (InterruptedException e) {
                // The machine stops when all hooks are done: wait on.
            }
        }
    }

    private synchronized void end() {
        ended = true;
        clearAll();
        for (int n = 1; n < MAX_CLEARINGS && settled && Files.exists(folder); n++) {
            try {
                Thread.sleep(20);
            } catch (InterruptedException e) {
                return;
            }
            clearAll();
        }
    }

    private void clearAll() {
        if (!settled) {
            return;
        }
        clear(folder);
        for (Path at = folder.getParent(); made != null && at != null && at.startsWith(made); at = at.getParent()) {
            try {
                Files.delete(at);
            } catch (IOException e) {
                // It can't be deleted where results are in place.
                return;
            }
        }
    }

    @Override
    public void close() throws IOException {
        awaitExit();
        try {
            Runtime.getRuntime().removeShutdownHook(atExit);
        } catch (IllegalStateException e) {
            // The program is being ended, and the hook clears the folder.
            return;
        }
        try {
            clearAll();
        } finally {
            channel.close();
        }
    }

    /** Deletes a file or a folder with all that is in it; what can't be deleted is left for the next run. */
    static void clear(Path folder) {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> files = Files.walk(folder)) {
            List<Path> deepestFirst = new ArrayList<>(files.toList());
            Collections.reverse(deepestFirst);
            for (Path file : deepestFirst) {
                Files.deleteIfExists(file);
            }
        } catch (IOException e) {
            return;
        }
    }
}
