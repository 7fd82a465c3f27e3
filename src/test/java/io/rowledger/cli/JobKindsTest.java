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
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Jobs whose logs show no single rows, compared and put side by side: what can't be told is said to be unknown. */
class JobKindsTest {
    private static final int RECORDS = 200;

    private static final String RIG = """
            rig:
              name: Six-row bar
              antenna: {ahead_of_axle: 0 m, right_of_center: 0 m}
              axle_to_hitch: 1 m
              hitch: mounted
              hitch_to_drop: 1 m
            rows: {count: 6, spacing: 30 in%s}
            products:
              uan: {name: UAN 32-0-0, density: 11.06 lb/gal, analysis: 32-0-0, target: 42 gal/ac}
            job: {field: North, zone: America/Chicago}
            """;

    private static final String METERS = ", meters: [[1, 2], [3, 4], [5, 6]]";

    @TempDir
    Path folder;

    /** A pass due north at 2.4 m/s; 42 gal/ac of a row are 1.14 gal/min (gal/ac · mph · in ÷ 5940). */
    private Path job(String name, String rig, String columns, String values) throws IOException {
        List<String> lines = new ArrayList<>(List.of("time,lat,lon,down," + columns));
        for (int i = 0; i < RECORDS; i++) {
            lines.add(String.format(
                    Locale.ROOT,
                    "2026-06-11T13:%02d:%02dZ,%.8f,-93.1,1,%s",
                    i / 60,
                    i % 60,
                    41.7 + i * 2.4 / 111_080,
                    values));
        }
        return run(name, Files.write(folder.resolve(name + ".csv"), lines), rig);
    }

    private Path areas(String name) throws IOException {
        Path log = Files.writeString(
                folder.resolve(name + ".geojson"),
                "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":{\"rate[gal/ac]\":42,"
                        + "\"date\":\"2026-06-13\"},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":"
                        + "[[[-93.1,41.7],[-93.099,41.7],[-93.099,41.701],[-93.1,41.701],[-93.1,41.7]]]}}]}");
        return run(name, log, String.format(RIG, ""));
    }

    private Path run(String name, Path log, String rig) throws IOException {
        Path file = Files.writeString(folder.resolve(name + ".yaml"), rig);
        Path out = folder.resolve(name);
        Calls call = Calls.of("report", log, "--rig", file, "--out", out, "--for", "dealer");
        assertEquals(0, call.status(), call.err());
        Files.writeString(folder.resolve(name + ".txt"), call.out());
        return out;
    }

    private Calls compare(Path before, Path after) {
        return Calls.of("compare", before, after, "--out", folder.resolve("compared"));
    }

    @Test
    void two_jobs_of_one_meter_are_not_said_to_be_without_change() throws IOException {
        Path before = job("bar-1", String.format(RIG, ""), "flow[gal/min]", "6.84");
        Path after = job("bar-2", String.format(RIG, ""), "flow[gal/min]", "5.90");
        Calls call = compare(before, after);
        assertEquals(0, call.status(), call.err());
        assertTrue(call.out().contains("In neither job could a row be checked"), call.out());
        assertFalse(call.out().contains("nothing new"), call.out());
    }

    @Test
    void a_job_of_one_meter_after_one_of_rows_shows_nothing_new_for_want_of_sight() throws IOException {
        String columns = "flow_01[gal/min],flow_02[gal/min],flow_03[gal/min],flow_04[gal/min],flow_05[gal/min],"
                + "flow_06[gal/min]";
        Path rows = job("rows", String.format(RIG, ""), columns, "1.14,1.14,1.14,1.14,1.14,1.14");
        Path bar = job("bar", String.format(RIG, ""), "flow[gal/min]", "6.84");
        assertTrue(compare(rows, bar).out().contains("no row of the later job could be checked"));
        Calls turned = Calls.of("compare", bar, rows, "--out", folder.resolve("turned"));
        assertTrue(turned.out().contains("No row of the earlier job could be checked"), turned.out());
    }

    @Test
    void a_map_of_areas_is_not_compared_and_takes_its_place_in_the_season() throws IOException {
        Path areas = areas("areas");
        Path bar = job("bar", String.format(RIG, ""), "flow[gal/min]", "6.84");
        for (Calls call : List.of(compare(bar, areas), compare(areas, bar))) {
            assertEquals(2, call.status());
            assertTrue(call.err().contains("whose log is a map of areas"), call.err());
        }
        Path out = folder.resolve("season");
        Calls season = Calls.of("season", areas, bar, "--out", out);
        assertEquals(0, season.status(), season.err());
        String table = Files.readString(out.resolve("season.csv"));
        assertTrue(table.contains("2026-06-11") && table.contains("2026-06-13"), table);
    }

    @Test
    void the_review_of_a_map_of_areas_explains_no_pass_and_no_row_that_it_does_not_draw() throws IOException {
        areas("areas");
        Path zones = Files.writeString(
                folder.resolve("field.geojson"),
                "{\"type\":\"Feature\",\"properties\":{},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":"
                        + "[[[-93.1,41.7],[-93.0985,41.7],[-93.0985,41.701],[-93.1,41.701],[-93.1,41.7]]]}}");
        Path out = folder.resolve("review");
        Calls call = Calls.of(
                "report",
                folder.resolve("areas.geojson"),
                "--rig",
                folder.resolve("areas.yaml"),
                "--boundary",
                zones,
                "--for",
                "applicator",
                "--out",
                out);
        assertEquals(0, call.status(), call.err());
        String text;
        try (PDDocument pdf = Loader.loadPDF(out.resolve("pass-review.pdf").toFile())) {
            text = new PDFTextStripper().getText(pdf);
        }
        assertTrue(text.contains("June 13, 2026. Times of day are not in this file"), text);
        assertTrue(text.contains("skipped"), text);
        assertFalse(text.contains("pass number"), text);
        assertFalse(text.contains("row by row"), text);
    }

    @Test
    void a_meter_of_two_rows_is_counted_as_a_meter_and_its_rows_are_not_accused() throws IOException {
        String columns = "meter_01[gal/min],meter_02[gal/min],meter_03[gal/min]";
        job("shared", String.format(RIG, METERS), columns, "2.28,1.80,2.28");
        String said = Files.readString(folder.resolve("shared.txt"));
        assertTrue(said.contains("1 of 3 meters is more than 10% off its target volume: rows 3, 4 at"), said);
        assertTrue(said.contains("What single rows of a meter put on is not known."), said);
        assertFalse(said.contains("2 of 6 rows"), said);
        job("shared-fine", String.format(RIG, METERS), columns, "2.28,2.28,2.28");
        String fine = Files.readString(folder.resolve("shared-fine.txt"));
        assertFalse(fine.contains("every row"), fine);
        assertTrue(fine.contains("every meter came within 5%"), fine);
    }
}
