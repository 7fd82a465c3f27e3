package io.rowledger.log;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.LogOptions;
import io.rowledger.log.source.LogSource;
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

    @Test
    void a_columns_line_settles_what_a_header_stands_for() throws IOException {
        String text = HEADER.replace("speed[mph]", "v").replace("flow_02[gal/min]", "right meter") + records(0, 3);
        LogOptions options =
                new LogOptions(Map.of("speed[km/h]", "v", "flow_02[L/min]", "Right Meter"), List.of("uan"), 2);
        LogTable table = LogReader.read(List.of(file("log.csv", text)), options).table();
        assertEquals(4.5 / 3.6, table.speedMps(0), 1e-12);
        assertEquals(0.46 / 60, table.flowLPerS(0, 1, 0), 1e-12);
    }

    @Test
    void a_columns_line_decides_between_two_columns() throws IOException {
        String text = HEADER.replace(",down,", ",latitude,") + records(0, 3).replace(",4,1,", ",4,41.5,");
        LogOptions options = new LogOptions(Map.of("lat", "lat"), List.of("uan"), 2);
        LogReading reading = LogReader.read(List.of(file("log.csv", text)), options);
        assertEquals(41.7, reading.table().latDeg(0));
        assertTrue(reading.columns().get(4).ignored());
    }

    @Test
    void several_products_keep_their_columns_apart() throws IOException {
        String text = """
                time,lat,lon,ats.flow_01[L/min],uan.flow_01[L/min],UAN.target[L/ha]
                2026-05-14T10:00:00Z,41.7,-88.1,6,60,200
                2026-05-14T10:00:01Z,41.70001,-88.1,6,60,200
                """;
        LogOptions options = new LogOptions(Map.of(), List.of("uan", "ats"), 1);
        LogTable table = LogReader.read(List.of(file("log.csv", text)), options).table();
        assertEquals(List.of("uan", "ats"), table.products());
        assertEquals(1.0, table.flowLPerS(0, 0, 1), 1e-12);
        assertEquals(0.1, table.flowLPerS(1, 0, 1), 1e-12);
        assertEquals(0.02, table.targetLPerM2(0, 0), 1e-12);
        assertTrue(table.hasTarget(0));
        assertFalse(table.hasTarget(1));
    }

    @Test
    void flows_no_meter_can_have_seen_are_unknown_and_said_so() throws IOException {
        String text = HEADER
                + records(0, 8)
                + record(8).replace("0.45,", "-0.01,")
                + record(9).replace("0.45,", "-3,")
                + record(10).replace("0.45,", "900,");
        LogReading reading = read(text);
        assertEquals(0, reading.table().flowLPerS(0, 0, 8));
        assertTrue(Double.isNaN(reading.table().flowLPerS(0, 0, 9)));
        assertTrue(Double.isNaN(reading.table().flowLPerS(0, 0, 10)));
        assertEquals(2, reading.notes().size(), reading.notes().toString());
    }

    @Test
    void two_machines_at_one_time_are_not_one_job() throws IOException {
        Path here = file("here.csv", HEADER + records(0, 30));
        Path there = file("there.csv", HEADER + records(0, 30).replace("-88.1", "-88.2"));
        UnusableInputException e =
                assertThrows(UnusableInputException.class, () -> LogReader.read(List.of(here, there), TWO_ROWS));
        assertTrue(e.getMessage().contains("there.csv"), e.getMessage());
        assertTrue(e.getMessage().contains("each machine on its own"), e.getMessage());
    }

    @Test
    void two_machines_in_one_field_are_not_one_log_given_twice() throws IOException {
        Path here = file("here.csv", HEADER + records(0, 30));
        // 0.0003 degrees of longitude at 41.7 N: 0.0003 x 111,320 m x cos(41.7) = 24.9 m
        Path beside = file("beside.csv", HEADER + records(0, 30).replace("-88.1", "-88.1003"));
        UnusableInputException e =
                assertThrows(UnusableInputException.class, () -> LogReader.read(List.of(here, beside), TWO_ROWS));
        assertTrue(e.getMessage().contains("each machine on its own"), e.getMessage());
    }

    @Test
    void one_log_by_two_clocks_is_not_two_jobs() throws IOException {
        String text = HEADER + records(0, 60);
        Path utc = file("utc.csv", text);
        Path local = file("local.csv", text.replace("T10:", "T05:"));
        for (List<Path> order : List.of(List.of(utc, local), List.of(local, utc))) {
            UnusableInputException e =
                    assertThrows(UnusableInputException.class, () -> LogReader.read(order, TWO_ROWS));
            assertTrue(e.getMessage().contains("to the last digit, 5 h 00 min"), e.getMessage());
        }
    }

    @Test
    void positions_of_five_decimals_are_read_with_a_word_on_their_steps() throws IOException {
        StringBuilder text = new StringBuilder(HEADER);
        for (int second = 0; second < 30; second++) {
            text.append(record(second, "4", 41.7 + second * 2e-5, -88.1));
        }
        String notes = String.join("\n", LogNotes.of(read(text.toString())));
        assertTrue(notes.contains("no more than 5 decimals of a degree, a step of 1.1 m"), notes);
        assertEquals(List.of(), read(HEADER + records(0, 30)).notes());
    }

    @Test
    void a_target_for_each_row_is_said_to_be_unread() throws IOException {
        String text = (HEADER + records(0, 30)).replace("speed[mph]", "Row 1 target [gal/ac]");
        assertTrue(String.join("\n", LogNotes.of(read(text))).contains("Columns like Row 1 target [gal/ac]"));
    }

    @Test
    void logs_of_different_bars_are_not_one_job() throws IOException {
        Path two = file("two.csv", HEADER + records(0, 3));
        Path one = file("one.csv", HEADER.replace("flow_02[gal/min]", "spare") + records(10, 13));
        assertThrows(UnusableInputException.class, () -> LogReader.read(List.of(two, one), LogOptions.unknownRig()));
    }

    @Test
    void two_sessions_with_a_pause_between_are_broken_there() throws IOException {
        Path first = file("first.csv", HEADER + records(0, 30));
        Path second = file("second.csv", HEADER + records(300, 330));
        LogTable table = LogReader.read(List.of(first, second), TWO_ROWS).table();
        assertEquals(60, table.records());
        assertTrue(table.breakBefore(30));
    }

    @Test
    void a_receiver_that_comes_back_with_an_offset_keeps_both_sides() throws IOException {
        StringBuilder text = new StringBuilder(HEADER).append(records(0, 60));
        for (int second = 60; second < 120; second++) {
            text.append(record(second, "4", 41.7 + second * 1.8e-5, -88.0995));
        }
        LogReading reading = read(text.toString());
        assertEquals(120, reading.table().records());
        assertTrue(reading.table().breakBefore(60));
        // 0.0005 degrees of longitude at 41.7 N: 0.0005 x 111,320 m x cos(41.7) = 41.6 m
        assertTrue(
                LogNotes.of(reading).get(0).contains("shifts by 41.6 m"),
                reading.notes().toString());
    }

    @Test
    void a_stray_stretch_of_fixes_is_left_out_whole() throws IOException {
        StringBuilder text = new StringBuilder(HEADER).append(records(0, 60));
        for (int second = 60; second < 65; second++) {
            text.append(record(second, "1", 41.7 + second * 1.8e-5, -88.09));
        }
        LogTable table = read(text.append(records(65, 120)).toString()).table();
        assertEquals(5, table.sources().get(0).dropped().jump());
        assertEquals(115, table.records());
    }

    @Test
    void the_digest_is_that_of_the_bytes_on_disk() throws Exception {
        Path log = file("log.csv", HEADER + records(0, 3));
        byte[] digest = java.security.MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(log));
        LogTable table = LogReader.read(List.of(log), TWO_ROWS).table();
        assertEquals(
                java.util.HexFormat.of().formatHex(digest),
                table.sources().get(0).sha256());
    }

    @Test
    void used_and_dropped_add_up_whatever_happens_to_the_lines() throws IOException {
        java.util.Random random = new java.util.Random(42);
        for (int round = 0; round < 200; round++) {
            List<String> lines =
                    new java.util.ArrayList<>(List.of(records(0, 60).split("\\R")));
            for (int fault = random.nextInt(12); fault > 0; fault--) {
                int at = random.nextInt(lines.size());
                String line = lines.get(at);
                switch (random.nextInt(6)) {
                    case 0 -> lines.add(at, line);
                    case 1 -> lines.set(at, line.substring(0, random.nextInt(line.length() - 1) + 1));
                    case 2 -> lines.set(at, line.replace(",4,1,", ",0,1,"));
                    case 3 -> lines.set(at, line.replace("-88.1", "-87." + random.nextInt(9)));
                    case 4 -> lines.set(at, line.replace("0.46", "?"));
                    default -> java.util.Collections.swap(lines, at, random.nextInt(lines.size()));
                }
            }
            LogSource source =
                    read(HEADER + String.join("\n", lines)).table().sources().get(0);
            assertEquals(lines.size(), source.records());
            assertEquals(source.records(), source.used() + source.dropped().total());
            assertTrue(source.used() >= 30, "round " + round + ": " + source);
        }
    }

    @Test
    void swapped_axes_show_in_the_course_where_the_figures_are_plausible_both_ways() throws IOException {
        // North Italy, 45 N 9 E: swapped it lies in the Horn of Africa, which has fields too.
        StringBuilder good = new StringBuilder("time,lat,lon,course[deg],flow_01[L/min],flow_02[L/min]\n");
        StringBuilder bad = new StringBuilder(good);
        double latDeg = 45;
        double lonDeg = 9;
        for (int second = 0; second < 60; second++) {
            boolean north = second < 30;
            latDeg += north ? 2e-5 : 0;
            lonDeg += north ? 0 : 2.8e-5;
            String time = record(second).substring(0, 20);
            String rest = (north ? "0" : "90") + ",2,2";
            good.append(String.format(Locale.ROOT, "%s,%.7f,%.7f,%s%n", time, latDeg, lonDeg, rest));
            bad.append(String.format(Locale.ROOT, "%s,%.7f,%.7f,%s%n", time, lonDeg, latDeg, rest));
        }
        assertEquals(60, read(good.toString()).table().records());
        UnusableInputException e = assertThrows(UnusableInputException.class, () -> read(bad.toString()));
        assertTrue(e.getMessage().contains("they seem to be swapped"), e.getMessage());
    }

    @Test
    void a_long_log_keeps_the_order_of_its_records() throws IOException {
        StringBuilder text = new StringBuilder("epoch_s,lat,lon,flow_01[L/s],flow_02[L/s]\n");
        int records = 5000;
        for (int i = 0; i < records; i++) {
            text.append(1778752800 + i).append(",41.").append(7000000 + i).append(",-88.1,");
            text.append(i % 7)
                    .append(".5,")
                    .append(i % 4999 == 4998 ? "x" : "1")
                    .append('\n');
        }
        LogTable table = read(text.toString()).table();
        assertEquals(records - 1, table.records());
        assertEquals(1, table.sources().get(0).dropped().unreadable());
        for (int i = 0; i < table.records(); i++) {
            int line = i < 4998 ? i : i + 1;
            assertEquals(1778752800.0 + line, table.timeS(i));
            assertEquals(Double.parseDouble("41." + (7000000 + line)), table.latDeg(i));
            assertEquals(line % 7 + 0.5, table.flowLPerS(0, 0, i));
            assertEquals(i == 0 || i == 4998, table.breakBefore(i));
        }
    }

    @Test
    void lines_that_stand_twice_lose_nothing_and_a_coarse_clock_does() throws IOException {
        StringBuilder copies = new StringBuilder("time,lat,lon,flow_01[gal/min]\n");
        StringBuilder coarse = new StringBuilder("time,lat,lon,flow_01[gal/min]\n");
        for (int i = 0; i < 40; i++) {
            String time = String.format(Locale.ROOT, "2026-05-14T10:00:%02dZ", i / 2);
            int place = i / 2;
            copies.append(time)
                    .append(',')
                    .append(41.7 + place * 2e-5)
                    .append(",-93.1,1.")
                    .append(place)
                    .append('\n');
            coarse.append(time)
                    .append(',')
                    .append(41.7 + i * 1e-5)
                    .append(",-93.1,1.")
                    .append(i)
                    .append('\n');
        }

        Path twice = Files.writeString(folder.resolve("copies.csv"), copies);
        Path clock = Files.writeString(folder.resolve("coarse.csv"), coarse);
        LogReading ofCopies = LogReader.read(List.of(twice), LogOptions.unknownRig());
        LogReading ofClock = LogReader.read(List.of(clock), LogOptions.unknownRig());
        assertEquals(20, ofCopies.table().sources().get(0).dropped().duplicate());
        assertEquals(20, ofCopies.table().sources().get(0).repeated());
        assertEquals(0, ofClock.table().sources().get(0).repeated());
        assertTrue(ofCopies.notes().stream().noneMatch(note -> note.key().equals("notes.log.duplicateTimes")));
        assertTrue(ofClock.notes().stream().anyMatch(note -> note.key().equals("notes.log.duplicateTimes")));
    }
}
