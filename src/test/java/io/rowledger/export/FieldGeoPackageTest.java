package io.rowledger.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.results.JsonNumbers;
import io.rowledger.results.WrittenJob;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import javax.xml.parsers.DocumentBuilderFactory;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.PolygonArea;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.WKBReader;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;

/** The GeoPackage, opened with JDBC and read with JTS's own reader, against OGC 12-128r18 and the GeoJSON layers. */
@TestInstance(Lifecycle.PER_CLASS)
class FieldGeoPackageTest {
    private static final List<String> LAYERS = List.of("strips", "passes", "overlaps", "skips", "findings", "received");

    private WrittenJob job;
    private Connection db;

    @BeforeAll
    void write_a_job(@TempDir Path folder) throws SQLException, IOException {
        job = new WrittenJob(folder);
        // A copy in a place of its own: what is read here must not be what a lock or journal beside it says.
        Path copy = Files.copy(job.layer("field.gpkg"), folder.resolve("copy.gpkg"));
        db = DriverManager.getConnection("jdbc:sqlite:" + copy);
    }

    @AfterAll
    void close() throws SQLException {
        db.close();
    }

    private List<List<Object>> rows(String sql) throws SQLException {
        List<List<Object>> all = new ArrayList<>();
        try (Statement s = db.createStatement();
                ResultSet r = s.executeQuery(sql)) {
            while (r.next()) {
                List<Object> row = new ArrayList<>();
                for (int c = 1; c <= r.getMetaData().getColumnCount(); c++) {
                    row.add(r.getObject(c));
                }
                all.add(row);
            }
        }
        return all;
    }

    private Object one(String sql) throws SQLException {
        return rows(sql).get(0).get(0);
    }

    /** The geometries of a table; checks each header against OGC 12-128, section 2.1.3, on the way. */
    private List<Geometry> geometries(String table) throws Exception {
        List<Geometry> all = new ArrayList<>();
        for (List<Object> row : rows("SELECT geom FROM " + table + " ORDER BY fid")) {
            byte[] blob = (byte[]) row.get(0);
            ByteBuffer head = ByteBuffer.wrap(blob).order(ByteOrder.LITTLE_ENDIAN);
            assertEquals("GP", new String(blob, 0, 2, StandardCharsets.US_ASCII));
            assertEquals(0, blob[2]);
            assertEquals(0b011, blob[3], "little endian, envelope x and y, not empty, standard type");
            assertEquals(4326, head.getInt(4));
            Geometry geometry = new WKBReader().read(Arrays.copyOfRange(blob, 40, blob.length));
            Envelope box = geometry.getEnvelopeInternal();
            assertEquals(
                    box,
                    new Envelope(head.getDouble(8), head.getDouble(16), head.getDouble(24), head.getDouble(32)),
                    table);
            all.add(geometry);
        }
        return all;
    }

    @Test
    void it_is_a_sound_database_with_the_marks_of_a_geopackage() throws SQLException {
        // Requirement 2: "GPKG" in ASCII; version 1.3.0 as 10300.
        assertEquals(0x47504B47, one("PRAGMA application_id"));
        assertEquals(10300, one("PRAGMA user_version"));
        assertEquals("ok", one("PRAGMA integrity_check"));
        assertEquals(List.of(), rows("PRAGMA foreign_key_check"));
        // Requirement 11: these three at least.
        assertEquals(
                List.of(List.of(-1), List.of(0), List.of(4326)),
                rows("SELECT srs_id FROM gpkg_spatial_ref_sys ORDER BY srs_id"));
    }

    @Test
    void every_layer_is_registered_with_its_box_and_its_geometries_lie_in_it() throws Exception {
        assertEquals(
                LAYERS,
                rows("SELECT table_name FROM gpkg_contents WHERE data_type = 'features' ORDER BY rowid").stream()
                        .map(row -> row.get(0))
                        .toList());
        for (String layer : LAYERS) {
            String where = " FROM gpkg_contents WHERE table_name = '" + layer + "'";
            assertEquals(4326, one("SELECT srs_id" + where));
            Envelope box = new Envelope();
            geometries(layer).forEach(geometry -> box.expandToInclude(geometry.getEnvelopeInternal()));
            assertFalse(box.isNull(), layer);
            List<Object> stated =
                    rows("SELECT min_x, max_x, min_y, max_y" + where).get(0);
            assertEquals(List.of(box.getMinX(), box.getMaxX(), box.getMinY(), box.getMaxY()), stated, layer);
            String type = (String)
                    one("SELECT geometry_type_name FROM gpkg_geometry_columns WHERE table_name = '" + layer + "'");
            geometries(layer)
                    .forEach(geometry -> assertTrue(geometry.getGeometryType().equalsIgnoreCase(type), layer));
        }
    }

