package io.rowledger.log;

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

class InspectionTest {
    private static final Path CASES = Path.of("src/test/resources/cases");

    @Test
    void every_column_is_shown_with_what_it_was_taken_for() {
        Inspection inspection = LogNotes.inspection(List.of(CASES.resolve("good-log/other-names/log.csv")));
        assertEquals(List.of(), inspection.refusals());
        assertEquals(List.of(), inspection.questions());
        String text = inspection.text();
        assertTrue(text.contains("12, of which 12 can be used"), text);
        assertTrue(text.contains("2026-05-14 10:00:00 to 2026-05-14 10:00:02.200 UTC, 0 h 00 min 02 s"), text);
        assertTrue(text.contains("every 0.2 s (5 Hz)"), text);
        // 4.50 mi/h at 0.44704 m/s (NIST SP 811 App. B) is 2.012 m/s.
        assertTrue(
                text.lines().anyMatch(l -> l.matches(" +Ground Speed \\(MPH\\) +speed +mph +4.50 +2.012 m/s")), text);
        assertTrue(text.lines().anyMatch(l -> l.matches(" +flow2_gpm +flow_02 +gal/min +0.9100 +0.05741 L/s")), text);
    }

    @Test
    void a_column_without_use_is_shown_as_such() {
        String text = LogNotes.inspection(List.of(CASES.resolve("good-log/extra-columns/log.csv")))
                .text();
        assertTrue(text.lines().anyMatch(l -> l.matches(" +operator +\\(not used\\) +Me, myself")), text);
    }

    @Test
    void a_file_that_cannot_be_used_does_not_hide_the_others() {
        Inspection inspection = LogNotes.inspection(List.of(
                CASES.resolve("bad-input/log-empty/log.csv"),
                CASES.resolve("good-log/semicolon-decimal-comma/log.csv")));
        assertEquals(List.of(), inspection.questions());
        assertEquals(1, inspection.refusals().size());
        assertTrue(inspection.refusals().get(0).getMessage().contains("found an empty file"));
        assertFalse(inspection.text().contains("found an empty file"), "a file without a table is told by itself");
        assertTrue(inspection.text().contains("semicolon, decimal comma"), inspection.text());
    }

    /** 0.01 degrees of latitude are 1.1 km: one machine is not in two places at one time. */
    @Test
    void logs_that_cannot_be_joined_are_refused_together_and_ask_nothing(@TempDir Path folder) throws IOException {
        List<Path> logs = new ArrayList<>();
        for (String lat : List.of("41.50", "41.51")) {
            StringBuilder text = new StringBuilder("time,lat,lon,flow_01[gal/min]\n");
            for (int i = 0; i < 20; i++) {
                text.append(String.format(Locale.ROOT, "2026-05-14T10:00:%02dZ,%s%03d,-93.5,1%n", i, lat, 2 * i));
            }
            logs.add(Files.writeString(folder.resolve(lat + ".csv"), text));
        }
        Inspection inspection = LogNotes.inspection(logs);
        assertEquals(List.of(), inspection.questions());
        assertEquals(1, inspection.refusals().size(), inspection.text());
        assertTrue(inspection.text().contains("Together they can't be used."), inspection.text());
    }

    @Test
    void a_log_with_questions_has_its_table_all_questions_and_what_each_unit_makes(@TempDir Path folder)
            throws IOException {
        Path log = Files.write(
                folder.resolve("log.csv"),
                List.of(
                        "Time,Latitude,Longitude,Speed (mph),Row 1 Flow,Row 2 Flow,Fuel",
                        "05/06/2026 10:00:00,41.7000000,-93.1,5.5,1.14,1.14,7",
                        "05/06/2026 10:00:01,41.7000220,-93.1,5.5,1.14,1.14,7",
                        "05/06/2026 10:00:02,41.7000440,-93.1,5.5,1.14,1.14,7"));
        Inspection inspection = LogNotes.inspection(List.of(log));
        assertEquals(2, inspection.questions().size(), inspection.text());
        assertEquals(2, inspection.rows());
        assertEquals("America/Chicago", inspection.zone());
        // gal/ac = 5940 · gal/min ÷ (mph · in): 5940 · 1.14 ÷ (5.5 · 30) = 41.0; a liter is 0.264172 gal (NIST SP 811).
        assertTrue(inspection.text().contains("gal/min gives 41 gal/ac, L/min gives 11 gal/ac"), inspection.text());
        assertTrue(inspection.text().contains("2026-05-06 read as month-day-year"), inspection.text());
        assertTrue(inspection.text().lines().anyMatch(l -> l.matches(" +Fuel +\\(not used\\) +7")), inspection.text());
    }

