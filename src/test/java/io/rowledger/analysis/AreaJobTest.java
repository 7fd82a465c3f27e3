package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.coverage.CoverageDefect;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.Metering;
import io.rowledger.maps.TestShapefile;
import io.rowledger.text.Message;
import io.rowledger.zones.Zones;
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
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Coverage polygons with a rate, in every kind of map file. The areas are rectangles between parallels and meridians, whose
 * size on the ellipsoid has a closed form (J. Snyder, Map Projections, USGS Professional Paper 1395, 1987, equation 3-12).
 */
class AreaJobTest {
    private static final double SOUTH = 41.5;
    private static final double NORTH = 41.5018;
    private static final double WEST = -93.5;
    /** About 9 m at this latitude, degrees. */
    private static final double STRIP = 1.08e-4;

    private static final double L_PER_GAL = 3.785411784;
    private static final double M2_PER_ACRE = 4046.8564224;
    private static final double KG_PER_LB = 0.45359237;
    /** gal/ac in L/m². */
    private static final double RATE = L_PER_GAL / M2_PER_ACRE;

    private static final String RIG = MountedRig.text(12, "30 in", "42 gal/ac");

    @TempDir
    Path dir;

    /** Area between two parallels and two meridians on WGS 84, m². */
    private static double areaM2(double south, double north, double widthDeg) {
        double a = 6378137;
        double f = 1 / 298.257223563;
        double e = Math.sqrt(f * (2 - f));
        return a * a * (1 - e * e) * Math.toRadians(widthDeg) * (zone(north, e) - zone(south, e));
    }

    private static double zone(double latDeg, double e) {
        double s = Math.sin(Math.toRadians(latDeg));
        return s / (2 * (1 - e * e * s * s)) + Math.log((1 + e * s) / (1 - e * s)) / (4 * e);
    }

    private static double stripM2(double strips) {
        return areaM2(SOUTH, NORTH, strips * STRIP);
    }

    /** A ring from west to east in strips, clockwise and closed. */
    private static double[] ring(double from, double to) {
        double w = WEST + from * STRIP;
        double e = WEST + to * STRIP;
        return new double[] {w, SOUTH, w, NORTH, e, NORTH, e, SOUTH, w, SOUTH};
    }

    private static String feature(double from, double to, String properties) {
        double[] ring = ring(from, to);
        StringBuilder corners = new StringBuilder();
        for (int i = ring.length - 2; i >= 0; i -= 2) {
            corners.append(String.format(Locale.ROOT, "[%.9f,%.9f]%s", ring[i], ring[i + 1], i == 0 ? "" : ","));
        }
        return "{\"type\":\"Feature\",\"properties\":{" + properties
                + "},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[[" + corners + "]]}}";
    }

