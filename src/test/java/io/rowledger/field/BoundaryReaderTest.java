package io.rowledger.field;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.LocalPlane;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.PolygonArea;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** GeoJSON outlines, good and bad. The forms are those of RFC 7946, sections 3.1.6, 3.1.7, 3.2 and 3.3. */
class BoundaryReaderTest {
    private static final LocalPlane PLANE = new LocalPlane(45.002, -92.997);
    private static final String RING =
            "[[-93.000,45.000],[-92.994,45.000],[-92.994,45.004],[-93.000,45.004],[-93.000,45.000]]";
    private static final String HOLE =
            "[[-92.998,45.001],[-92.998,45.002],[-92.996,45.002],[-92.996,45.001],[-92.998,45.001]]";
    private static final String POLYGON = "{\"type\":\"Polygon\",\"coordinates\":[" + RING + "]}";

    @TempDir
    Path dir;

    private Boundary read(String text) {
        return BoundaryReader.read(write(text), PLANE);
    }

    private Path write(String text) {
        try {
            return Files.writeString(dir.resolve("field.geojson"), text);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static double geodesicAreaM2(double[][] latLon) {
        PolygonArea area = new PolygonArea(Geodesic.WGS84, false);
        for (double[] p : latLon) {
            area.AddPoint(p[0], p[1]);
        }
        return Math.abs(area.Compute().area);
    }

    private static double outerM2() {
        return geodesicAreaM2(new double[][] {{45, -93}, {45, -92.994}, {45.004, -92.994}, {45.004, -93}});
    }

    @Test
    void the_area_of_a_field_agrees_with_the_geodesic_polygon() {
        // GeographicLib's PolygonArea (C. F. F. Karney, J. Geodesy 87 (2013) 43-55): 210 290.09 m². Asked for: 0.05 %;
        // the plane is far better within a field.
        assertEquals(210_290.09, outerM2(), 0.01);
        assertEquals(outerM2(), read(POLYGON).area().getArea(), outerM2() * 2e-6);
    }

    @Test
    void a_field_two_kilometres_off_the_planes_middle_agrees_as_well() {
        Path file = write(POLYGON);
        Boundary b = BoundaryReader.read(file, new LocalPlane(45.02, -92.97));
        assertEquals(outerM2(), b.area().getArea(), outerM2() * 5e-6);
    }

    @Test
    void a_hole_is_taken_out() {
        Boundary b = read("{\"type\":\"Polygon\",\"coordinates\":[" + RING + "," + HOLE + "]}");
        double holeM2 = geodesicAreaM2(
                new double[][] {{45.001, -92.998}, {45.001, -92.996}, {45.002, -92.996}, {45.002, -92.998}});
        assertEquals(outerM2() - holeM2, b.area().getArea(), 1);
        assertFalse(b.repaired());
    }

    @Test
    void features_and_collections_give_their_union_and_the_first_name() {
        String feature = "{\"geometry\":" + POLYGON + ",\"properties\":{\"id\":{\"a\":[1]},\"name\":\"North\"},"
                + "\"type\":\"Feature\"}";
        String point =
                "{\"type\":\"Feature\",\"properties\":null,\"geometry\":{\"type\":\"Point\",\"coordinates\":[-93,45]}}";
        String empty = "{\"type\":\"Feature\",\"properties\":{\"name\":\"x\"},\"geometry\":null}";
        String inside =
                "{\"type\":\"Feature\",\"geometry\":{\"coordinates\":[[" + HOLE + "]],\"type\":\"MultiPolygon\"}}";
        Boundary b = read("{\"type\":\"FeatureCollection\",\"features\":["
                + String.join(",", point, feature, empty, inside) + "]}");
        // The second polygon lies within the first: the union is the first.
        assertEquals(outerM2(), b.area().getArea(), 1);
        assertEquals("North", b.name());
    }

    @Test
    void an_outline_that_crosses_itself_is_repaired_and_said_so() {
        Boundary b = read("{\"type\":\"Polygon\",\"coordinates\":[[[-93.000,45.000],[-92.994,45.004],[-92.994,45.000],"
                + "[-93.000,45.004],[-93.000,45.000]]]}");
        assertTrue(b.repaired());
        assertTrue(b.area().isValid());
        // Two triangles with their tips in the middle: half of the rectangle.
        assertEquals(outerM2() / 2, b.area().getArea(), outerM2() * 1e-4);
    }

    @TestFactory
    List<DynamicTest> files_that_cannot_be_used_say_what_and_where() {
        Map<String, String[]> cases = new TreeMap<>();
        cases.put("empty file", new String[] {"", "an empty file"});
        cases.put("no JSON", new String[] {"outline of field", "no JSON", "geojson:1:"});
        cases.put("cut short", new String[] {POLYGON.substring(0, 60), "no JSON", "geojson:1:"});
        cases.put("an array", new String[] {"[1]", "no object", "geojson:1:"});
        cases.put("more than one object", new String[] {POLYGON + "\n" + POLYGON, "more text", "geojson:2:"});
        cases.put(
                "only a point",
                new String[] {"{\"type\":\"Point\",\"coordinates\":[-93,45]}", "no polygon, only Point"});
        cases.put("empty collection", new String[] {"{\"type\":\"FeatureCollection\",\"features\":[]}", "no geometry"});
        cases.put(
                "features no array",
                new String[] {"{\"type\":\"FeatureCollection\",\"features\":3}", "a list that is none"});
        cases.put("no coordinates", new String[] {"{\"type\":\"Polygon\"}", "without coordinates"});
        cases.put("unclosed", new String[] {
            POLYGON.replace(",[-93.000,45.000]]]", "]]"), "does not end where it begins", "add the first position"
        });
        cases.put("two corners", new String[] {
            "{\"type\":\"Polygon\",\"coordinates\":[[[-93,45],[-92.9,45],[-93,45]]]}", "a ring of 3 positions"
        });
        cases.put("metres", new String[] {POLYGON.replace("-92.994", "480123.5"), "480123.5", "not in meters"});
        cases.put("swapped beyond 90", new String[] {
            "{\"type\":\"Polygon\",\"coordinates\":[[[45,-93],[45,-92.99],\n[45.01,-92.99],[45,-93]]]}", "look swapped"
        });
        cases.put("text", new String[] {POLYGON.replace("-92.994", "\"w\""), "no number", "geojson:1:"});
        cases.put("one number", new String[] {POLYGON.replace("[-92.994,45.000]", "[-92.994]"), "without two numbers"});
        cases.put(
                "far away", new String[] {POLYGON.replace("45.0", "46.0"), "111 km away", "longitude before latitude"});
        cases.put("no area", new String[] {
            "{\"type\":\"Polygon\",\"coordinates\":[[[-93,45],[-92.99,45],[-93,45],[-93,45]]]}", "without any area"
        });
        return cases.entrySet().stream()
                .map(e -> DynamicTest.dynamicTest(e.getKey(), () -> {
                    UnusableInputException x = assertThrows(UnusableInputException.class, () -> read(e.getValue()[0]));
                    assertTrue(x.getMessage().contains("field.geojson"), x.getMessage());
                    for (int i = 1; i < e.getValue().length; i++) {
                        assertTrue(x.getMessage().contains(e.getValue()[i]), x.getMessage());
                    }
                }))
                .toList();
    }

    @Test
    void a_file_that_is_not_there_is_said_so() {
        Path none = dir.resolve("none.geojson");
        UnusableInputException x = assertThrows(UnusableInputException.class, () -> BoundaryReader.read(none, PLANE));
        assertTrue(x.getMessage().contains("none.geojson") && x.getMessage().contains("can't be read"), x.getMessage());
    }

    @Test
    void a_complaint_about_a_position_names_its_line_and_column() {
        UnusableInputException x = assertThrows(
                UnusableInputException.class,
                () -> read(
                        "{\"type\":\"Polygon\",\"coordinates\":[[[-93,45],\n  [-92.99,145],\n[-92.99,45.01],[-93,45]]]}"));
        assertEquals(2, x.line());
        assertEquals("3", x.column());
    }
}
