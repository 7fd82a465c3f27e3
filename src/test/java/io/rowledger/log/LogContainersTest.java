package io.rowledger.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.LocalPlane;
import io.rowledger.log.header.LogOptions;
import io.rowledger.maps.TestShapefile;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The plain log of the good cases as points of a map and as a spreadsheet: every form gives the plain log's figures. */
class LogContainersTest {
    private static final Path PLAIN = Path.of("src/test/resources/cases/good-log/plain/log.csv");
    private static final LogOptions OPTIONS = new LogOptions(Map.of(), List.of("uan"), 3);
    /** A shapefile's table keeps 10 characters of a name: the rig file says which column is what. */
    private static final Map<String, String> DBF_NAMES = Map.of(
            "flow_01[gal/min]", "flow_01[ga",
            "flow_02[gal/min]", "flow_02[ga",
            "flow_03[gal/min]", "flow_03[ga",
            "speed[mph]", "speed[mph]",
            "target[gal/ac]", "target[gal",
            "pressure[psi]", "pressure[p",
            "flow_total[gal/min]", "flow_total",
            "course[deg]", "course[deg");

    @TempDir
    Path dir;

    private static List<List<String>> cells() throws IOException {
        return Files.readAllLines(PLAIN).stream()
                .map(line -> Arrays.asList(line.split(",", -1)))
                .toList();
    }

    private static void assertPlain(Path log, LogOptions options) {
        LogTable plain = LogReader.read(List.of(PLAIN), OPTIONS).table();
        LogTable twin = LogReader.read(List.of(log), options).table();
        assertEquals(plain.records(), twin.records());
        assertEquals(plain.outlets(), twin.outlets());
        for (int i = 0; i < plain.records(); i++) {
            String at = "record " + i;
            assertEquals(plain.timeS(i), twin.timeS(i), 1e-3, at);
            assertEquals(plain.latDeg(i), twin.latDeg(i), 1e-9, at);
            assertEquals(plain.lonDeg(i), twin.lonDeg(i), 1e-9, at);
            assertEquals(plain.fix(i), twin.fix(i), at);
            assertEquals(plain.down(i), twin.down(i), at);
            assertEquals(plain.speedMps(i), twin.speedMps(i), 1e-12, at);
            assertEquals(plain.targetLPerM2(0, i), twin.targetLPerM2(0, i), 1e-12, at);
            for (int r = 0; r < plain.outlets(); r++) {
                assertEquals(plain.flowLPerS(0, r, i), twin.flowLPerS(0, r, i), 1e-9, at + ", outlet " + r);
            }
        }
    }

    private static Map<String, Object> attributes(List<String> header, List<String> row, boolean position) {
        Map<String, Object> attributes = new LinkedHashMap<>();
        for (int c = 0; c < header.size(); c++) {
            if (c == 0) {
                attributes.put(header.get(c), row.get(c));
            } else if (position || (c != 1 && c != 2)) {
                // Empty cells stand for unknown values.
                attributes.put(header.get(c), row.get(c).isEmpty() ? "" : Double.valueOf(row.get(c)));
            }
        }
        return attributes;
    }

    private TestShapefile points(double[][] xy) throws IOException {
        List<List<String>> cells = cells();
        TestShapefile points = TestShapefile.points();
        for (int i = 1; i < cells.size(); i++) {
            points.add(xy[i - 1], attributes(cells.get(0), cells.get(i), false));
        }
        return points;
    }

    private static double[][] lonLat() throws IOException {
        List<List<String>> cells = cells();
        double[][] lonLat = new double[cells.size() - 1][];
        for (int i = 1; i < cells.size(); i++) {
            lonLat[i - 1] = new double[] {
                Double.parseDouble(cells.get(i).get(2)),
                Double.parseDouble(cells.get(i).get(1))
            };
        }
        return lonLat;
    }

    @Test
    void points_of_a_shapefile_are_a_log() throws IOException {
        LogOptions options = new LogOptions(DBF_NAMES, List.of("uan"), 3);
        assertPlain(points(lonLat()).write(dir, "points", TestShapefile.WGS84), options);
        assertPlain(points(lonLat()).zip(dir, "zipped", TestShapefile.WGS84), options);
        assertEquals(
                List.of("points.dbf", "points.prj"),
                LogReader.read(List.of(dir.resolve("points.shp")), options).beside().stream()
                        .map(file -> file.name().replace(dir + "/", ""))
                        .toList());
    }

