package io.rowledger.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.header.LogHints;
import io.rowledger.log.header.LogOptions;
import io.rowledger.log.taskdata.TaskDataBuild;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A log of every form cut in two: the parts together are the whole, to the last bit of every figure, and the whole stays. */
class LogCutTest {
    private static final LogOptions OPTIONS = new LogOptions(Map.of(), List.of("uan"), 3);
    private static final int RECORDS = 60;
    /** The machine drives north at 2 m/s, 1.8e-5 degrees a second; the second half is 0.02 degrees or 2.2 km farther on. */
    private static final double MIDDLE_DEG = 41.51;

    @TempDir
    Path dir;

    private static List<List<String>> rows() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of(
                "time", "lat", "lon", "fix", "flow_01[gal/min]", "flow_02[gal/min]", "flow_03[gal/min]", "niña"));
        for (int i = 0; i < RECORDS; i++) {
            rows.add(List.of(
                    String.format(Locale.ROOT, "2026-06-03T14:%02d:%02dZ", i < RECORDS / 2 ? 0 : 20, i % (RECORDS / 2)),
                    String.format(Locale.ROOT, "%.7f", 41.5 + 1.8e-5 * i + (i < RECORDS / 2 ? 0 : 0.02)),
                    "-93.5123457",
                    "4",
                    String.format(Locale.ROOT, "%.4f", 0.9 + 0.0013 * i),
                    String.format(Locale.ROOT, "%.4f", 0.91 + 0.0007 * i),
                    i == 7 ? "" : "0.93",
                    "ok"));
        }
        return rows;
    }

    private static String csv() {
        StringBuilder text = new StringBuilder();
        rows().forEach(row -> text.append(String.join(",", row)).append("\r\n"));
        return text.toString();
    }

    /** Cuts a log, writes the parts and holds them together against the whole. */
    private List<Path> assertCut(Path log, LogOptions options) throws IOException {
        byte[] before = Files.isDirectory(log) ? new byte[0] : Files.readAllBytes(log);
        List<Path> parts = new ArrayList<>();
        List<Integer> sizes = new ArrayList<>();
        for (int place = 0; place < 2; place++) {
            for (LogCut cut : LogCut.of(log, options, (latDeg, lonDeg) -> latDeg < MIDDLE_DEG ? 0 : 1)) {
                if (cut.has(place)) {
                    Path part = dir.resolve("part" + place + cut.name() + cut.ending(log.toString()));
                    try (OutputStream out = Files.newOutputStream(part)) {
                        cut.writeTo(place, out);
                    }
                    parts.add(part);
                    sizes.add(LogReader.read(List.of(part), options).table().records());
                }
            }
        }
        LogTable whole = LogReader.read(List.of(log), options).table();
        LogTable both = LogReader.read(parts, options).table();
        assertEquals(whole.records(), both.records());
        assertEquals(whole.records(), sizes.stream().mapToInt(Integer::intValue).sum(), sizes.toString());
        assertTrue(sizes.size() > 1, sizes.toString());
        for (int i = 0; i < whole.records(); i++) {
            assertEquals(whole.timeS(i), both.timeS(i), "time of record " + i);
            assertEquals(whole.latDeg(i), both.latDeg(i), "latitude of record " + i);
            assertEquals(whole.lonDeg(i), both.lonDeg(i), "longitude of record " + i);
            assertEquals(whole.fix(i), both.fix(i), "fix of record " + i);
            for (int r = 0; r < whole.outlets(); r++) {
                assertEquals(whole.flowLPerS(0, r, i), both.flowLPerS(0, r, i), "record " + i + ", row " + r);
            }
        }
        if (!Files.isDirectory(log)) {
            assertEquals(
                    new String(before, StandardCharsets.ISO_8859_1),
                    Files.readString(log, StandardCharsets.ISO_8859_1));
        }
        return parts;
    }

    @Test
    void plain_text_keeps_its_bytes_in_any_character_set() throws IOException {
        Path log = Files.write(dir.resolve("log.txt"), csv().getBytes(StandardCharsets.ISO_8859_1));
        List<Path> parts = assertCut(log, OPTIONS);
        assertTrue(parts.get(1).toString().endsWith(".txt"), parts.toString());
        String second = Files.readString(parts.get(1), StandardCharsets.ISO_8859_1);
        List<String> lines = csv().lines().toList();
        assertEquals(
                lines.get(0) + "\r\n" + String.join("\r\n", lines.subList(RECORDS / 2 + 1, RECORDS + 1)) + "\r\n",
                second);
    }

    @Test
    void packed_text_and_utf_16_become_csv() throws IOException {
        Path gz = dir.resolve("log.csv.gz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(gz))) {
            out.write(csv().getBytes(StandardCharsets.UTF_8));
        }
        assertCut(gz, OPTIONS);
        Path zip = dir.resolve("log.zip");
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(zip))) {
            out.putNextEntry(new ZipEntry("log.csv"));
            out.write(csv().getBytes(StandardCharsets.UTF_8));
        }
        assertCut(zip, OPTIONS);
        Path wide = Files.write(dir.resolve("wide.csv"), ("\ufeff" + csv()).getBytes(StandardCharsets.UTF_16LE));
        List<Path> parts = assertCut(wide, OPTIONS);
        assertTrue(Files.readString(parts.get(1)).contains("niña"), "UTF-8");
    }

    @Test
    void a_spreadsheet_becomes_csv() throws IOException {
        List<List<Object>> cells = new ArrayList<>();
        for (List<String> row : rows()) {
            List<Object> line = new ArrayList<>();
            for (int c = 0; c < row.size(); c++) {
                boolean number =
                        !cells.isEmpty() && c > 0 && c < 7 && !row.get(c).isEmpty();
                line.add(number ? (Object) Double.valueOf(row.get(c)) : row.get(c));
            }
            cells.add(line);
        }
        assertCut(new TestWorkbook().sheet("log", cells).writeTo(dir.resolve("log.xlsx")), OPTIONS);
    }

    @Test
    void points_of_a_map_become_csv() throws IOException {
        List<List<String>> rows = rows();
        List<String> features = new ArrayList<>();
        for (List<String> row : rows.subList(1, rows.size())) {
            StringBuilder attributes = new StringBuilder();
            for (int c = 0; c < row.size(); c++) {
                if (c != 1 && c != 2) {
                    attributes
                            .append(c == 0 ? "" : ", ")
                            .append("\"" + rows.get(0).get(c) + "\": \"" + row.get(c) + "\"");
                }
            }
            features.add("{\"type\": \"Feature\", \"geometry\": {\"type\": \"Point\", \"coordinates\": [" + row.get(2)
                    + ", " + row.get(1) + "]}, \"properties\": {" + attributes + "}}");
        }
        Path log = Files.writeString(
                dir.resolve("log.geojson"),
                "{\"type\": \"FeatureCollection\", \"features\": [" + String.join(",\n", features) + "]}");
        assertCut(log, OPTIONS);
    }

    @Test
    void each_time_log_of_task_data_becomes_csv() throws IOException {
        // 1,200 s at 2 m/s from 41.5 degrees north: the middle is passed after some 555 s.
        TaskDataBuild build = new TaskDataBuild(3, 1200, 2)
                .log(37, TaskDataBuild.section(0), i -> 60_000 + i)
                .log(37, TaskDataBuild.section(1), i -> 61_000 + i)
                .log(37, TaskDataBuild.section(2), i -> i % 7 == 0 ? 0 : 62_000);
        List<Path> parts = assertCut(build.writeTo(dir.resolve("TASKDATA")), OPTIONS);
        assertEquals(2, parts.size());
        assertTrue(parts.get(1).toString().endsWith("part1TLG00001.csv"), parts.toString());
    }

    @Test
    void times_of_day_past_midnight_are_not_dated_by_the_day_of_the_first() throws IOException {
        LogHints day = new LogHints(null, LocalDate.parse("2026-06-03"), null, 0, null, Double.NaN, null, Set.of());
        LogOptions options = new LogOptions(Map.of(), List.of("uan"), 3, day);
        String text = csv().replace("2026-06-03T14:00", "23:50")
                .replace("2026-06-03T14:20", "00:10")
                .replace("Z,", ",");
        Path log = Files.writeString(dir.resolve("log.csv"), text);
        UnusableInputException refused =
                assertThrows(UnusableInputException.class, () -> LogCut.of(log, options, (latDeg, lonDeg) -> 0));
        assertTrue(refused.getMessage().contains("past midnight"), refused.getMessage());
        Files.writeString(log, text.replace("00:10", "23:58"));
        assertCut(log, options);
    }

    @Test
    void polygons_are_refused_with_the_way_out() throws IOException {
        String ring = "[[[-93.01, 41.5], [-93.01, 41.501], [-93, 41.501], [-93, 41.5], [-93.01, 41.5]]]";
        Path log = Files.writeString(
                dir.resolve("areas.geojson"),
                "{\"type\": \"FeatureCollection\", \"features\": [{\"type\": \"Feature\", \"geometry\": {\"type\":"
                        + " \"Polygon\", \"coordinates\": " + ring + "}, \"properties\": {\"rate[gal/ac]\": 42}}]}");
        UnusableInputException refused =
                assertThrows(UnusableInputException.class, () -> LogCut.of(log, OPTIONS, (latDeg, lonDeg) -> 0));
        assertTrue(refused.getMessage().contains("export the polygons of each field"), refused.getMessage());
    }
}
