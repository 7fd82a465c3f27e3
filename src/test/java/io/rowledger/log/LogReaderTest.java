package io.rowledger.log;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LogReaderTest {
    private static final LogOptions TWO_ROWS = new LogOptions(Map.of(), List.of("uan"), 2);
    private static final String HEADER = "time,lat,lon,fix,down,speed[mph],flow_01[gal/min],flow_02[gal/min]\n";

    @TempDir
    Path folder;

    /** A record of a tractor that drives north at 2 m/s, one record a second. */
    private static String record(int second) {
        return record(second, "4", 41.7 + second * 1.8e-5, -88.1);
    }

    private static String record(int second, String fix, double latDeg, double lonDeg) {
        return String.format(
                Locale.ROOT,
                "2026-05-14T10:%02d:%02dZ,%.7f,%.7f,%s,1,4.5,0.45,0.46%n",
                second / 60,
                second % 60,
                latDeg,
                lonDeg,
                fix);
    }

    private Path file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text, StandardCharsets.UTF_8);
    }

    private LogReading read(String text) throws IOException {
        return LogReader.read(List.of(file("log.csv", text)), TWO_ROWS);
    }

    private static String records(int from, int to) {
        StringBuilder text = new StringBuilder();
        for (int second = from; second < to; second++) {
            text.append(record(second));
        }
        return text.toString();
    }

    @Test
    void a_plain_log_arrives_in_si() throws IOException {
        LogTable table = read(HEADER + records(0, 5)).table();
        assertEquals(5, table.records());
        assertEquals(2, table.outlets());
        assertEquals(List.of("uan"), table.products());
        // date -u -d 2026-05-14T10:00:00Z +%s (GNU coreutils)
        assertEquals(1778752800.0, table.timeS(0));
        assertEquals(41.7, table.latDeg(0));
        assertEquals(-88.1, table.lonDeg(0));
        assertEquals(4, table.fix(0));
        assertEquals(1, table.down(0));
        // NIST SP 811 App. B: 1 mi/h = 0.44704 m/s; 1 gal/min = 6.309020E-05 m3/s.
        assertEquals(4.5 * 0.44704, table.speedMps(0), 1e-12);
        assertEquals(0.45 * 6.309020e-2, table.flowLPerS(0, 0, 0), 1e-8);
        assertTrue(table.breakBefore(0));
        assertFalse(table.breakBefore(1));
        assertTrue(Double.isNaN(table.hdop(0)));
        assertFalse(table.hasTarget(0));
    }

    @Test
    void every_dropped_record_has_its_reason_and_the_counts_add_up() throws IOException {
        String text = HEADER
                + records(0, 10)
                + record(10, "0", 0, 0)
                + record(11, "", 0, 0)
                + record(12)
                + record(12)
                + record(11)
                + record(13, "4", 41.9, -88.1)
                + record(14)
                + record(15).replace("41.7", "41,7x")
                + record(16).replace("0.45,", "oops,")
                + record(17).replace("0.45,", ",")
                + records(18, 20)
                + "2026-05-14T10:00:20Z,41.7";
        LogTable table = read(text).table();
        LogSource source = table.sources().get(0);
        assertEquals(new LogSource.Dropped(2, 1, 1, 1, 3), source.dropped());
        assertEquals(source.records(), source.used() + source.dropped().total());
        assertEquals(15, table.records());
        // Breaks: at the start, after the lost fix, after the jump, after the two that could not be read.
        double[] breaks = java.util.stream.IntStream.range(0, table.records())
                .filter(table::breakBefore)
                .mapToDouble(i -> table.timeS(i) - 1778752800.0)
                .toArray();
        assertArrayEquals(new double[] {0, 12, 14, 17}, breaks);
        assertTrue(Double.isNaN(table.flowLPerS(0, 0, 12)));
    }

    @Test
    void a_bad_first_fix_costs_only_itself() throws IOException {
        LogTable table = read(HEADER + record(0, "1", 10, 20) + records(1, 60)).table();
        assertEquals(1, table.sources().get(0).dropped().jump());
        assertEquals(59, table.records());
    }

    @Test
    void a_machine_trailered_elsewhere_is_no_jump() throws IOException {
        String text = HEADER + records(0, 60) + record(600, "4", 41.9, -88.1) + record(601, "4", 41.90001, -88.1);
        LogTable table = read(text).table();
        assertEquals(62, table.records());
    }

    @Test
    void a_clock_that_leaps_ahead_for_a_moment_costs_only_that_moment() throws IOException {
        LogTable table =
                read(HEADER + records(0, 30) + record(1800) + records(30, 60)).table();
        assertEquals(1, table.sources().get(0).dropped().outOfOrder());
        assertEquals(60, table.records());
    }

    @Test
    void a_log_cut_in_two_is_one_log_whatever_the_order_it_is_given_in() throws IOException {
        Path first = file("first.csv", HEADER + records(0, 30));
        Path second = file("second.csv", HEADER + records(28, 60));
        LogTable whole = read(HEADER + records(0, 60)).table();
        LogTable joined = LogReader.read(List.of(second, first), TWO_ROWS).table();
        assertEquals(whole.records(), joined.records());
        for (int i = 0; i < whole.records(); i++) {
            assertEquals(whole.timeS(i), joined.timeS(i));
            assertEquals(whole.latDeg(i), joined.latDeg(i));
            assertEquals(whole.breakBefore(i), joined.breakBefore(i), "record " + i);
            assertEquals(whole.flowLPerS(0, 1, i), joined.flowLPerS(0, 1, i));
        }
        assertEquals(2, joined.sources().get(0).dropped().duplicate());
        assertEquals(30, joined.sources().get(0).used());
    }

    @Test
    void a_header_without_a_unit_says_what_to_write() {
        UnusableInputException e = assertThrows(
                UnusableInputException.class,
                () -> read(HEADER.replace("flow_02[gal/min]", "flow_02") + records(0, 3)));
        assertTrue(e.getMessage().contains("flow_02[gal/min]"), e.getMessage());
    }
}