    /** Zone 16 north has its central meridian at 87 degrees west: easting 500,000 m + 0.9996 · east of it. */
    @Test
    void points_in_utm_come_back_to_degrees() throws IOException {
        LocalPlane zone16 = new LocalPlane(6_378_137, 298.257223563, 0, -87, 0.9996);
        double[][] utm = lonLat();
        double[] plane = new double[2];
        for (double[] point : utm) {
            zone16.forward(point[1], point[0], plane);
            point[0] = 500_000 + plane[0];
            point[1] = plane[1];
        }
        assertPlain(
                points(utm)
                        .zip(
                                dir,
                                "utm",
                                TestShapefile.UTM_15N.replace("-93.0", "-87.0").replace("15N", "16N")),
                new LogOptions(DBF_NAMES, List.of("uan"), 3));
    }

    @Test
    void points_of_geojson_are_a_log() throws IOException {
        List<List<String>> cells = cells();
        double[][] lonLat = lonLat();
        List<String> features = new ArrayList<>();
        for (int i = 1; i < cells.size(); i++) {
            List<String> properties = new ArrayList<>();
            attributes(cells.get(0), cells.get(i), true)
                    .forEach((name, value) -> properties.add(
                            "\"" + name + "\": " + (value instanceof Double ? value : "\"" + value + "\"")));
            features.add("{\"type\": \"Feature\", \"properties\": {" + String.join(", ", properties)
                    + "}, \"geometry\": {\"type\": \"Point\", \"coordinates\": [" + lonLat[i - 1][0] + ", "
                    + lonLat[i - 1][1] + "]}}");
        }
        assertPlain(
                Files.writeString(
                        dir.resolve("points.geojson"),
                        "{\"type\": \"FeatureCollection\", \"features\": [\n" + String.join(",\n", features)
                                + "\n]}\n"),
                OPTIONS);
    }

