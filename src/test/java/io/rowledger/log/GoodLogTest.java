package io.rowledger.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.log.header.LogOptions;
import io.rowledger.log.source.LogSource;
import io.rowledger.rig.Rig;
import io.rowledger.rig.RigReader;
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

    /**
     * Flows reckoned from volumes: a time near 2026 in seconds is a double good to 0.24 us, on either end of 0.2 s; the
     * flows are below 0.1 L/s.
     */
    private static final double RECKONED = 3e-7;
    /** Degrees put together from degrees and minutes: one rounding more, of figures below 180. */
    private static final double PUT_TOGETHER_DEG = 1e-13;

    private static LogReading read(Path folder) throws IOException {
        Path rigFile = folder.resolve("rig.yaml");
        LogOptions options = OPTIONS;
        if (Files.exists(rigFile)) {
            Rig rig = RigReader.read(rigFile).rig();
            options = rig.logOptions();
        }
        return LogReader.read(files(folder, "log"), options);
    }

    private static List<Path> files(Path folder, String prefix) throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.filter(path -> path.getFileName().toString().startsWith(prefix))
                    .sorted()
                    .toList();
        }
    }

    /** The plain log, or where other figures are needed (midnight, two days, steady flows) the plain log beside it. */
    private static LogTable twin(Path folder) throws IOException {
        List<Path> own = files(folder, "plain");
        if (own.isEmpty()) {
            return read(CASES.resolve("plain")).table();
        }
        Path rigFile = folder.resolve("rig.yaml");
        int rows = Files.exists(rigFile) ? RigReader.read(rigFile).rig().rows() : OPTIONS.rowsExpected();
        return LogReader.read(own, new LogOptions(Map.of(), List.of("uan"), rows))
                .table();
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
        assertTrue(folders.size() >= 30, folders.size() + " cases");
        return folders.stream()
                .map(folder -> DynamicTest.dynamicTest(folder.getFileName().toString(), () -> {
                    assertTrue(Files.size(folder.resolve("why.txt")) > 0);
                    same(twin(folder), read(folder).table());
                }));
    }

    private static void same(LogTable plain, LogTable twin) {
        assertEquals(plain.records(), twin.records());
        assertEquals(plain.products(), twin.products());
        assertEquals(plain.outlets(), twin.outlets());
        for (LogSource source : twin.sources()) {
            assertEquals(source.records(), source.used() + source.dropped().duplicate());
        }
        for (int i = 0; i < plain.records(); i++) {
            String at = "record " + i;
            assertEquals(plain.timeS(i), twin.timeS(i), 1e-6, at);
            assertEquals(plain.latDeg(i), twin.latDeg(i), PUT_TOGETHER_DEG, at);
            assertEquals(plain.lonDeg(i), twin.lonDeg(i), PUT_TOGETHER_DEG, at);
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
                assertEquals(plain.flowLPerS(0, r, i), twin.flowLPerS(0, r, i), RECKONED, at + ", outlet " + r);
            }
        }
    }

    @Test
    void a_time_without_a_zone_is_taken_as_utc_and_said_so() throws IOException {
        List<String> notes = LogNotes.of(read(CASES.resolve("no-zone")));
        assertEquals(1, notes.size());
        assertTrue(notes.get(0).contains("no zone and were read as UTC"), notes.get(0));
    }
}
