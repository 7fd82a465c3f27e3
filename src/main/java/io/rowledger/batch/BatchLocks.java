package io.rowledger.batch;

import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Who may write to a folder of results: one run without a shard, or one run of each shard of the same number of shards. A run
 * without a shard locks the folder for itself; shards share that lock and hold one of their own each. The system drops the locks
 * of a process that is killed.
 */
final class BatchLocks implements AutoCloseable {
    private static final String LOCK = "lock";
    private static final String SHARD = "shard-";

    private final List<FileLock> locks = new ArrayList<>();

    private BatchLocks() {}

    /**
     * Takes the locks of a run.
     *
     * @param folder of the results, for messages
     * @param hidden the folder of locks and unfinished results in it
     * @throws UnusableInputException where another run holds one
     */
    static BatchLocks take(Path folder, Path hidden, @Nullable Shard shard) throws IOException {
        BatchLocks locks = new BatchLocks();
        try {
            if (!locks.lock(hidden.resolve(LOCK), shard != null)) {
                throw refused(folder, "another batch at work", "wait until it has ended");
            }
            if (shard != null) {
                if (!locks.lock(hidden.resolve(shard.folder()).resolve(LOCK), false)) {
                    throw refused(folder, "the same shard at work", "wait until it has ended");
                }
                locks.requireSameNumber(folder, hidden, shard);
            }
            return locks;
        } catch (IOException | RuntimeException e) {
            locks.close();
            throw e;
        }
    }

    /** The folders that shards have left, in the order of their names. */
    static List<Path> shards(Path hidden) throws IOException {
        try (Stream<Path> files = Files.list(hidden)) {
            return files.filter(file -> file.getFileName().toString().startsWith(SHARD) && Files.isDirectory(file))
                    .sorted()
                    .toList();
        }
    }

    /** Shards of four and shards of five would do the same fields at once. */
    private void requireSameNumber(Path folder, Path hidden, Shard shard) throws IOException {
        for (Path other : shards(hidden)) {
            if (!other.getFileName().toString().endsWith("-of-" + shard.of())) {
                try (BatchLocks free = new BatchLocks()) {
                    if (!free.lock(other.resolve(LOCK), false)) {
                        throw refused(
                                folder, other.getFileName() + " at work", "use the same N for all shards of a season");
                    }
                }
            }
        }
    }

    private boolean lock(Path file, boolean shared) throws IOException {
        FileChannel channel =
                FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
        FileLock lock;
        try {
            lock = channel.tryLock(0, Long.MAX_VALUE, shared);
        } catch (OverlappingFileLockException e) {
            lock = null;
        }
        if (lock == null) {
            channel.close();
            return false;
        }
        locks.add(lock);
        return true;
    }

    private static UnusableInputException refused(Path folder, String found, String hint) {
        return UnusableInputException.found(found)
                .inFile(folder.toString())
                .expected("one batch at a time in a folder of results, or the shards of one season")
                .hint(hint + ", or name another folder with --out");
    }

    @Override
    public void close() throws IOException {
        for (FileLock lock : locks) {
            lock.acquiredBy().close();
        }
        locks.clear();
    }
}