    @Test
    void strips_skips_and_doubles_are_those_of_the_plain_layers() throws Exception {
        for (String layer : List.of("strips", "overlaps", "skips")) {
            JsonNode features = job.features(layer + ".geojson");
            List<Geometry> geometries = geometries(layer);
            assertTrue(!geometries.isEmpty(), layer);
            assertEquals(features.size(), geometries.size());
            List<List<Object>> areas = rows("SELECT area_m2 FROM " + layer + " ORDER BY fid");
            for (int i = 0; i < geometries.size(); i++) {
                JsonNode feature = features.get(i);
                assertEquals(feature.get("properties").get("area_m2").asDouble(), (double)
                        areas.get(i).get(0));
                Set<String> corners = new TreeSet<>();
                feature.get("geometry")
                        .get("coordinates")
                        .forEach(ring -> ring.forEach(c ->
                                corners.add(corner(c.get(0).asDouble(), c.get(1).asDouble()))));
                Set<String> found = new TreeSet<>();
                for (Coordinate c : geometries.get(i).getCoordinates()) {
                    found.add(corner(c.x, c.y));
                }
                assertEquals(corners, found, layer + " " + i);
            }
        }
    }

    private static String corner(double lon, double lat) {
        return Math.round(lon * 1e8) + " " + Math.round(lat * 1e8);
    }

    @Test
    void passes_add_up_to_what_the_simulator_metered_and_findings_are_the_plain_ones() throws Exception {
        double[] metered = job.job.truth().meteredL();
        assertEquals(metered[0], (double) one("SELECT sum(uan_volume_l) FROM passes"), metered[0] * 0.01);
        assertEquals(metered[1], (double) one("SELECT sum(ats_volume_l) FROM passes"), metered[1] * 0.01);
        assertEquals(
                job.features("findings.geojson").size(), geometries("findings").size());
        assertEquals(
                1L, ((Number) one("SELECT count(*) FROM findings WHERE kind = 'plugged' AND rows = '7'")).longValue());
    }

    @Test
    void received_squares_hold_every_litre_and_every_square_metre() throws Exception {
        for (String product : List.of("uan", "ats")) {
            int p = product.equals("uan") ? 0 : 1;
            double logL = job.analysis.coverage().received().get(p).logVolumeL();
            double sumL = (double) one("SELECT sum(" + product + "_volume_l) FROM received");
            // The grid's own promise: 0.1 %.
            assertEquals(logL, sumL, logL * 0.001);
            assertEquals(job.job.truth().meteredL()[p], sumL, logL * 0.01);
        }
        double coveredM2 = job.analysis.coverage().coveredAreaM2();
        assertEquals(coveredM2, (double) one("SELECT sum(covered_area_m2) FROM received"), coveredM2 * 0.001);
        // A rate is volume over covered ground: sums over sums give the field's mean.
        double meanLPerHa =
                (double) one("SELECT sum(uan_received_l_per_ha * covered_area_m2) / sum(covered_area_m2) FROM received"
                        + " WHERE uan_received_l_per_ha IS NOT NULL");
        assertEquals(job.job.truth().meteredL()[0] / coveredM2 * 1e4, meanLPerHa, meanLPerHa * 0.01);
    }

    @Test
    void received_squares_are_five_metres_wide_on_the_earth() throws Exception {
        int whole = 0;
        for (Geometry square : geometries("received")) {
            PolygonArea area = new PolygonArea(Geodesic.WGS84, false);
            Coordinate[] corners = square.getCoordinates();
            for (int i = 0; i < corners.length - 1; i++) {
                area.AddPoint(corners[i].y, corners[i].x);
            }
            double areaM2 = Math.abs(area.Compute().area);
            // Eight decimals of a degree are 1 mm: 5 m by 1 mm on two sides.
            assertTrue(areaM2 < 25.01, areaM2 + " m²");
            whole += areaM2 > 24.99 ? 1 : 0;
        }
        assertTrue(whole > 300, whole + " whole squares");
    }

