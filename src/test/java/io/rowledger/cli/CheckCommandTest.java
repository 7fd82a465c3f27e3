package io.rowledger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Rows compared without a rig file. */
class CheckCommandTest {
    private static final Path PLUGGED = Path.of("sample-logs/plugged-row/log.csv");

    @TempDir
    Path folder;

    @Test
    void the_plugged_row_of_the_sample_is_found_without_a_rig_file() throws IOException {
        Path out = folder.resolve("page");
        Calls call = Calls.of("check", PLUGGED, "--out", out);
        String said = call.out().replace('\u00a0', ' ');
        assertEquals(0, call.status(), call.err());
        assertTrue(said.contains("Row 7 looks plugged"), said);
        assertTrue(said.contains("30.0 in"), said);
        // The log begins at 14:00 UTC and lies at 93.5 degrees west: six hours by the sun.
        assertTrue(said.contains("8:23 AM to June 3, 2026, 8:48 AM (UTC−6)"), said);
        assertTrue(Files.readString(out.resolve("review.html")).contains("Row 7 looks plugged"));
    }

    @Test
    void a_folder_with_other_files_is_refused_and_left_alone() throws IOException {
        Path notes = Files.writeString(folder.resolve("notes.txt"), "mine");
        Calls call = Calls.of("check", PLUGGED, "--out", folder);
        assertEquals(2, call.status());
        assertTrue(call.err().contains("notes.txt"), call.err());
        assertEquals("mine", Files.readString(notes));
    }

    @Test
    void a_log_with_one_meter_claims_nothing_about_rows() throws IOException {
        List<String> lines = new ArrayList<>(List.of("time,lat,lon,speed[mph],flow[gal/min]"));
        for (int i = 0; i < 120; i++) {
            lines.add(String.format(
                    Locale.ROOT,
                    "2026-05-14T10:%02d:%02dZ,%.8f,-88.1,4.5,5.4",
                    i / 60,
                    i % 60,
                    41.7 + i * 0.0000180905));
        }
        Path log = Files.write(folder.resolve("bar.csv"), lines);
        Calls call = Calls.of("check", log, "--rows", 6, "--spacing", "30 in", "--out", folder.resolve("page"));
        assertEquals(0, call.status(), call.err());
        assertTrue(call.out().contains("can't show what single rows did"), call.out());
        assertFalse(call.out().contains("No row stands out"), call.out());
    }

    @Test
    void points_without_times_have_no_time_of_work() throws IOException {
        List<String> lines = new ArrayList<>(List.of("lat,lon,rate[gal/ac]"));
        for (int i = 0; i < 120; i++) {
            lines.add(String.format(Locale.ROOT, "%.8f,-88.1,42", 41.7 + i * 0.0000180905));
        }
        Path log = Files.write(folder.resolve("points.csv"), lines);
        Calls call = Calls.of("check", log, "--rows", 6, "--out", folder.resolve("page"));
        assertEquals(0, call.status(), call.err());
        assertTrue(call.out().contains("how long they worked is not in this file"), call.out());
        assertFalse(call.out().contains(" of work"), call.out());
    }

    @Test
    void a_wrong_number_of_rows_is_that_of_the_call() {
        Calls call = Calls.of("check", PLUGGED, "--rows", 8, "--out", folder.resolve("page"));
        assertEquals(2, call.status());
        assertTrue(call.err().contains("found --rows 8, and flow columns for 12 in the log"), call.err());
        assertFalse(call.err().contains("rig file"), call.err());
    }

    @Test
    void a_spacing_without_a_unit_is_asked_about() {
        Calls call = Calls.of("check", PLUGGED, "--spacing", "30");
        assertEquals(2, call.status());
        assertTrue(call.err().contains("--spacing"), call.err());
    }
}
