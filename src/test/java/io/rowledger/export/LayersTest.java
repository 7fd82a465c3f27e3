package io.rowledger.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.rowledger.geo.LocalPlane;
import io.rowledger.output.Outputs;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.results.GeoJson;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.PolygonArea;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;

class LayersTest {
    private static JsonNode read(Outputs.Content content) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        content.write(out);
        return new ObjectMapper().readTree(out.toByteArray());
    }

    /** Signed geodesic area by GeographicLib: positive counter-clockwise. */
    private static double areaM2(JsonNode ring) {
        PolygonArea polygon = new PolygonArea(Geodesic.WGS84, false);
        for (int i = 0; i < ring.size() - 1; i++) {
            polygon.AddPoint(ring.get(i).get(1).asDouble(), ring.get(i).get(0).asDouble());
        }
        return polygon.Compute(false, true).area;
    }

    private static void checkRings(JsonNode coordinates) {
        for (int i = 0; i < coordinates.size(); i++) {
            JsonNode ring = coordinates.get(i);
            assertEquals(ring.get(0), ring.get(ring.size() - 1), "RFC 7946 3.1.6: a ring is closed");
            assertTrue(ring.size() >= 4);
            double area = areaM2(ring);
            assertTrue(i == 0 ? area > 0 : area < 0, "RFC 7946 3.1.6: outside counter-clockwise, holes clockwise");
        }
    }

    /** The rings of the synthetic job run clockwise (JTS's own boxes), so they must be turned. */
    @Test
    void rings_follow_the_right_hand_rule_and_keep_their_area() throws IOException {
        JsonNode skips = read(out -> Layers.skips(FieldMap.of(new SyntheticJob().build()), out));
        assertEquals("FeatureCollection", skips.get("type").asText());
        assertEquals(5, skips.get("features").size());
        for (JsonNode feature : skips.get("features")) {
            assertEquals("Feature", feature.get("type").asText());
            JsonNode rings = feature.get("geometry").get("coordinates");
            checkRings(rings);
            // Eight decimals are within 0.4 mm across, on either side of a strip 0.8 m wide: 0.1 %.
            assertEquals(200, areaM2(rings.get(0)), 200 * 0.001);
            assertEquals(200, feature.get("properties").get("area_m2").asDouble());
            assertEquals(
                    "row_not_delivering", feature.get("properties").get("cause").asText());
        }
        assertEquals(
                6,
                skips.get("features")
                        .get(0)
                        .get("properties")
                        .get("passes")
                        .get(0)
                        .asInt());
    }

    @Test
    void holes_run_the_other_way_whichever_way_they_came() throws IOException {
        GeometryFactory shapes = new GeometryFactory();
        for (boolean turn : new boolean[] {false, true}) {
            LinearRing outer = ring(shapes, turn, 0, 0, 10, 0, 10, 10, 0, 10);
            LinearRing hole = ring(shapes, turn, 4, 4, 6, 4, 6, 6, 4, 6);
            Polygon polygon = shapes.createPolygon(outer, new LinearRing[] {hole});
            JsonNode layer = read(out -> {
                try (GeoJson json = new GeoJson(new LocalPlane(44, -93), out)) {
                    json.polygon(polygon, Map.of());
                }
            });
            JsonNode rings = layer.get("features").get(0).get("geometry").get("coordinates");
            assertEquals(2, rings.size());
            checkRings(rings);
        }
    }

    private static LinearRing ring(GeometryFactory shapes, boolean turn, double... eastNorth) {
        int n = eastNorth.length / 2;
        Coordinate[] corners = new Coordinate[n + 1];
        for (int i = 0; i <= n; i++) {
            int at = turn ? n - i : i;
            corners[i] = new Coordinate(eastNorth[2 * (at % n)], eastNorth[2 * (at % n) + 1]);
        }
        return shapes.createLinearRing(corners);
    }

    @Test
    void positions_are_longitude_then_latitude_with_at_most_eight_decimals() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Layers.strips(FieldMap.of(new SyntheticJob().build()), out);
        String text = out.toString(StandardCharsets.UTF_8);
        assertTrue(!text.matches("(?s).*\\.\\d{9,}.*"), "more than eight decimals");
        JsonNode first = new ObjectMapper().readTree(text).get("features").get(0);
        JsonNode corner = first.get("geometry").get("coordinates").get(0).get(0);
        assertEquals(-93, corner.get(0).asDouble(), 0.01);
        assertEquals(44, corner.get(1).asDouble(), 0.01);
        assertEquals(1, first.get("properties").get("pass").asInt());
        assertTrue(first.get("properties").get("unsettled").asBoolean());
        assertEquals("2026-06-14T13:00:00Z", first.get("properties").get("from").asText());
    }

    /** Small numbers, whole numbers and zero are where digits by hand go wrong. */
    @Test
    void numbers_by_hand_are_the_numbers() throws IOException {
        double[] degrees = {0, -0.00000001, 0.00000001, -1e-9, 7, -93.5, 179.99999999, -12.00000005, 89.99999999};
        JsonNode layer = read(out -> {
            try (GeoJson json = new GeoJson(new LocalPlane(44, -93), out)) {
                for (double d : degrees) {
                    json.point(d / 2, d, Map.of());
                }
            }
        });
        for (int i = 0; i < degrees.length; i++) {
            JsonNode point = layer.get("features").get(i).get("geometry").get("coordinates");
            assertEquals(degrees[i], point.get(0).asDouble(), 0.51e-8);
            assertEquals(degrees[i] / 2, point.get(1).asDouble(), 0.51e-8);
        }
    }

    @Test
    void keep_outs_are_places_and_the_ground_within_their_setbacks() throws IOException {
        assertEquals(
                0,
                read(out -> Layers.setbacks(FieldMap.of(new SyntheticJob().build()), out))
                        .get("features")
                        .size());
        JsonNode layer = read(out ->
                Layers.setbacks(FieldMap.of(new SyntheticJob().withSetbacks().build()), out));
        JsonNode features = layer.get("features");
        assertEquals(6, features.size());
        assertEquals("Point", features.get(0).get("geometry").get("type").asText());
        assertEquals("place", features.get(0).get("properties").get("part").asText());
        assertEquals("Polygon", features.get(1).get("geometry").get("type").asText());
        checkRings(features.get(1).get("geometry").get("coordinates"));
        // 32 corners on a circle: 16 r² sin(2π/32) = 0.9936 π r².
        assertEquals(
                16 * 18.288 * 18.288 * Math.sin(Math.PI / 16),
                areaM2(features.get(1).get("geometry").get("coordinates").get(0)),
                0.1);
        assertEquals("LineString", features.get(2).get("geometry").get("type").asText());
        assertEquals(2, features.get(2).get("geometry").get("coordinates").size());
        assertEquals(
                40,
                features.get(1)
                        .get("properties")
                        .get("products")
                        .get("uan")
                        .get("volume_l")
                        .asDouble());
    }

    @Test
    void any_geometry_is_written_as_the_standard_has_it() throws Exception {
        // RFC 7946, sections 3.1.4 to 3.1.8.
        for (String wkt : new String[] {
            "MULTIPOINT((1 2), (3 4))",
            "MULTILINESTRING((0 0, 1 1), (2 2, 3 3))",
            "MULTIPOLYGON(((0 0, 9 0, 9 9, 0 0)), ((20 0, 29 0, 29 9, 20 0)))",
            "GEOMETRYCOLLECTION(POINT(1 2), POLYGON((0 0, 9 0, 9 9, 0 0)))"
        }) {
            org.locationtech.jts.geom.Geometry geometry = new org.locationtech.jts.io.WKTReader().read(wkt);
            JsonNode layer = read(out -> {
                try (GeoJson json = new GeoJson(new LocalPlane(44, -93), out)) {
                    json.geometry(geometry, Map.of());
                }
            });
            JsonNode written = layer.get("features").get(0).get("geometry");
            assertEquals(geometry.getGeometryType(), written.get("type").asText());
            JsonNode parts = written.has("geometries") ? written.get("geometries") : written.get("coordinates");
            assertEquals(2, parts.size());
        }
    }

    @Test
    void findings_are_points_and_one_without_a_place_has_no_geometry() throws IOException {
        JsonNode layer = read(out ->
                Layers.findings(FieldMap.of(new SyntheticJob().withFinding().build()), out));
        JsonNode finding = layer.get("features").get(0);
        assertEquals("Point", finding.get("geometry").get("type").asText());
        assertEquals(-93.0, finding.get("geometry").get("coordinates").get(0).asDouble());
        assertEquals(1, finding.get("properties").get("number").asInt());
        assertEquals("plugged", finding.get("properties").get("kind").asText());
        assertEquals(-16.96, finding.get("properties").get("nitrogen_kg").asDouble());
        JsonNode nowhere = read(out -> {
            try (GeoJson json = new GeoJson(new LocalPlane(44, -93), out)) {
                json.point(Double.NaN, Double.NaN, Map.of("a", "b"));
            }
        });
        assertTrue(nowhere.get("features").get(0).get("geometry").isNull(), "RFC 7946 3.2: null where unlocated");
        assertEquals(
                "b", nowhere.get("features").get(0).get("properties").get("a").asText());
    }

    @Test
    void a_layer_without_features_is_still_a_collection() throws IOException {
        JsonNode layer = read(
                out -> Layers.overlaps(FieldMap.of(new SyntheticJob().even().build()), out));
        assertEquals(0, layer.get("features").size());
    }
}