    @Test
    void every_column_says_what_it_means_and_figures_their_unit() throws SQLException {
        for (String layer : LAYERS) {
            for (List<Object> column : rows("PRAGMA table_info(" + layer + ")")) {
                String name = (String) column.get(1);
                if (name.equals("fid") || name.equals("geom")) {
                    continue;
                }
                String meaning = (String) one("SELECT description FROM gpkg_data_columns WHERE table_name = '" + layer
                        + "' AND column_name = '" + name + "'");
                String unit = name.endsWith("_m2")
                        ? "square meters"
                        : name.endsWith("_l")
                                ? "liters"
                                : name.endsWith("l_per_ha")
                                        ? "liters per hectare"
                                        : name.endsWith("_pct") ? "percent" : name.endsWith("_utc") ? "UTC" : "";
                assertTrue(meaning.contains(unit), layer + "." + name + ": " + meaning);
            }
        }
        assertEquals(
                List.of("gpkg_data_column_constraints", "gpkg_data_columns"),
                rows("SELECT table_name FROM gpkg_extensions WHERE extension_name = 'gpkg_schema' ORDER BY 1").stream()
                        .map(row -> row.get(0))
                        .toList());
    }

    @Test
    void every_layer_has_a_style_that_asks_for_columns_it_has() throws Exception {
        for (String layer : LAYERS) {
            String sld = (String) one("SELECT styleSLD FROM layer_styles WHERE f_table_name = '" + layer + "'");
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setNamespaceAware(true);
            Document style =
                    factory.newDocumentBuilder().parse(new ByteArrayInputStream(sld.getBytes(StandardCharsets.UTF_8)));
            assertEquals("StyledLayerDescriptor", style.getDocumentElement().getLocalName());
            NodeList asked = style.getElementsByTagNameNS("http://www.opengis.net/ogc", "PropertyName");
            assertEquals(layer.equals("received"), asked.getLength() > 0);
            for (int i = 0; i < asked.getLength(); i++) {
                String column = asked.item(i).getTextContent();
                assertTrue(
                        rows("PRAGMA table_info(" + layer + ")").stream()
                                .anyMatch(row -> row.get(1).equals(column)),
                        column);
            }
        }
    }

    @Test
    void no_clock_is_in_it_and_the_same_job_gives_the_same_bytes() throws Exception {
        String end = JsonNumbers.time(io.rowledger.report.common.JobTimes.of(
                        job.analysis.track(), job.analysis.log(), io.rowledger.analysis.JobClock.zone(job.analysis))
                .endS());
        assertEquals(List.of(List.of(end)), rows("SELECT DISTINCT last_change FROM gpkg_contents"));
        assertEquals(List.of(List.of(end)), rows("SELECT DISTINCT update_time FROM layer_styles"));
        ByteArrayOutputStream again = new ByteArrayOutputStream();
        FieldGeoPackage.write(FieldMap.of(job.analysis), again);
        assertTrue(Arrays.equals(Files.readAllBytes(job.layer("field.gpkg")), again.toByteArray()));
    }

    @Test
    void a_job_of_nothing_still_has_all_its_layers(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("none.gpkg");
        try (var out = Files.newOutputStream(file)) {
            FieldGeoPackage.write(FieldMap.of(new SyntheticJob().withoutPasses().build()), out);
        }
        try (Connection none = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement s = none.createStatement();
                ResultSet r = s.executeQuery(
                        "SELECT count(*), count(min_x) FROM gpkg_contents" + " WHERE data_type = 'features'")) {
            assertEquals(LAYERS.size(), r.getInt(1));
            assertEquals(0, r.getInt(2), "a box of nothing");
        }
    }

    @Test
    void names_that_two_products_would_share_are_numbered() {
        GeoPackage.Column one = new GeoPackage.Column("uan_target_volume_l", "DOUBLE", "asked for");
        GeoPackage.Column two = new GeoPackage.Column("UAN_target_volume_l", "DOUBLE", "of a product named so");
        GeoPackage.Table table = new GeoPackage.Table("t", "POINT", "", "", List.of(one, two));
        assertEquals(
                List.of("uan_target_volume_l", "UAN_target_volume_l_2"),
                table.columns().stream().map(GeoPackage.Column::name).toList());
    }
}
