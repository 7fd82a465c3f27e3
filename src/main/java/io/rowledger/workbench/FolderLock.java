package io.rowledger.workbench;

import io.rowledger.finding.RefusalKind;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Keeps a season folder to one workbench at a time. The system releases the lock of a process that was killed. */
final class FolderLock implements AutoCloseable {
    /** Name of the file in the program's own folder that is locked. */
    static final String FILE = "lock";

    private final FileChannel file;
    private final FileLock lock;

    private FolderLock(FileChannel file, FileLock lock) {
        this.file = file;
        this.lock = lock;
    }

    /**
     * Takes the folder and clears files that a killed process left half written.
     *
     * @throws UnusableInputException if another workbench has it or it can't be written
     */
    static FolderLock take(SeasonFolder folder) {
        try {
            Files.createDirectories(folder.work());
            FileChannel file =
                    FileChannel.open(folder.work().resolve(FILE), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            FileLock lock = tryLock(file);
            if (lock == null) {
                file.close();
                throw UnusableInputException.found("another workbench that has this folder open")
                        .kind(RefusalKind.FOLDER_IN_USE)
                        .inFile(folder.root().toString())
                        .expected("one workbench for a folder")
                        .hint("use the page that is open, or close it and wait a few minutes");
            }
            clear(folder.work());
            return new FolderLock(file, lock);
        } catch (IOException e) {
            throw UnusableInputException.found("a folder that can't be written to (" + e + ")")
                    .kind(RefusalKind.FOLDER_CLOSED)
                    .inFile(folder.root().toString())
                    .expected("a folder that you may write to, on a disk with room")
                    .hint("copy the folder to your own disk and open the copy");
        }
    }

    private static @Nullable FileLock tryLock(FileChannel file) throws IOException {
        try {
            return file.tryLock();
        } catch (OverlappingFileLockException e) {
            return null;
        }
    }

    private static void clear(Path work) throws IOException {
        try (Stream<Path> files = Files.list(work)) {
            for (Path file : files.toList()) {
                String name = String.valueOf(file.getFileName());
                if (name.startsWith("part-") && name.endsWith(".tmp")) {
                    Files.deleteIfExists(file);
                }
            }
        }
    }

    @Override
    public void close() {
        try {
            lock.release();
            file.close();
        } catch (IOException e) {
            // The process ends, and its locks with it.
            return;
        }
    }
}
