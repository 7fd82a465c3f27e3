package io.rowledger.field;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.field.Prescription.Zone;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.LocalPlane;
import io.rowledger.rig.PrescriptionColumns;
import io.rowledger.rig.Product;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Envelope;

/** Prescriptions, good and bad: what a zone's properties may say, and what is asked for instead of guessed. */
class PrescriptionReaderTest {
    private static final LocalPlane PLANE = new LocalPlane(45, -93);
    /** A hundredth of a degree of longitude and latitude: about 788 m by 1111 m. */
    private static final String WEST = "[[[-93.01,45],[-93,45],[-93,45.01],[-93.01,45.01],[-93.01,45]]]";

    private static final String EAST = "[[[-93,45],[-92.99,45],[-92.99,45.01],[-93,45.01],[-93,45]]]";
    /** 1e-5 degrees, 0.79 m, over the line. */
    private static final String EAST_OVER =
            "[[[-93.00001,45],[-92.99,45],[-92.99,45.01],[-93.00001,45.01],[-93.00001,45]]]";
    /** 5e-6 degrees, 0.39 m, over the line. */
    private static final String EAST_SLIVER =
            "[[[-93.000005,45],[-92.99,45],[-92.99,45.01],[-93.000005,45.01],[-93.000005,45]]]";

    /** 1 US gal/ac in L/m²: 3.785411784 L over 4046.8564224 m² (NIST SP 811). */
    private static final double GAL_PER_AC = 3.785411784 / 4046.8564224;

    private static final Product UAN = new Product("uan", "UAN 32-0-0", 1.325, 0.32, 0, 0, 0, Double.NaN, 0);
    private static final Product ATS = new Product("ats", "ATS 12-0-0-26S", 1.32, 0.12, 0, 0, 0.26, Double.NaN, 0);
    private static final Product WATER = new Product("water", "Water", Double.NaN, Double.NaN, 0, 0, 0, Double.NaN, 0);

    @TempDir
    Path dir;

    private static String feature(String properties, String rings) {
        return "{\"type\": \"Feature\", \"properties\": {" + properties
                + "}, \"geometry\": {\"type\": \"Polygon\", \"coordinates\": " + rings + "}}";
    }

    private Prescription read(List<Product> products, String... features) {
        return read(products, PrescriptionColumns.NONE, features);
    }

