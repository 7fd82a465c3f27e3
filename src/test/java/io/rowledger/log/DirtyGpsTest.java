package io.rowledger.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.log.header.LogOptions;
import io.rowledger.log.source.LogSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Receivers that misbehave, one habit at a time; every record here is made by hand, so every count is known. A tractor
 * drives north at 2 m/s, five records a second: 0.4 m each, 3.6e-6 degrees of latitude (a degree is 111.2 km).
 */
class DirtyGpsTest {
    private static final double STEP_DEG = 3.6e-6;

    @TempDir
    Path folder;

    /** What stands in one line. */
    private static final class Fix {
        double timeS;
        double latDeg;
        double lonDeg = -88.1;
        double speedMps = 2;
        double courseDeg;
    }

    private static List<Fix> drive(int records) {
        List<Fix> fixes = new ArrayList<>();
        for (int i = 0; i < records; i++) {
            Fix fix = new Fix();
            fix.timeS = i * 0.2;
            fix.latDeg = 41.7 + i * STEP_DEG;
            fixes.add(fix);
        }
        return fixes;
    }

    /** Records {@code from} to {@code to} stay where record {@code from} − 1 was. */
    private static void freeze(List<Fix> fixes, int from, int to) {
        for (int i = from; i < to; i++) {
            fixes.get(i).latDeg = fixes.get(from - 1).latDeg;
        }
    }

    private String text(List<Fix> fixes, boolean withSpeed, int decimals) {
        StringBuilder text =
                new StringBuilder("time,lat,lon" + (withSpeed ? ",speed[m/s],course[deg]" : "") + ",flow_01[L/min]\n");
        for (Fix fix : fixes) {
            text.append(String.format(Locale.ROOT, "2026-05-14T10:%02d:%04.1fZ", (int) fix.timeS / 60, fix.timeS % 60))
                    .append(String.format(
                            Locale.ROOT, ",%." + decimals + "f,%." + decimals + "f", fix.latDeg, fix.lonDeg));
            if (withSpeed) {
                text.append(String.format(Locale.ROOT, ",%.3f,%.1f", fix.speedMps, fix.courseDeg));
            }
            text.append(",3.1\n");
        }
        return text.toString();
    }

    private LogReading read(String text) throws IOException {
        Path log = Files.writeString(folder.resolve("log.csv"), text);
        return LogReader.read(List.of(log), new LogOptions(Map.of(), List.of("uan"), 1));
    }

    private static LogSource.Dropped dropped(LogReading reading) {
        LogSource source = reading.table().sources().get(0);
        assertEquals(source.records(), source.used() + source.dropped().total());
        return source.dropped();
    }

    private static int breaks(LogReading reading) {
        int breaks = 0;
        for (int i = 1; i < reading.table().records(); i++) {
            breaks += reading.table().breakBefore(i) ? 1 : 0;
        }
        return breaks;
    }

    private static boolean says(LogReading reading, String words) {
        return LogNotes.of(reading).stream().anyMatch(note -> note.contains(words));
    }

    @Test
    void a_fix_that_freezes_for_a_second_is_left_out_and_the_path_runs_on() throws IOException {
        List<Fix> fixes = drive(100);
        freeze(fixes, 40, 45);
        LogReading reading = read(text(fixes, false, 8));
        assertEquals(new LogSource.Dropped(0, 0, 0, 0, 5, 0), dropped(reading));
        assertEquals(0, breaks(reading));
        // Line 1 is the header, record 0 stands in line 2, the first copy (record 40) in line 42.
        assertTrue(says(reading, "5 records repeat the position before while the machine moved, the first at line 42"));
    }

    @Test
    void a_fix_that_freezes_for_longer_breaks_the_path() throws IOException {
        List<Fix> fixes = drive(100);
        freeze(fixes, 40, 60);
        LogReading reading = read(text(fixes, false, 8));
        assertEquals(new LogSource.Dropped(0, 0, 0, 0, 20, 0), dropped(reading));
        assertEquals(1, breaks(reading));
        assertTrue(reading.table().breakBefore(40));
    }

    @Test
    void a_fix_frozen_to_the_end_shows_in_the_logged_speed_alone() throws IOException {
        List<Fix> fixes = drive(100);
        freeze(fixes, 80, 100);
        assertEquals(20, dropped(read(text(fixes, true, 8))).frozen());
        assertEquals(0, dropped(read(text(fixes, false, 8))).frozen());
    }

    @Test
    void a_machine_that_stands_is_not_frozen() throws IOException {
        List<Fix> fixes = drive(100);
        for (int i = 40; i < 100; i++) {
            // Stands for 20 records, then takes up speed over 10 and drives on.
            double steps = i < 60 ? 39 : i < 70 ? 39 + (i - 59) * (i - 59) / 20.0 : 44 + (i - 69);
            fixes.get(i).latDeg = 41.7 + steps * STEP_DEG;
            fixes.get(i).speedMps = i < 60 ? 0.04 : i < 70 ? (i - 59) * 0.2 : 2;
        }
        assertEquals(0, dropped(read(text(fixes, true, 8))).total());
        assertEquals(0, dropped(read(text(fixes, false, 8))).total());
    }