    @Test
    void a_target_without_a_unit_is_shown_in_units_of_rate_alone(@TempDir Path folder) throws IOException {
        Path log = Files.write(
                folder.resolve("log.csv"),
                List.of(
                        "Time,Latitude,Longitude,flow_01[gal/min],Target",
                        "2026-05-06T10:00:00Z,41.7000000,-93.1,1.14,42",
                        "2026-05-06T10:00:01Z,41.7000220,-93.1,1.14,42"));
        String text = LogNotes.inspection(List.of(log)).text();
        // 1 L/ha = 0.106907 gal/ac, from 3.785411784 L and 4046.8564224 m2: 42 L/ha are 4.5.
        assertTrue(text.lines().anyMatch(l -> l.strip().equals("gal/ac gives 42 gal/ac, L/ha gives 4.5 gal/ac")), text);
    }

    /** A rate per area needs no time, and a rate without a unit may be one. */
    @Test
    void polygons_whose_rate_has_no_unit_are_asked_for_the_unit_alone(@TempDir Path folder) throws IOException {
        Path map = Files.writeString(folder.resolve("cover.geojson"), """
                {"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {"Rate": 40}, "geometry":
                {"type": "Polygon", "coordinates": [[[-93.5, 41.5], [-93.499, 41.5], [-93.499, 41.501], [-93.5, 41.5]]]}}]}
                """);
        Inspection inspection = LogNotes.inspection(List.of(map));
        assertEquals(1, inspection.questions().size(), inspection.text());
        String text = inspection.text();
        assertTrue(text.contains("found polygons with a rate, but not its unit, among Rate (40)"), text);
        assertTrue(text.contains("write columns: {\"rate[gal/ac]\": \"Rate\"}"), text);
        assertTrue(text.contains(inspection.questions().get(0).getMessage()), text);
    }

    /** Two stretches of 20 records, 0.02962 degrees of latitude apart, each of 111,080 m (Snyder, USGS PP 1395, table of meridian lengths; from memory). */
    @Test
    void work_in_two_places_is_told_with_the_line_where_the_second_begins(@TempDir Path folder) throws IOException {
        StringBuilder text = new StringBuilder("Time,Lat,Lon,flow_01[gal/min]\n");
        for (int i = 0; i < 40; i++) {
            text.append(String.format(
                    Locale.ROOT,
                    "2026-05-14 1%d:00:%02d CDT,%.6f,-93.5,1%n",
                    i / 20,
                    i % 20,
                    41.5 + (i < 20 ? 0 : 0.03) + i % 20 * 2e-5));
        }
        Inspection inspection = LogNotes.inspection(List.of(Files.writeString(folder.resolve("two.csv"), text)));
        assertTrue(
                inspection.text().contains("Work lies in places 3,290 m apart")
                        && inspection.text().contains("the second begins at line 22 of two.csv"),
                inspection.text());
        assertTrue(inspection.text().contains("year-month-day, zone as written: CDT"), inspection.text());
    }

    @Test
    void a_width_that_nobody_gave_is_called_so(@TempDir Path folder) throws IOException {
        Path log = Files.writeString(folder.resolve("rate.csv"), """
                Time,Lat,Lon,Speed (mph),rate_01[gal/ac]
                2026-05-14T10:00:00Z,41.50000,-93.5,5,42
                2026-05-14T10:00:01Z,41.50002,-93.5,5,42
                2026-05-14T10:00:02Z,41.50004,-93.5,5,42
                """);
        String text = LogNotes.inspection(List.of(log)).text();
        assertTrue(text.contains("became flows through a row width of 76.2 cm (none is given)"), text);
    }

    /** Twelve of thirty records repeat the position, ten of them without a step on either side. */
    @Test
    void rates_without_motion_are_told(@TempDir Path folder) throws IOException {
        StringBuilder text = new StringBuilder("time,lat,lon,rate[gal/ac]\n");
        for (int i = 0; i < 30; i++) {
            int at = i < 10 ? i : Math.max(10, i - 11);
            text.append(String.format(Locale.ROOT, "2026-05-14T10:00:%02dZ,%.6f,-93.5,42%n", i, 41.5 + at * 2e-5));
        }
        String inspection = LogNotes.inspection(List.of(Files.writeString(folder.resolve("hangs.csv"), text)))
                .text();
        assertTrue(inspection.contains("10 records have a rate while the position does not change"), inspection);
    }

    /** Polygons need no time: the one thing to know is the attribute. */
    @Test
    void polygons_without_a_known_rate_are_asked_which_attribute_it_is(@TempDir Path folder) throws IOException {
        Path map = Files.writeString(folder.resolve("cover.geojson"), """
                {"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {"OBJ_ID": 7, "COVERVOL": 40.5},
                "geometry": {"type": "Polygon", "coordinates": [[[-93.5, 41.5], [-93.499, 41.5], [-93.499, 41.501], [-93.5, 41.5]]]}}]}
                """);
        Inspection inspection = LogNotes.inspection(List.of(map));
        assertEquals(1, inspection.questions().size(), inspection.text());
        String question = inspection.questions().get(0).getMessage();
        assertTrue(question.contains("among OBJ_ID (7), COVERVOL (40.5)"), question);
        assertTrue(question.contains("write columns: {\"rate[gal/ac]\": \"COVERVOL\"}"), question);
    }
}