    private Prescription read(List<Product> products, PrescriptionColumns columns, String... features) {
        String text = "{\"type\": \"FeatureCollection\", \"features\": [\n" + String.join(",\n", features) + "\n]}\n";
        try {
            Path file = Files.writeString(dir.resolve("map.geojson"), text);
            return PrescriptionReader.read(file, PLANE, new Envelope(-100, 100, -100, 100), products, columns);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private double rate(Product product, String properties) {
        return read(List.of(product), feature(properties, WEST)).zones().get(0).rateLPerM2()[0];
    }

    @TestFactory
    Stream<DynamicTest> a_rate_is_understood_however_its_unit_is_written() {
        double expected = 42 * GAL_PER_AC;
        return Stream.of(
                        "\"target\": \"42 gal/ac\"",
                        "\"rate\": \"42 gal/ac\"",
                        "\"Target Rate\": \"42 gallons per acre\"",
                        "\"target[gal/ac]\": 42",
                        "\"target (gal/ac)\": 42.0",
                        "\"target[gal/ac]\": \"42\"",
                        "\"rate_gal_ac\": 42",
                        "\"target_gpa\": 42",
                        "\"RATE GPA\": 42",
                        "\"target\": 42, \"unit\": \"gal/ac\"",
                        "\"units\": \"GPA\", \"rate\": 42",
                        "\"rate\": 42, \"rate_unit\": \"gal/ac\"",
                        "\"uan.target[gal/ac]\": 42",
                        "\"UAN.rate\": 42, \"uan.unit\": \"gal/ac\"",
                        "\"target[L/ha]\": " + expected * 10_000,
                        "\"rate_id\": 7, \"crop\": \"corn\", \"target\": \"42 gal/ac\"")
                .map(properties ->
                        DynamicTest.dynamicTest(properties, () -> assertEquals(expected, rate(UAN, properties), 1e-9)));
    }

    @TestFactory
    Stream<DynamicTest> nitrogen_becomes_a_volume_by_density_and_analysis() {
        // 150 lb/ac x 0.45359237 kg / 4046.8564224 m2 = 0.0168128... kg/m2; over 1.325 kg/L x 0.32 kg N per L.
        double expected = 150 * 0.45359237 / 4046.8564224 / (1.325 * 0.32);
        return Stream.of(
                        "\"nitrogen[lb/ac]\": 150",
                        "\"nitrogen_lb_ac\": 150",
                        "\"nitrogen\": \"150 lb/ac\"",
                        "\"target_nitrogen\": 150, \"unit\": \"lb/ac\"",
                        "\"N rate (lb/ac)\": 150",
                        "\"target\": \"150 lb N/ac\"",
                        "\"uan.nitrogen[lb/ac]\": 150",
                        "\"nitrogen[kg/ha]\": " + 150 * 0.45359237 / 4046.8564224 * 10_000)
                .map(properties ->
                        DynamicTest.dynamicTest(properties, () -> assertEquals(expected, rate(UAN, properties), 1e-9)));
    }

    @Test
    void nothing_to_put_down_is_a_rate_of_zero() {
        assertEquals(0, rate(UAN, "\"target\": \"0 gal/ac\""));
        assertEquals(0, rate(WATER, "\"nitrogen[lb/ac]\": 0"));
    }

    @Test
    void each_of_several_products_has_its_rate_and_a_product_may_have_none() {
        Prescription two = read(
                List.of(UAN, ATS),
                feature("\"name\": \"A\", \"uan.target[gal/ac]\": 30, \"ats.target[gal/ac]\": 5", WEST),
                feature("\"name\": \"B\", \"uan.nitrogen[lb/ac]\": 100", EAST));
        assertEquals(30 * GAL_PER_AC, two.zones().get(0).rateLPerM2()[0], 1e-9);
        assertEquals(5 * GAL_PER_AC, two.zones().get(0).rateLPerM2()[1], 1e-9);
        assertTrue(Double.isNaN(two.zones().get(1).rateLPerM2()[1]));
    }

    @Test
    void features_of_one_name_are_one_zone_and_nameless_ones_of_one_rate_too() {
        Prescription named = read(
                List.of(UAN),
                feature("\"name\": \"Hill\", \"target[gal/ac]\": 42", WEST),
                feature("\"zone\": \"Hill\", \"target[gal/ac]\": 42", EAST));
        assertEquals(1, named.zones().size());
        assertEquals("Hill", named.zones().get(0).label());
        double one = read(List.of(UAN), feature("\"target[gal/ac]\": 42", WEST))
                .zones()
                .get(0)
                .area()
                .getArea();
        assertEquals(2 * one, named.zones().get(0).area().getArea(), 1);
        Prescription nameless = read(
                List.of(UAN), feature("\"target[gal/ac]\": 42", WEST), feature("\"target[gal/ac]\": 42", EAST_OVER));
        assertEquals(1, nameless.zones().size());
        assertEquals("zone 1", nameless.zones().get(0).label());
        assertEquals(0, nameless.sliverM2(), "one rate is no conflict");
    }

    @Test
    void a_sliver_between_two_zones_goes_to_the_first_and_is_counted_once() {
        Prescription sliver = read(
                List.of(UAN), feature("\"target[gal/ac]\": 30", WEST), feature("\"target[gal/ac]\": 40", EAST_SLIVER));
        // 5e-6 degrees of longitude at 45 degrees are 0.394 m, times 1111 m.
        assertEquals(438, sliver.sliverM2(), 5);
        Zone west = sliver.zones().get(0);
        Zone east = sliver.zones().get(1);
        assertEquals(0, west.area().intersection(east.area()).getArea(), 1e-3);
        assertEquals(west.area().getArea(), east.area().getArea(), 1);
    }

    @TestFactory
    Stream<DynamicTest> what_is_left_open_is_asked_for() {
        return Map.ofEntries(
                        Map.entry("\"target\": 42", "prescription: {rate: target, unit: gal/ac}"),
                        Map.entry("\"target\": \"42\"", "prescription: {rate: target, unit: gal/ac}"),
                        Map.entry("\"nitrogen\": 150", "prescription: {rate: nitrogen, unit: lb N/ac}"),
                        Map.entry("\"target\": \"42 gal\"", "gal/ac or L/ha"),
                        Map.entry("\"target[mph]\": 42", "gal/ac or L/ha"),
                        Map.entry("\"target\": \"much\"", "\"much\""),
                        Map.entry("\"target\": \"-3 gal/ac\"", "a rate of 0 or more"),
                        Map.entry("\"target\": \"150 lb/ac\"", "a weight per area without a nutrient"),
                        Map.entry("\"rate_lb_ac\": 150", "a weight per area without a nutrient"),
                        Map.entry("\"target\": 150, \"unit\": \"lb/ac\"", "a weight per area without a nutrient"),
                        Map.entry("\"nitrogen[gal/ac]\": 42", "a weight per area"),
                        Map.entry("\"target[gal/ac]\": 42, \"rate[gal/ac]\": 43", "two rates for one product"),
                        Map.entry("\"target[gal/ac]\": 42, \"nitrogen[lb/ac]\": 150", "two rates for one product"),
                        Map.entry("\"target[gal/ac]\": null", "zones without any attribute"),
                        Map.entry("\"color\": \"red\"", "no number among the attributes: color (red)"),
                        Map.entry("", "zones without any attribute"),
                        Map.entry("\"ats.target[gal/ac]\": 5", "the unknown product \"ats\""))
                .entrySet()
                .stream()
                .map(one -> DynamicTest.dynamicTest(
                        "{" + one.getKey() + "}",
                        () -> refuses(one.getValue(), List.of(UAN), feature(one.getKey(), WEST))));
    }

    /** Attributes that no rule can tell are a rate: the message shows them with a value and the line to write. */
    @TestFactory
    Stream<DynamicTest> a_map_of_unknown_attributes_shows_them_and_the_line_to_write() {
        return Map.of(
                        "\"Id\": 1, \"Y99\": 42.5",
                        "among Id (1), Y99 (42.5); expected a target rate for each zone. Hint: say in the rig file which "
                                + "attribute is the rate and in which unit, as in prescription: {rate: Y99, unit: gal/ac}.",
                        "\"Id\": 1, \"soil\": \"loam\", \"rate_gal_a\": 42",
                        "prescription: {rate: rate_gal_a, unit: gal/ac}",
                        "\"Id\": 7, \"UAN 32\": 42",
                        "prescription: {rate: \"UAN 32\", unit: gal/ac}",
                        "\"zone no\": 7, \"OBJECTID\": 3",
                        "prescription: {rate: \"zone no\", unit: gal/ac}")
                .entrySet()
                .stream()
                .map(one -> DynamicTest.dynamicTest(
                        "{" + one.getKey() + "}",
                        () -> refuses(one.getValue(), List.of(UAN), feature(one.getKey(), WEST))));
    }

    @TestFactory
    Stream<DynamicTest> the_rig_file_says_which_attribute_is_the_rate() {
        double galPerAc = 42 * GAL_PER_AC;
        return Map.of(
                        "\"Y99\": 42, \"rate\": 9",
                                new PrescriptionColumns(Map.of("uan", "Y99"), Map.of("uan", "gal/ac"), ""),
                        "\"rate_gal_a\": 42",
                                new PrescriptionColumns(Map.of("uan", "rate_gal_ac"), Map.of("uan", "gal/ac"), ""),
                        "\"UAN 32\": \"42\"",
                                new PrescriptionColumns(Map.of("uan", "uan_32"), Map.of("uan", "gal/ac"), ""),
                        "\"rate_gpa\": 42", new PrescriptionColumns(Map.of("uan", "rate_gpa"), Map.of(), ""),
                        "\"dose\": \"42 gal/ac\"", new PrescriptionColumns(Map.of("uan", "dose"), Map.of(), ""))
                .entrySet()
                .stream()
                .map(one -> DynamicTest.dynamicTest(
                        "{" + one.getKey() + "}",
                        () -> assertEquals(
                                galPerAc,
                                read(List.of(UAN), one.getValue(), feature(one.getKey(), WEST))
                                        .zones()
                                        .get(0)
                                        .rateLPerM2()[0],
                                1e-12)));
    }

    /** 150 lb/ac of N in a product with 1.325 kg/L and 32 % N: 150 · 0.45359237 / 4046.8564224 / (1.325 · 0.32) L/m². */
    @Test
    void a_unit_of_nitrogen_in_the_rig_file_makes_a_rate_of_nitrogen() {
        PrescriptionColumns columns = new PrescriptionColumns(Map.of("uan", "N_plan"), Map.of("uan", "lb N/ac"), "");
        double expected = 150 * 0.45359237 / 4046.8564224 / (1.325 * 0.32);
        assertEquals(
                expected,
                read(List.of(UAN), columns, feature("\"N_plan\": 150", WEST))
                        .zones()
                        .get(0)
                        .rateLPerM2()[0],
                1e-12);
    }

    @Test
    void each_product_has_its_attribute_and_the_zones_their_name() {
        PrescriptionColumns columns =
                new PrescriptionColumns(Map.of("uan", "A", "ats", "B"), Map.of("uan", "gal/ac", "ats", "L/ha"), "MZ");
        Zone zone = read(List.of(UAN, ATS), columns, feature("\"A\": 42, \"B\": 50, \"MZ\": \"Hill\"", WEST))
                .zones()
                .get(0);
        assertEquals(42 * GAL_PER_AC, zone.rateLPerM2()[0], 1e-12);
        assertEquals(50e-4, zone.rateLPerM2()[1], 1e-12);
        assertEquals("Hill", zone.name());
    }

    @Test
    void an_attribute_that_is_not_there_is_asked_for_with_what_is() {
        PrescriptionColumns columns = new PrescriptionColumns(Map.of("uan", "Y98"), Map.of("uan", "gal/ac"), "");
        UnusableInputException e = assertThrows(
                UnusableInputException.class, () -> read(List.of(UAN), columns, feature("\"Y99\": 42", WEST)));
        assertTrue(
                e.getMessage()
                        .endsWith(
                                "map.geojson: found no attribute \"Y98\" among Y99 (42); expected the attribute that the rig"
                                        + " file names under prescription: rate. Hint: write prescription: {rate: Y99, unit:"
                                        + " gal/ac} into the rig file."),
                e.getMessage());
    }

    private void refuses(String part, List<Product> products, String... features) {
        UnusableInputException e = assertThrows(UnusableInputException.class, () -> read(products, features));
        assertTrue(e.getMessage().contains(part), e.getMessage());
        assertTrue(e.getMessage().contains("Hint: "), e.getMessage());
        assertTrue(e.getMessage().contains("map.geojson"), e.getMessage());
    }

    @Test
    void with_several_products_a_rate_must_say_whose_it_is() {
        refuses("a rate without a product", List.of(UAN, ATS), feature("\"target[gal/ac]\": 42", WEST));
    }

    @Test
    void nitrogen_of_a_product_without_density_can_not_be_a_volume() {
        refuses("no density or analysis", List.of(WATER), feature("\"nitrogen[lb/ac]\": 150", WEST));
    }

    @Test
    void zones_that_overlap_with_different_rates_are_refused_and_both_are_named() {
        UnusableInputException e = assertThrows(
                UnusableInputException.class,
                () -> read(
                        List.of(UAN),
                        feature("\"name\": \"Hill\", \"target[gal/ac]\": 30", WEST),
                        feature("\"name\": \"Bottom\", \"target[gal/ac]\": 40", EAST_OVER)));
        assertTrue(e.getMessage().contains("feature 1 (Hill) and in feature 2 (Bottom)"), e.getMessage());
        assertTrue(e.line() > 0, e.getMessage());
    }

    @Test
    void one_name_with_two_rates_is_refused() {
        refuses(
                "another rate than in feature 1",
                List.of(UAN),
                feature("\"name\": \"A\", \"target[gal/ac]\": 30", WEST),
                feature("\"name\": \"A\", \"target[gal/ac]\": 40", EAST));
    }

    @Test
    void a_map_nowhere_near_the_log_says_how_far_off_it_is() {
        String far = "[[[-92,45],[-91.99,45],[-91.99,45.01],[-92,45.01],[-92,45]]]";
        // A degree of longitude at 45 degrees north is 78.8 km.
        refuses("79 km away from the log", List.of(UAN), feature("\"target[gal/ac]\": 30", far));
    }

    @Test
    void points_are_no_zones() {
        refuses(
                "Point",
                List.of(UAN),
                "{\"type\": \"Feature\", \"properties\": {\"target[gal/ac]\": 42},"
                        + " \"geometry\": {\"type\": \"Point\", \"coordinates\": [-93, 45]}}");
    }
}