    @Test
    void positions_written_with_few_digits_are_not_frozen() throws IOException {
        // Five decimals of a degree are 1.1 m: two or three records share a figure.
        assertEquals(0, dropped(read(text(drive(200), false, 5))).total());
        assertEquals(0, dropped(read(text(drive(200), true, 5))).total());
    }

    @Test
    void a_receiver_slower_than_the_logger_counts_at_its_own_pace() throws IOException {
        List<Fix> fixes = drive(201);
        for (int i = 0; i < 200; i++) {
            fixes.get(i).latDeg = 41.7 + i / 5 * 5 * STEP_DEG;
        }
        LogReading reading = read(text(fixes, false, 8));
        // Four of each five, but of the last five: one position after them shows no speed that would tell them from a
        // stop.
        assertEquals(39 * 4, dropped(reading).frozen());
        assertEquals(201 - 39 * 4, reading.table().records());
        assertEquals(0, breaks(reading));
        assertTrue(says(reading, "a new position only every 1.0 s, and 156 records repeat the one before"));
    }

    @Test
    void zero_positions_stray_fixes_swapped_lines_and_repeated_stamps_are_each_counted() throws IOException {
        List<Fix> fixes = drive(100);
        for (int i = 20; i < 23; i++) {
            fixes.get(i).latDeg = 0;
            fixes.get(i).lonDeg = 0;
        }
        fixes.get(40).lonDeg += 0.01;
        fixes.add(51, fixes.remove(50));
        fixes.add(70, fixes.get(70));
        assertEquals(new LogSource.Dropped(3, 1, 1, 1, 0, 0), dropped(read(text(fixes, true, 8))));
    }

    /** 2 m/s written as 2 under a header that says mph: 0.447 of the path's speed. */
    @Test
    void a_speed_in_another_unit_is_named_and_not_used() throws IOException {
        LogReading reading = read(text(drive(100), true, 8).replace("speed[m/s]", "Speed (mph)"));
        assertTrue(
                says(
                        reading,
                        "The speed in column Speed (mph) of log.csv"
                                + " is 0.45 times what the path shows: it was read as mph, but the numbers are m/s."),
                reading.notes().toString());
        assertTrue(says(reading, "columns: {\"speed[m/s]\": \"Speed (mph)\"}"));
        assertTrue(Double.isNaN(reading.table().speedMps(50)));
    }

    @Test
    void every_mistaken_unit_of_speed_is_told_from_every_other() throws IOException {
        // NIST SP 811 App. B.8: 1 mi/h = 0.44704 m/s, 1 km/h = 0.2777778 m/s, 1 knot = 0.5144444 m/s.
        Map<String, Double> units = Map.of("mph", 0.44704, "km/h", 0.2777778, "m/s", 1.0, "kn", 0.5144444);
        for (String real : units.keySet()) {
            for (String said : units.keySet()) {
                List<Fix> fixes = drive(100);
                fixes.forEach(fix -> fix.speedMps = 2 / units.get(real));
                LogReading reading = read(text(fixes, true, 8).replace("speed[m/s]", "speed[" + said + "]"));
                assertEquals(
                        !real.equals(said), says(reading, "but the numbers are " + real + "."), real + " as " + said);
                assertEquals(real.equals(said), reading.notes().isEmpty(), real + " as " + said);
            }
        }
    }

    @Test
    void a_speed_no_unit_explains_is_said_so_and_wheel_slip_is_let_pass() throws IOException {
        List<Fix> fixes = drive(100);
        fixes.forEach(fix -> fix.speedMps = 2.16);
        assertEquals(List.of(), read(text(fixes, true, 8)).notes());
        fixes.forEach(fix -> fix.speedMps = 2.6);
        assertTrue(says(read(text(fixes, true, 8)), "is 1.30 times what the path shows, and no unit explains that."));
    }

    @Test
    void a_course_that_disagrees_with_the_path_is_said_so() throws IOException {
        List<Fix> fixes = drive(100);
        assertFalse(says(read(text(fixes, true, 8)), "course"));
        fixes.forEach(fix -> fix.courseDeg = 90);
        LogReading turned = read(text(fixes, true, 8));
        assertTrue(
                says(turned, "is turned by 90° against the path"),
                turned.notes().toString());
        assertTrue(Double.isNaN(turned.table().courseRad(50)));
        for (int i = 0; i < 100; i++) {
            fixes.get(i).courseDeg = i * 37 % 360;
        }
        assertTrue(says(read(text(fixes, true, 8)), "does not follow the path"));
    }

    @Test
    void inspect_shows_what_the_receiver_did() throws IOException {
        List<Fix> fixes = drive(100);
        freeze(fixes, 40, 45);
        fixes.subList(70, 80).clear();
        Path log = Files.writeString(folder.resolve("log.csv"), text(fixes, false, 8));
        String text = LogNotes.inspection(List.of(log)).text();
        assertTrue(
                text.contains(
                        "5 frozen: the position of the record before, though the machine moved; the first at line 42"),
                text);
        // Records 70 to 79 are missing: 11 intervals of 0.2 s from record 69 to 80, which stands in line 72.
        assertTrue(text.contains("silent   in 1 place, 2 s in all; the first before line 72"), text);
    }
}
