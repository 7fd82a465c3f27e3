package io.rowledger.maps;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.field.MapGeometry;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.LocalPlane;
import io.rowledger.units.Dimension;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Geometry;

/** Features of GeoJSON: the geometry examples are those of RFC 7946, appendix A. */
class GeoJsonFeaturesTest {
    @TempDir
    Path dir;

    private MapFeatures read(String text) throws IOException {
        return GeoJsonFeatures.read(Files.writeString(dir.resolve("places.geojson"), text), MapUse.KEEP_OUT);
    }

    private static String geometry(String type, String coordinates) {
        return "{\"type\":\"" + type + "\",\"coordinates\":" + coordinates + "}";
    }

    @Test
    void every_geometry_of_the_standards_appendix_a_is_laid_out_flat() throws IOException {
        // RFC 7946, appendix A.1 to A.6.
        assertShapes(geometry("Point", "[100.0, 0.0]"), "POINT 1");
        assertShapes(geometry("LineString", "[[100.0, 0.0], [101.0, 1.0]]"), "LINE 2");
        assertShapes(
                geometry(
                        "Polygon",
                        "[[[100.0,0.0],[101.0,0.0],[101.0,1.0],[100.0,1.0],[100.0,0.0]],"
                                + "[[100.8,0.8],[100.8,0.2],[100.2,0.2],[100.2,0.8],[100.8,0.8]]]"),
                "POLYGON 5 5");
        assertShapes(geometry("MultiPoint", "[[100.0, 0.0], [101.0, 1.0]]"), "POINT 1", "POINT 1");
        assertShapes(
                geometry("MultiLineString", "[[[100.0, 0.0],[101.0, 1.0]],[[102.0, 2.0],[103.0, 3.0]]]"),
                "LINE 2",
                "LINE 2");
        assertShapes(
                geometry(
                        "MultiPolygon",
                        "[[[[102.0,2.0],[103.0,2.0],[103.0,3.0],[102.0,2.0]]],"
                                + "[[[100.0,0.0],[101.0,0.0],[101.0,1.0],[100.0,0.0]]]]"),
                "POLYGON 4",
                "POLYGON 4");
        assertShapes(
                "{\"type\":\"GeometryCollection\",\"geometries\":[" + geometry("Point", "[100.0, 0.0, 12.5]") + ","
                        + geometry("LineString", "[[101.0, 0.0], [102.0, 1.0]]") + "]}",
                "POINT 1",
                "LINE 2");
    }

    private void assertShapes(String geometry, String... expected) throws IOException {
        List<MapFeature> features = read(geometry).features();
        assertEquals(1, features.size());
        assertEquals(
                List.of(expected),
                features.get(0).shapes().stream()
                        .map(GeoJsonFeaturesTest::words)
                        .toList());
        String feature = "{\"geometry\":" + geometry + ",\"type\":\"Feature\"}";
        assertEquals(features.get(0).types(), read(feature).features().get(0).types());
    }

    private static String words(MapShape shape) {
        StringBuilder out = new StringBuilder(shape.kind().name());
        shape.parts().forEach(part -> out.append(' ').append(part.length / 2));
        return out.toString();
    }

    @Test
    void features_keep_their_order_their_lines_and_their_properties() throws IOException {
        MapFeatures all = read("""
                {"type": "FeatureCollection", "features": [
                  {"type": "Feature", "properties": {"b": "two", "a": 1.50,
                     "list": [1], "nothing": null, "flag": true, "Name ": " Well "},
                   "geometry": {"type": "Point", "coordinates": [-93.5, 41.25]}},
                  {"type": "Feature", "geometry": null},
                  {"type": "Feature", "geometry": {"type": "Circle", "coordinates": [1, 2]}}
                ]}
                """);
        assertEquals(
                List.of(1, 2, 3),
                all.features().stream().map(MapFeature::number).toList());
        MapFeature first = all.features().get(0);
        assertEquals(2, first.line());
        assertEquals(
                List.of("b=two", "a=1.50", "flag=true", "Name = Well "),
                first.properties().stream().map(p -> p.name() + "=" + p.text()).toList());
        assertEquals(1.5, first.properties().get(1).number());
        assertFalse(first.properties().get(2).isNumber());
        assertEquals(3, first.properties().get(2).line());
        assertEquals("Well", first.nameOrNumber());
        assertArrayEquals(
                new double[] {-93.5, 41.25}, first.shapes().get(0).parts().get(0));
        assertEquals("Feature 2", all.features().get(1).nameOrNumber());
        assertTrue(all.features().get(2).shapes().isEmpty());
        assertEquals(List.of("Point", "Circle"), all.types());
    }

