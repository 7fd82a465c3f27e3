package io.rowledger.cli;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CompilerDirectivesTest {
    @TempDir
    Path folder;

    private Path file(String name, long ageS) throws IOException {
        Path file = Files.writeString(folder.resolve(name), "[]");
        Files.setLastModifiedTime(file, FileTime.from(Instant.now().minusSeconds(ageS)));
        return file;
    }

    @Test
    void what_a_killed_process_left_goes_and_nothing_else() throws IOException {
        Path own = file("rowledger-directives-1.json", 0);
        Path atWork = file("rowledger-directives-2.json", 5);
        Path left = file("rowledger-directives-3.json", 3600);
        Path other = file("rowledger-notes.json", 3600);
        CompilerDirectives.clear(own);
        assertFalse(Files.exists(left));
        assertTrue(Files.exists(own) && Files.exists(atWork) && Files.exists(other));
    }
}
