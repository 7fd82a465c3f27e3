package io.rowledger.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Every folder of {@code cases/good-log} holds the same log written another way ({@code why.txt}); each must give the
 * figures of its plain twin.
 */
class GoodLogTest {
    private static final Path CASES = Path.of("src/test/resources/cases/good-log");
    private static final LogOptions OPTIONS = new LogOptions(Map.of(), List.of("uan"), 3);
    /** Figures are written to four digits or more and differ only by the rounding of one multiplication. */
    private static final double ROUNDING = 1e-12;

    private static LogReading read(Path folder) throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            Path log = list.filter(path -> path.getFileName().toString().startsWith("log."))
                    .findFirst()
                    .orElseThrow();
            return LogReader.read(List.of(log), OPTIONS);
        }
    }

    @Test
    void the_plain_log_says_what_its_text_says() throws IOException {
        LogReading reading = read(CASES.resolve("plain"));
        LogTable table = reading.table();
        assertEquals(12, table.records());
        assertEquals(5, table.fix(5));
        assertEquals(0, table.down(0));
        assertEquals(0.2, table.timeS(1) - table.timeS(0), 1e-6);
        assertTrue(Double.isNaN(table.flowLPerS(0, 2, 7)));
        // NIST SP 811 App. B.8: 1 psi = 6.894757 kPa; 1 gal/min = 6.309020E-05 m3/s; degrees times pi/180.
        assertEquals(30 * 6894.757, table.pressurePa(0), 1e-6);
        assertEquals(2.7 * 6.309020e-2, table.totalLPerS(0, 0), 1e-7);
        assertEquals(Math.toRadians(359.9), table.courseRad(0), 1e-12);
        // 1 gal/ac = 9.353956 L/ha, from 3.785411784 L and 4046.8564224 m2.
        assertEquals(42 * 9.353956e-4, table.targetLPerM2(0, 0), 1e-8);
        assertEquals(List.of(), reading.notes());
        assertEquals(
                new LogSource.Dropped(0, 0, 0, 0, 0), table.sources().get(0).dropped());
    }

    @TestFactory
    Stream<DynamicTest> every_other_way_to_write_it_gives_the_same_figures() throws IOException {
        List<Path> folders;
        try (Stream<Path> list = Files.list(CASES)) {
            folders = list.sorted().toList();
        }
        LogTable plain = read(CASES.resolve("plain")).table();
        return folders.stream()
                .map(folder -> DynamicTest.dynamicTest(
                        folder.getFileName().toString(),
                        () -> same(plain, read(folder).table())));
    }

    private static void same(LogTable plain, LogTable twin) {
        assertEquals(plain.records(), twin.records());
        assertEquals(plain.products(), twin.products());
        assertEquals(plain.outlets(), twin.outlets());
        assertEquals(0, twin.sources().get(0).dropped().total());
        for (int i = 0; i < plain.records(); i++) {
            String at = "record " + i;
            assertEquals(plain.timeS(i), twin.timeS(i), 1e-6, at);
            assertEquals(plain.latDeg(i), twin.latDeg(i), at);
            assertEquals(plain.lonDeg(i), twin.lonDeg(i), at);
            assertEquals(plain.breakBefore(i), twin.breakBefore(i), at);
            assertEquals(plain.fix(i), twin.fix(i), at);
            assertEquals(plain.down(i), twin.down(i), at);
            assertEquals(plain.hdop(i), twin.hdop(i), at);
            assertEquals(plain.speedMps(i), twin.speedMps(i), ROUNDING, at);
            assertEquals(plain.courseRad(i), twin.courseRad(i), ROUNDING, at);
            assertEquals(plain.pressurePa(i), twin.pressurePa(i), 1e-6, at);
            assertEquals(plain.targetLPerM2(0, i), twin.targetLPerM2(0, i), ROUNDING, at);
            assertEquals(plain.totalLPerS(0, i), twin.totalLPerS(0, i), ROUNDING, at);
            for (int r = 0; r < plain.outlets(); r++) {
                assertEquals(plain.flowLPerS(0, r, i), twin.flowLPerS(0, r, i), ROUNDING, at + ", outlet " + r);
            }
        }
    }

    @Test
    void a_time_without_a_zone_is_taken_as_utc_and_said_so() throws IOException {
        List<String> notes = read(CASES.resolve("no-zone")).notes();
        assertEquals(1, notes.size());
        assertTrue(notes.get(0).contains("no zone and were taken as UTC"), notes.get(0));
    }
}
