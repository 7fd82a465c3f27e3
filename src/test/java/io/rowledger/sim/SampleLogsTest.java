package io.rowledger.sim;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The committed sample logs are what {@link SampleLogs} writes. */
@Tag("slow")
class SampleLogsTest {
    private static final Path COMMITTED = Path.of("sample-logs");
    private static final long MAX_BYTES = 4_000_000;

    private static List<String> files(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile)
                    .map(file -> folder.relativize(file).toString().replace('\\', '/'))
                    .sorted()
                    .toList();
        }
    }

    /** A file's bytes, unpacked where packed: packers may differ between machines, contents may not. */
    private static byte[] bytes(Path file) throws IOException {
        if (!file.toString().endsWith(".gz")) {
            return Files.readAllBytes(file);
        }
        try (InputStream in = new GZIPInputStream(Files.newInputStream(file))) {
            return in.readAllBytes();
        }
    }

    @Test
    void the_committed_samples_come_out_again_byte_for_byte(@TempDir Path again) throws IOException {
        SampleLogs.write(again);
        assertEquals(files(again), files(COMMITTED));
        long size = 0;
        for (String file : files(again)) {
            assertArrayEquals(bytes(again.resolve(file)), bytes(COMMITTED.resolve(file)), file);
            size += Files.size(COMMITTED.resolve(file));
        }
        assertTrue(size < MAX_BYTES, "the samples weigh " + size + " bytes");
    }
}