    /** OGC 12-128: the tables that must be there, and points as "GP", version 0, flags, reference system, WKB. */
    @Test
    void points_of_a_geopackage_are_a_log() throws IOException, SQLException {
        List<List<String>> cells = cells();
        double[][] lonLat = lonLat();
        Path file = dir.resolve("points.gpkg");
        try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement s = db.createStatement()) {
            s.execute("CREATE TABLE gpkg_spatial_ref_sys (srs_name TEXT, srs_id INTEGER PRIMARY KEY, organization TEXT,"
                    + " organization_coordsys_id INTEGER, definition TEXT, description TEXT)");
            s.execute("INSERT INTO gpkg_spatial_ref_sys VALUES ('WGS 84', 4326, 'EPSG', 4326, 'GEOGCS', '')");
            s.execute("CREATE TABLE gpkg_contents (table_name TEXT PRIMARY KEY, data_type TEXT, srs_id INTEGER)");
            s.execute("INSERT INTO gpkg_contents VALUES ('points', 'features', 4326)");
            s.execute("CREATE TABLE gpkg_geometry_columns (table_name TEXT, column_name TEXT, geometry_type_name TEXT,"
                    + " srs_id INTEGER, z INTEGER, m INTEGER)");
            s.execute("INSERT INTO gpkg_geometry_columns VALUES ('points', 'geom', 'POINT', 4326, 0, 0)");
            List<String> header = cells.get(0);
            StringBuilder columns = new StringBuilder();
            header.forEach(name -> columns.append(", \"").append(name).append('"'));
            s.execute("CREATE TABLE points (fid INTEGER PRIMARY KEY, geom BLOB" + columns + ")");
            String marks = ", ?".repeat(header.size());
            try (PreparedStatement insert = db.prepareStatement("INSERT INTO points VALUES (?, ?" + marks + ")")) {
                for (int i = 1; i < cells.size(); i++) {
                    insert.setInt(1, i);
                    insert.setBytes(
                            2,
                            ByteBuffer.allocate(29)
                                    .order(ByteOrder.LITTLE_ENDIAN)
                                    .put(new byte[] {'G', 'P', 0, 1})
                                    .putInt(4326)
                                    .put((byte) 1)
                                    .putInt(1)
                                    .putDouble(lonLat[i - 1][0])
                                    .putDouble(lonLat[i - 1][1])
                                    .array());
                    for (int c = 0; c < header.size(); c++) {
                        String cell = cells.get(i).get(c);
                        if (c == 0) {
                            insert.setString(3, cell);
                        } else if (cell.isEmpty()) {
                            insert.setNull(3 + c, java.sql.Types.REAL);
                        } else {
                            insert.setDouble(3 + c, Double.parseDouble(cell));
                        }
                    }
                    insert.executeUpdate();
                }
            }
        }
        assertPlain(file, OPTIONS);
    }

    private static List<List<Object>> sheet(boolean dates) throws IOException {
        List<List<Object>> rows = new ArrayList<>();
        for (List<String> line : cells()) {
            List<Object> row = new ArrayList<>();
            for (int c = 0; c < line.size(); c++) {
                boolean text = rows.isEmpty() || (c == 0 && !dates);
                String cell = line.get(c);
                row.add(cell.isEmpty() ? null : text ? cell : c == 0 ? (Object) serial(cell) : Double.valueOf(cell));
            }
            rows.add(row);
        }
        return rows;
    }

    /** Days since 1899-12-30, the calendar of spreadsheets after February 1900. */
    private static double serial(String utc) {
        LocalDateTime at = LocalDateTime.parse(utc.replace("Z", ""));
        return ChronoUnit.MICROS.between(LocalDateTime.of(1899, 12, 30, 0, 0), at) / 86_400e6;
    }

    @Test
    void a_sheet_of_a_workbook_is_a_log() throws IOException {
        assertPlain(new TestWorkbook().sheet("log", sheet(false)).writeTo(dir.resolve("log.xlsx")), OPTIONS);
        assertPlain(
                new TestWorkbook()
                        .sheet("notes", List.of(List.of("exported by the shop")))
                        .sheet("log", sheet(false))
                        .writeTo(dir.resolve("notes.xlsx")),
                OPTIONS);
        assertPlain(
                new TestWorkbook().withoutStyles().sheet("log", sheet(false)).writeTo(dir.resolve("bare.xlsx")),
                OPTIONS);
    }

    @Test
    void cells_formatted_as_dates_are_times_without_a_zone() throws IOException {
        Path log = new TestWorkbook().sheet("log", sheet(true)).writeTo(dir.resolve("dates.xlsx"));
        assertPlain(log, OPTIONS);
        List<String> notes = LogNotes.of(LogReader.read(List.of(log), OPTIONS));
        assertTrue(notes.stream().anyMatch(note -> note.contains("no zone")), notes.toString());
    }

    private String message(Path log) {
        return assertThrows(UnusableInputException.class, () -> LogReader.read(List.of(log), OPTIONS))
                .getMessage()
                .replace(dir + "/", "");
    }

    @Test
    void two_sheets_of_data_are_asked_about() throws IOException {
        assertEquals(
                "two.xlsx: found a workbook with several sheets of data: North, South; expected one sheet with the log,"
                        + " column names in its first row. Hint: delete or hide the other sheets, or save the one with the log"
                        + " as CSV.",
                message(new TestWorkbook()
                        .sheet("North", sheet(false))
                        .sheet("South", sheet(false))
                        .writeTo(dir.resolve("two.xlsx"))));
        assertEquals(
                "none.xlsx: found a workbook without a sheet of data; expected one sheet with the log, column names in its"
                        + " first row. Hint: export the log again.",
                message(new TestWorkbook().sheet("North", List.of()).writeTo(dir.resolve("none.xlsx"))));
    }

    @Test
    void polygons_have_no_records() {
        double[] ring = {-93.01, 45, -93.01, 45.01, -93, 45.01, -93, 45, -93.01, 45};
        Path map = TestShapefile.polygons().add(ring, Map.of("rate", 42)).write(dir, "map", TestShapefile.WGS84);
        assertEquals(
                "map.shp: found polygons, the ground that was covered, instead of records; expected a log with a record for"
                        + " each position: polygons have no path and no rows. Hint: run rowledger report with the polygons"
                        + " alone for acres, volume, nitrogen, skips and overlaps, or export the points that the console"
                        + " logged.",
                message(map));
    }

    @Test
    void a_message_about_a_cell_names_the_row_of_the_sheet() throws IOException {
        List<List<Object>> rows = new ArrayList<>(sheet(false));
        rows.add(1, List.of());
        List<Object> broken = new ArrayList<>(rows.get(4));
        broken.set(9, "many");
        rows.set(4, broken);
        Path log = new TestWorkbook().sheet("log", rows).writeTo(dir.resolve("broken.xlsx"));
        List<String> notes = LogNotes.of(LogReader.read(List.of(log), OPTIONS));
        assertTrue(notes.stream().anyMatch(note -> note.contains("line 5")), notes.toString());
    }
}
