package io.rowledger.faults;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.extension.AnnotatedElementContext;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.io.TempDirFactory;

/**
 * Folders of tests in the machine's memory where it has a disk there with room, else in the usual place: the faults of a disk are
 * put in by {@link FaultyFiles}, and thousands of small files and forced writes are waited for on a real one.
 */
public final class TestFolders implements TempDirFactory {
    private static final Path MEMORY = Path.of("/dev/shm");

    /** More than all tests together hold at a time, bytes. */
    private static final long MIN_ROOM = 6L << 30;

    @Override
    public Path createTempDirectory(AnnotatedElementContext element, ExtensionContext extension) throws IOException {
        return hasRoom() ? Files.createTempDirectory(MEMORY, "junit") : Files.createTempDirectory("junit");
    }

    private static boolean hasRoom() throws IOException {
        return Files.isWritable(MEMORY) && Files.getFileStore(MEMORY).getUsableSpace() >= MIN_ROOM;
    }
}
