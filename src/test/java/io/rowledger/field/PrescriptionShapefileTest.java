package io.rowledger.field;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.LocalPlane;
import io.rowledger.maps.TestShapefile;
import io.rowledger.rig.Rig;
import io.rowledger.rig.RigReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Envelope;

/** Prescriptions as people hand them in: a shapefile with attributes of any name and no unit. */
class PrescriptionShapefileTest {
    private static final LocalPlane PLANE = new LocalPlane(45, -93);
    private static final Envelope DRIVEN = new Envelope(-100, 100, -100, 100);
    /** Clockwise: a hundredth of a degree of longitude and latitude on either side of the meridian. */
    private static final double[] WEST = {-93.01, 45, -93.01, 45.01, -93, 45.01, -93, 45, -93.01, 45};

    private static final double[] EAST = {-93, 45, -93, 45.01, -92.99, 45.01, -92.99, 45, -93, 45};

    /** 1 US gal/ac in L/m²: 3.785411784 L over 4046.8564224 m² (NIST SP 811). */
    private static final double GAL_PER_AC = 3.785411784 / 4046.8564224;

    @TempDir
    Path dir;

    private static Rig rig(String lines) {
        return RigReader.ofText("rig.yaml", """
                rig: {antenna: {ahead_of_axle: 1 m}, axle_to_hitch: 1 m, hitch: mounted, hitch_to_drop: 2 m}
                rows: {count: 4, spacing: 30 in}
                products: {uan: {name: UAN 32-0-0, density: 11.06 lb/gal, analysis: 32-0-0}}
                """ + lines);
    }

    private Prescription read(Path file, Rig rig) {
        return PrescriptionReader.read(
                file, PLANE, DRIVEN, rig.products(), rig.hints().prescription());
    }

    private TestShapefile zones(String attribute) {
        return TestShapefile.polygons()
                .add(WEST, Map.of("Id", 1, attribute, 42))
                .add(EAST, Map.of("Id", 2, attribute, 35.5));
    }

    /** A shapefile's table holds 10 characters of a name: rate_gal_ac became rate_gal_a. */
    @ParameterizedTest
    @CsvSource({
        "rate,        rate",
        "Y99,         Y99",
        "rate_gal_ac, rate_gal_a",
        "rate_gal_ac, rate_gal_ac",
        "UAN32,       UAN32",
        "Corn SD N,   Corn SD N",
    })
    void any_attribute_is_a_rate_with_two_words_in_the_rig_file(String attribute, String written) {
        Path shp = zones(attribute).write(dir, "rx", TestShapefile.WGS84);
        Prescription map = read(shp, rig("prescription: {rate: " + written + ", unit: gal/ac}\n"));
        assertEquals(2, map.zones().size());
        assertEquals(42 * GAL_PER_AC, map.zones().get(0).rateLPerM2()[0], 1e-12);
        assertEquals(35.5 * GAL_PER_AC, map.zones().get(1).rateLPerM2()[0], 1e-12);
    }

    @ParameterizedTest
    @ValueSource(strings = {"rate", "Y99", "UAN32"})
    void without_the_line_the_message_shows_it(String attribute) {
        Path shp = zones(attribute).write(dir, "rx", TestShapefile.WGS84);
        String text = assertThrows(UnusableInputException.class, () -> read(shp, rig("")))
                .getMessage();
        assertTrue(text.contains("prescription: {rate: " + attribute + ", unit: gal/ac}"), text);
        assertTrue(attribute.equals("rate") || text.contains(attribute + " (42)"), text);
    }

    /** UTM zone 15 north, whose central meridian is this plane's: easting 500,000 m + 0.9996 · plane east. */
    @Test
    void a_map_in_utm_says_its_reference_system_itself() {
        double[] plane = new double[2];
        double[] utm = new double[WEST.length];
        LocalPlane zone15 = new LocalPlane(6_378_137, 298.257223563, 0, -93, 0.9996);
        for (int i = 0; i < WEST.length; i += 2) {
            zone15.forward(WEST[i + 1], WEST[i], plane);
            utm[i] = 500_000 + plane[0];
            utm[i + 1] = plane[1];
        }
        TestShapefile map = TestShapefile.polygons().add(utm, Map.of("Y99", 42));
        Rig rig = rig("prescription: {rate: Y99, unit: gal/ac}\n");
        Prescription projected = read(map.zip(dir, "utm", TestShapefile.UTM_15N), rig);
        TestShapefile degrees = TestShapefile.polygons().add(WEST, Map.of("Y99", 42));
        Prescription geographic = read(degrees.zip(dir, "wgs84", TestShapefile.WGS84), rig);
        assertEquals(
                geographic.zones().get(0).area().getArea(),
                projected.zones().get(0).area().getArea(),
                0.01);
    }

    /** Public maps that are no prescriptions, in the folder that real.data names: each message lists what the map has. */
    @ParameterizedTest
    @CsvSource({
        "PolyMZ_wgs84_MixedPartFieldsTypes, 'among Id (0), float_area (18029.7), double_Len (537.105240877)'",
        "LineMZ_wgs84_MixedPartFieldsTypes_esri, found PolyLine (feature 1); expected a Polygon or MultiPolygon",
        "area1_onebox_94mga54, found no number among the attributes: Name (Single Part)",
    })
    void real_maps_that_are_no_prescription_are_told_apart(String map, String part) {
        String folder = System.getProperty("real.data", "");
        Path shp = Path.of(folder, "maps", map + ".shp");
        org.junit.jupiter.api.Assumptions.assumeTrue(
                !folder.isEmpty() && Files.exists(shp), "needs -Dreal.data=DIR with maps/" + map + ".shp");
        String text = assertThrows(UnusableInputException.class, () -> read(shp, rig("")))
                .getMessage();
        assertTrue(text.contains(part), text);
    }
}
