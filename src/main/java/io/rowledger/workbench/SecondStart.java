package io.rowledger.workbench;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;

/**
 * A start over a folder that another workbench has open, such as a second double click: a file in the folder asks that workbench
 * to show its page again, and it takes the file away. No token is written anywhere.
 */
final class SecondStart {
    private static final String REQUEST = "show-page";
    /** Time between two looks at whether the request was taken, ms. */
    private static final long LOOK_MS = 50;

    private SecondStart() {}

    /**
     * Asks the workbench that has a folder open to show its page.
     *
     * @param max time that it has
     * @return false if none has it open, or the one that has shows no pages
     */
    static boolean ask(SeasonFolder folder, Duration max) {
        Path request = folder.work().resolve(REQUEST);
        try {
            if (!isOpen(folder.work().resolve(FolderLock.FILE))) {
                return false;
            }
            Files.write(request, new byte[0]);
            for (long left = max.toMillis(); left > 0; left -= LOOK_MS) {
                if (!Files.exists(request, LinkOption.NOFOLLOW_LINKS)) {
                    return true;
                }
                Thread.sleep(LOOK_MS);
            }
            // Deleted here, it was not taken.
            return !Files.deleteIfExists(request);
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    private static boolean isOpen(Path lock) throws IOException {
        if (!Files.isRegularFile(lock, LinkOption.NOFOLLOW_LINKS)) {
            return false;
        }
        try (FileChannel file = FileChannel.open(lock, StandardOpenOption.WRITE);
                FileLock free = file.tryLock()) {
            return free == null;
        } catch (OverlappingFileLockException e) {
            return true;
        }
    }

    /** Takes a request; returns true if there was one. */
    static boolean take(SeasonFolder folder) {
        try {
            return Files.deleteIfExists(folder.work().resolve(REQUEST));
        } catch (IOException e) {
            return false;
        }
    }
}