    private Path geoJson(String name, String... features) throws IOException {
        return Files.writeString(
                dir.resolve(name),
                "{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",\n", features) + "]}");
    }

    private Analysis analyze(Path log, String rig, @Nullable Path boundary) throws IOException {
        return analyze(log, rig, boundary, null, null);
    }

    private Analysis analyze(
            Path log, String rig, @Nullable Path boundary, @Nullable Path prescription, @Nullable Path keepOut)
            throws IOException {
        Path file = Files.writeString(dir.resolve("rig.yaml"), rig);
        return Pipeline.analyze(
                new JobFiles(List.of(log), file, boundary, prescription, keepOut, Double.NaN), 1, Progress.SILENT);
    }

    /** Three strips: the second overlaps the first by a tenth, and a whole strip is left out before the third. */
    private Path three(String time) throws IOException {
        String stamp = time.isEmpty() ? "" : ",\"Time\":\"" + time + "\"";
        return geoJson(
                "three.geojson",
                feature(0, 1, "\"Applied Rate (gal/ac)\":40" + stamp),
                feature(0.9, 1.9, "\"Applied Rate (gal/ac)\":44" + stamp),
                feature(2.9, 3.9, "\"Applied Rate (gal/ac)\":42" + stamp));
    }

    private Path boundary() throws IOException {
        return geoJson("field.geojson", feature(0, 3.9, "\"name\":\"North\""));
    }

    @Test
    void acres_volume_nitrogen_skips_and_overlaps_follow_from_the_polygons() throws IOException {
        Analysis a = analyze(three("2026-06-11T13:02Z"), RIG, boundary());
        double volumeL = RATE * stripM2(1) * (40 + 44 + 42);
        double close = 1e-4;
        assertEquals(stripM2(2.9), a.coverage().coveredAreaM2(), close * stripM2(2.9));
        assertEquals(stripM2(0.1), a.coverage().overlapAreaM2(), 1e-2 * stripM2(0.1));
        assertEquals(stripM2(1), a.coverage().skipAreaM2(), close * stripM2(1));
        assertEquals(stripM2(3.9), a.coverage().boundaryAreaM2(), close * stripM2(3.9));
        assertEquals(volumeL, a.rates().volumeL(0), close * volumeL);
        assertEquals(
                volumeL,
                a.coverage().received().get(0).gridVolumeL(),
                1e-3 * volumeL,
                "the grid holds what the polygons hold");
        double kgPerL = 11.06 * KG_PER_LB / L_PER_GAL * 0.32;
        assertEquals(volumeL * kgPerL, a.intervals().nitrogenKg().value(), close * volumeL * kgPerL);
        assertTrue(a.intervals().nitrogenKg().holds(volumeL * kgPerL));
        assertEquals(1, a.coverage().skips().size());
        assertEquals(1, a.coverage().overlaps().size());
        assertEquals(
                CoverageDefect.Cause.BETWEEN_AREAS, a.coverage().skips().get(0).cause());
    }

    @Test
    void nothing_is_said_of_rows_passes_and_flows() throws IOException {
        Analysis a = analyze(three("2026-06-11T13:02Z"), RIG, null);
        assertTrue(a.log().isAreas());
        assertEquals(Metering.WHOLE_BAR, a.log().metering());
        assertTrue(a.track().passes().isEmpty());
        assertTrue(a.findings().isEmpty());
        assertFalse(a.diagnosis().allClear(), "nothing was checked, which is no all-clear");
        assertFalse(a.intervals().coveredAreaM2().known(), "how exactly the areas were drawn is not in the file");
        assertTrue(Double.isNaN(io.rowledger.rate.VolumeBalance.of(a.log(), a.track(), a.delivery(), 0)
                .outsideWorkL()));
    }

    @Test
    void a_time_cut_to_the_minute_dates_the_job_and_none_leaves_it_undated() throws IOException {
        Analysis dated = analyze(three("2026-06-11T13:02Z"), RIG, null);
        assertEquals(
                (double) java.time.Instant.parse("2026-06-11T13:02:00Z").getEpochSecond(),
                dated.log().timeS(0));
        assertTrue(dated.log().isTimed());
        assertFalse(analyze(three(""), RIG, null).log().isTimed());
    }

    @Test
    void a_day_without_a_time_dates_the_job_however_it_is_written() throws IOException {
        LocalDate day = LocalDate.of(2026, 6, 13);
        for (String written : List.of("2026-06-13", "6/13/2026", "13-Jun-2026", "20260613", "2026-06-13T00:00:00Z")) {
            Analysis a = analyze(three(written), RIG, null);
            assertFalse(a.log().isTimed(), written);
            assertEquals(List.of(day, day), a.log().days(), written);
            assertTrue(a.notes().stream().anyMatch(note -> note.key().equals("notes.log.daysOnly")), written);
        }
        Path two = geoJson(
                "two-days.geojson",
                feature(0, 1, "\"rate[gal/ac]\":40,\"date\":\"2026-06-14\""),
                feature(1, 2, "\"rate[gal/ac]\":40,\"date\":\"2026-06-13\""),
                feature(2, 3, "\"rate[gal/ac]\":40,\"date\":\"\""));
        assertEquals(
                List.of(day, day.plusDays(1)), analyze(two, RIG, null).log().days());
    }

    @Test
    void a_day_that_can_be_read_two_ways_is_asked_about() throws IOException {
        Path log = three("6/11/2026");
        UnusableInputException e = assertThrows(UnusableInputException.class, () -> analyze(log, RIG, null));
        assertTrue(e.getMessage().contains("2026-11-06 read as day-month-year"), e.getMessage());
        Analysis told = analyze(log, RIG + "log: {date_order: month-day-year}\n", null);
        assertEquals(LocalDate.of(2026, 6, 11), told.log().days().get(0));
    }

    @Test
    void an_unknown_rate_is_neither_a_volume_nor_a_skip_for_certain() throws IOException {
        Path log = geoJson(
                "blank.geojson",
                feature(0, 1, "\"rate[gal/ac]\":40"),
                feature(1, 2, "\"rate[gal/ac]\":\"\""),
                feature(2, 3, "\"rate[gal/ac]\":42"));
        Analysis a = analyze(log, RIG, geoJson("b.geojson", feature(0, 3, "")));
        assertEquals(RATE * 82 * stripM2(1), a.rates().volumeL(0), 1e-4 * RATE * 82 * stripM2(1));
        assertEquals(stripM2(1), a.rates().unknownAreaM2(0), 1e-4 * stripM2(1));
        assertTrue(a.coverage().skips().isEmpty());
        assertEquals(1, a.coverage().doubtfulSkips().size());
        assertEquals(
                CoverageDefect.Cause.FLOW_NOT_KNOWN,
                a.coverage().doubtfulSkips().get(0).cause());
        assertFalse(a.intervals().products().get(0).volumeL().known(), "a volume that lacks a part has no bounds");
        assertTrue(a.notes().stream().anyMatch(note -> note.key().equals("notes.areas.unknown")));
    }

    @Test
    void a_rate_of_zero_covers_nothing() throws IOException {
        Path log = geoJson("zero.geojson", feature(0, 1, "\"rate[gal/ac]\":40"), feature(1, 2, "\"rate[gal/ac]\":0"));
        Analysis a = analyze(log, RIG, geoJson("b.geojson", feature(0, 2, "")));
        assertEquals(stripM2(1), a.coverage().coveredAreaM2(), 1e-4 * stripM2(1));
        assertEquals(stripM2(1), a.coverage().skipAreaM2(), 1e-4 * stripM2(1));
    }

    @Test
    void a_polygon_that_stands_twice_in_the_file_counts_once() throws IOException {
        Path log = geoJson("twice.geojson", feature(0, 1, "\"rate[gal/ac]\":40"), feature(0, 1, "\"rate[gal/ac]\":40"));
        Analysis a = analyze(log, RIG, null);
        assertEquals(0, a.coverage().overlapAreaM2());
        assertEquals(1, a.log().sources().get(0).dropped().duplicate());
    }

    @Test
    void nitrogen_per_area_becomes_a_volume_by_density_and_analysis() throws IOException {
        Path log = geoJson("n.geojson", feature(0, 1, "\"Nitrogen Rate (lb/ac)\":150"));
        Analysis a = analyze(log, RIG, null);
        double gallons = 150 / (11.06 * 0.32) * stripM2(1) / M2_PER_ACRE;
        assertEquals(gallons * L_PER_GAL, a.rates().volumeL(0), 1e-4 * gallons * L_PER_GAL);
    }

    @Test
    void a_prescription_sets_the_target_place_by_place() throws IOException {
        Path log = geoJson("log.geojson", feature(0, 2, "\"rate[gal/ac]\":40"));
        Path zones = geoJson(
                "zones.geojson",
                feature(0, 1, "\"name\":\"A\",\"target\":\"40 gal/ac\""),
                feature(1, 2, "\"name\":\"B\",\"target\":\"80 gal/ac\""));
        Analysis a = analyze(log, RIG, null, zones, null);
        double targetL = RATE * stripM2(1) * (40 + 80);
        assertEquals(targetL, a.rates().targetVolumeL(0), 1e-4 * targetL);
        assertEquals(50, a.coverage().received().get(0).within5Pct(), 0.5, "half of the ground is on its target");
    }

    @Test
    void zones_are_compared_with_what_the_polygons_put_on_them() throws IOException {
        Path log = geoJson(
                "log.geojson",
                feature(0, 1, "\"rate[gal/ac]\":41"),
                feature(1, 2, "\"rate[gal/ac]\":60"),
                feature(2, 3, "\"rate[gal/ac]\":50"));
        Path zones = geoJson(
                "zones.geojson",
                feature(0, 1.5, "\"name\":\"A\",\"target\":\"40 gal/ac\""),
                feature(1.5, 2.5, "\"name\":\"B\",\"target\":\"60 gal/ac\""));
        Zones found = analyze(log, RIG, null, zones, null).zones();
        assertNotNull(found);
        double strip = RATE * stripM2(1);
        // Cells that the edge of a zone and that of the ground both cut hold up to a quarter of their area too little.
        double close = 4e-3;
        Zones.ZoneSums a = found.zones().get(0);
        Zones.ZoneSums b = found.zones().get(1);
        assertEquals(stripM2(1.5), a.coveredM2(), close * stripM2(1.5));
        assertEquals(strip * (41 + 30), a.products().get(0).receivedL(), close * strip * 71);
        assertEquals(strip * 1.5 * 40, a.products().get(0).plannedCoveredL(), close * strip * 60);
        assertEquals(strip * (30 + 25), b.products().get(0).receivedL(), close * strip * 55);
        assertEquals(100.0 * 2 / 3, a.products().get(0).within5Pct(), 4, "the strip of 41 is within 5 % of 40");
        assertEquals(stripM2(0.5), found.outsideCoveredM2(), 1e-2 * stripM2(0.5));
        assertEquals(strip * 25, found.outsideReceivedL()[0], 1e-2 * strip * 25);
        assertEquals(
                Message.of("notes.zone_changes.no_path"), found.changes().get(0).why());
    }

    @Test
    void a_prescription_of_another_field_is_refused() throws IOException {
        Path log = geoJson("log.geojson", feature(0, 1, "\"rate[gal/ac]\":41"));
        Path zones = geoJson("zones.geojson", feature(2, 3, "\"name\":\"A\",\"target\":\"40 gal/ac\""));
        assertThrows(UnusableInputException.class, () -> analyze(log, RIG, null, zones, null));
    }

    @Test
    void setbacks_get_the_volume_inside_them_without_pass_or_row() throws IOException {
        Path log = geoJson("log.geojson", feature(0, 2, "\"rate[gal/ac]\":40"));
        Path keepOut = geoJson("pond.geojson", feature(1.5, 3, "\"name\":\"Pond\",\"setback\":\"0 ft\""));
        Analysis a = analyze(log, RIG, null, null, keepOut);
        assertNotNull(a.setbacks());
        double insideL = RATE * 40 * stripM2(0.5);
        assertEquals(insideL, a.setbacks().places().get(0).totalVolumeL(), 1e-3 * insideL);
        assertTrue(a.setbacks().places().get(0).anythingInside());
        assertTrue(a.setbacks().places().get(0).rows().isEmpty());
    }

    private static Map<String, Object> rate(Object value) {
        return new LinkedHashMap<>(Map.of("AppliedRat", value));
    }

    private void assertTwin(Path log) throws IOException {
        String rig = RIG + "columns: {\"rate[gal/ac]\": AppliedRat}\n";
        Analysis a = analyze(log, rig, null);
        double volumeL = RATE * stripM2(1) * (40 + 44);
        assertEquals(volumeL, a.rates().volumeL(0), 1e-4 * volumeL);
        assertEquals(stripM2(1.9), a.coverage().coveredAreaM2(), 1e-4 * stripM2(1.9));
    }

    @Test
    void a_shapefile_and_its_zip_are_read_with_nothing_but_a_line_under_columns() throws IOException {
        TestShapefile shapes =
                TestShapefile.polygons().add(ring(0, 1), rate(40.0)).add(ring(0.9, 1.9), rate(44.0));
        assertTwin(shapes.write(dir, "cover", TestShapefile.WGS84));
        assertTwin(shapes.zip(dir, "packed", TestShapefile.WGS84));
    }

    @Test
    void kml_is_read() throws IOException {
        StringBuilder marks = new StringBuilder();
        for (double[] one : new double[][] {{0, 1, 40}, {0.9, 1.9, 44}}) {
            double[] ring = ring(one[0], one[1]);
            StringBuilder corners = new StringBuilder();
            for (int i = ring.length - 2; i >= 0; i -= 2) {
                corners.append(String.format(Locale.ROOT, "%.9f,%.9f,0 ", ring[i], ring[i + 1]));
            }
            marks.append("<Placemark><ExtendedData><Data name=\"AppliedRat\"><value>")
                    .append(one[2])
                    .append("</value></Data></ExtendedData><Polygon><outerBoundaryIs><LinearRing><coordinates>")
                    .append(corners)
                    .append("</coordinates></LinearRing></outerBoundaryIs></Polygon></Placemark>\n");
        }
        assertTwin(Files.writeString(
                dir.resolve("cover.kml"),
                "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<kml xmlns=\"http://www.opengis.net/kml/2.2\"><Document>"
                        + marks + "</Document></kml>"));
    }

    @Test
    void a_geopackage_is_read() throws IOException, SQLException {
        Path file = dir.resolve("cover.gpkg");
        try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement s = c.createStatement()) {
            s.execute("CREATE TABLE gpkg_spatial_ref_sys (srs_name TEXT, srs_id INTEGER PRIMARY KEY, organization TEXT,"
                    + " organization_coordsys_id INTEGER, definition TEXT, description TEXT)");
            s.execute("INSERT INTO gpkg_spatial_ref_sys VALUES ('WGS 84', 4326, 'EPSG', 4326, 'GEOGCS', '')");
            s.execute("CREATE TABLE gpkg_contents (table_name TEXT PRIMARY KEY, data_type TEXT, srs_id INTEGER)");
            s.execute("INSERT INTO gpkg_contents VALUES ('cover', 'features', 4326)");
            s.execute("CREATE TABLE gpkg_geometry_columns (table_name TEXT, column_name TEXT, geometry_type_name TEXT,"
                    + " srs_id INTEGER, z TINYINT, m TINYINT)");
            s.execute("INSERT INTO gpkg_geometry_columns VALUES ('cover', 'geom', 'POLYGON', 4326, 0, 0)");
            s.execute("CREATE TABLE cover (fid INTEGER PRIMARY KEY, geom BLOB, AppliedRat REAL)");
            try (PreparedStatement insert = c.prepareStatement("INSERT INTO cover (geom, AppliedRat) VALUES (?, ?)")) {
                for (double[] one : new double[][] {{0, 1, 40}, {0.9, 1.9, 44}}) {
                    insert.setBytes(1, geometry(ring(one[0], one[1])));
                    insert.setDouble(2, one[2]);
                    insert.execute();
                }
            }
        }
        assertTwin(file);
    }

    /** A GeoPackage header (OGC 12-128, 2.1.3) and a polygon in WKB. */
    private static byte[] geometry(double[] ring) {
        ByteBuffer bytes = ByteBuffer.allocate(8 + 13 + 8 * ring.length).order(ByteOrder.LITTLE_ENDIAN);
        bytes.put((byte) 'G').put((byte) 'P').put((byte) 0).put((byte) 1).putInt(4326);
        bytes.put((byte) 1).putInt(3).putInt(1).putInt(ring.length / 2);
        for (double each : ring) {
            bytes.putDouble(each);
        }
        return bytes.array();
    }

    @Test
    void polygons_of_two_fields_are_asked_about() throws IOException {
        // 100 strips of 9 m lie between the two.
        Path log =
                geoJson("two.geojson", feature(0, 1, "\"rate[gal/ac]\":40"), feature(101, 102, "\"rate[gal/ac]\":40"));
        Analysis two = analyze(log, RIG, null);
        double apartM = stripM2(100) / (111_080 * (NORTH - SOUTH));
        assertEquals(apartM, (double) FieldParts.apartM(two), 0.01 * apartM);
        assertTrue(assertThrows(UnusableInputException.class, () -> FieldParts.requireOne(two))
                .getMessage()
                .contains("work in places"));
        assertEquals(0, FieldParts.apartM(analyze(three(""), RIG, null)));
    }

    /** The plain polygons of the cases, for which 0.1 % is the bound of every other way to write them. */
    @TestFactory
    Stream<DynamicTest> every_other_way_to_write_the_polygons_gives_the_same_ground_and_volume() throws IOException {
        Path cases = Path.of("src/test/resources/cases/good-areas");
        Analysis plain = ofCase(cases.resolve("polygons-plain"));
        double stripM2 = areaM2(41.5, 41.502, 1e-4);
        assertEquals(3 * stripM2, plain.coverage().coveredAreaM2(), 1e-4 * stripM2);
        assertEquals(RATE * 126 * stripM2, plain.rates().volumeL(0), 1e-4 * RATE * 126 * stripM2);
        List<Path> folders;
        try (Stream<Path> list = Files.list(cases)) {
            folders = list.sorted().toList();
        }
        assertTrue(folders.size() >= 10, folders.size() + " cases");
        return folders.stream()
                .map(folder -> DynamicTest.dynamicTest(folder.getFileName().toString(), () -> {
                    assertTrue(Files.size(folder.resolve("why.txt")) > 0);
                    Analysis twin = ofCase(folder);
                    double coveredM2 = plain.coverage().coveredAreaM2();
                    double volumeL = plain.rates().volumeL(0);
                    assertEquals(coveredM2, twin.coverage().coveredAreaM2(), 1e-3 * coveredM2);
                    assertEquals(volumeL, twin.rates().volumeL(0), 1e-3 * volumeL);
                    assertEquals(0, twin.coverage().overlapAreaM2(), 1e-6);
                }));
    }

    private static Analysis ofCase(Path folder) throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            Path log = list.filter(path -> path.getFileName().toString().startsWith("log."))
                    .findFirst()
                    .orElseThrow();
            return Pipeline.analyze(new JobFiles(List.of(log), folder.resolve("rig.yaml"), null), 1, Progress.SILENT);
        }
    }

    @Test
    void a_flow_or_a_rate_for_each_row_is_refused_with_what_to_write() throws IOException {
        Path flow = geoJson("flow.geojson", feature(0, 1, "\"time\":\"2026-06-11T13:02Z\",\"flow[gal/min]\":12"));
        assertTrue(assertThrows(UnusableInputException.class, () -> analyze(flow, RIG, null))
                .getMessage()
                .contains("found a flow in a file of polygons; expected one rate per area for each polygon"));
        StringBuilder rows = new StringBuilder("\"Row 1 Rate (gal/ac)\":40");
        for (int row = 2; row <= 12; row++) {
            rows.append(",\"Row ").append(row).append(" Rate (gal/ac)\":40");
        }
        Path perRow = geoJson("rows.geojson", feature(0, 1, rows.toString()));
        assertTrue(assertThrows(UnusableInputException.class, () -> analyze(perRow, RIG, null))
                .getMessage()
                .contains("found a rate for each row in a file of polygons"));
    }

    @Test
    void a_rate_that_cannot_be_read_stops_the_job_instead_of_shrinking_it() throws IOException {
        Path log = geoJson(
                "bad.geojson",
                feature(0, 1, "\"rate[gal/ac]\":40"),
                feature(1, 2, "\"rate[gal/ac]\":\"x\""),
                feature(2, 3, "\"rate[gal/ac]\":40"));
        assertTrue(assertThrows(UnusableInputException.class, () -> analyze(log, RIG, null))
                .getMessage()
                .contains("1 polygon with a time or a rate that can't be read, the first as feature 2"));
    }

    @Test
    void polygons_beside_points_and_a_file_given_twice_are_refused() throws IOException {
        Path mixed = geoJson(
                "mixed.geojson",
                feature(0, 1, "\"rate[gal/ac]\":40"),
                "{\"type\":\"Feature\",\"properties\":{\"rate[gal/ac]\":40},\"geometry\":{\"type\":\"Point\",\"coordinates\":"
                        + "[-93.5,41.5]}}");
        assertTrue(assertThrows(UnusableInputException.class, () -> analyze(mixed, RIG, null))
                .getMessage()
                .contains("points beside polygons"));
        Path log = geoJson("log.geojson", feature(0, 1, "\"rate[gal/ac]\":40"));
        Path rig = Files.writeString(dir.resolve("rig.yaml"), RIG);
        JobFiles twice = new JobFiles(List.of(log, log), rig, null);
        assertTrue(assertThrows(UnusableInputException.class, () -> Pipeline.analyze(twice, 1, Progress.SILENT))
                .getMessage()
                .contains("found the same file as"));
    }
}