    @Test
    void shapes_of_one_feature_become_one_valid_geometry_in_the_plane() throws IOException {
        LocalPlane plane = new LocalPlane(41.25, -93.5);
        MapFeature feature = read("{\"type\":\"GeometryCollection\",\"geometries\":["
                        + geometry(
                                "Polygon",
                                "[[[-93.5,41.25],[-93.499,41.251],[-93.499,41.25],[-93.5,41.251],[-93.5,41.25]]]")
                        + "," + geometry("Point", "[-93.5,41.25]") + ","
                        + geometry("LineString", "[[-93.5,41.25],[-93.5,41.25]]")
                        + "]}")
                .features()
                .get(0);
        MapGeometry.Placed placed = MapGeometry.of(feature, plane);
        assertTrue(placed.repaired());
        assertTrue(placed.geometry().isValid());
        assertEquals(2, placed.geometry().getDimension());
        Geometry point = placed.geometry().getGeometryN(placed.geometry().getNumGeometries() - 1);
        assertEquals("Point", point.getGeometryType(), "a line without length is a point");
        assertEquals(0, point.getCoordinate().x, 1e-9);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                // 1 ft = 0.3048 m exactly (NIST Handbook 44, appendix C).
                "\"setback\": \"35 ft\" | 10.668",
                "\"Setback[ft]\": 35 | 10.668",
                "\"setback (ft)\": \"35\" | 10.668",
                "\"set_back[m]\": 10 | 10",
                "\"setback[ft]\": \"10 m\" | 10",
                "\"setback\": \"0 m\" | 0",
                "\"setback\": \"-3 m\" | -3",
            })
    void a_figure_may_carry_its_unit_in_the_value_or_in_the_name(String property, double expectedM) throws IOException {
        assertEquals(expectedM, setback(property).orElseThrow(), 1e-12);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"setback\": 35 | a number without a unit",
                "\"setback\": \"35\" | a figure without a unit",
                "\"setback\": \"far\" | \"far\"",
                "\"setback[acre]\": 35 | unknown unit",
                "\"setback[ac]\": 35 | unknown unit",
                "\"setback[mph]\": 35 | a speed",
                "\"setback\": \"35 ft\", \"setback[m]\": 3 | beside",
            })
    void a_figure_that_cannot_be_read_is_refused_with_its_feature_and_line(String property, String words) {
        UnusableInputException e = assertThrows(UnusableInputException.class, () -> setback(property));
        assertTrue(e.getMessage().contains(words), e.getMessage());
        assertTrue(e.getMessage().contains("feature 1"), e.getMessage());
        assertEquals(2, e.line());
    }

    @Test
    void a_figure_that_is_not_there_is_empty() throws IOException {
        assertTrue(setback("\"depth\": \"3 in\"").isEmpty());
        assertTrue(setback("\"setback\": null").isEmpty());
        assertTrue(setback("\"setback\": \"\"").isEmpty());
    }

    private OptionalDouble setback(String property) throws IOException {
        MapFeatures all = read("{\"type\":\"Feature\",\"geometry\":" + geometry("Point", "[1,2]")
                + ",\n\"properties\":{" + property + "}}");
        return all.quantity(all.features().get(0), "setback", Dimension.LENGTH);
    }
}
