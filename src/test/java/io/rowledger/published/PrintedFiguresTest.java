package io.rowledger.published;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import io.rowledger.rate.NutrientKg;
import io.rowledger.rate.Nutrients;
import io.rowledger.rate.RateFormula;
import io.rowledger.rig.Product;
import io.rowledger.rig.RigReader;
import io.rowledger.units.Dimension;
import io.rowledger.units.Quantity;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Figures as handbooks print them, read from text as a rig file has them, reckoned and printed by the program's own classes.
 * Where sources disagree, each one's figure comes out of its own density.
 */
class PrintedFiguresTest {
    private static final UnitFormat US = new UnitFormat(UnitSystem.US, ZoneOffset.UTC);
    private static final UnitFormat METRIC = new UnitFormat(UnitSystem.METRIC, ZoneOffset.UTC);

    @TempDir
    Path folder;

    private static double si(String text, Dimension dimension) {
        return ((Quantity) Quantity.read(text, dimension)).si();
    }

    private static String plain(String text) {
        return text.replace('\u00a0', ' ');
    }

    private Product product(String density, String more, String analysis) throws IOException {
        String rig = """
                rig: {antenna: {ahead_of_axle: 1 m}, axle_to_hitch: 1 m, hitch: mounted, hitch_to_drop: 2 m}
                rows: {count: 2, spacing: 76 cm}
                products:
                  one: {density: %s, %s analysis: %s}
                """.formatted(density, more, analysis);
        return RigReader.read(Files.writeString(folder.resolve("rig.yaml"), rig))
                .rig()
                .products()
                .get(0);
    }

    /** Nutrients that a rate puts on an acre, kg: printed they are pounds an acre. */
    private NutrientKg onAnAcre(String rate, String density, String analysis) throws IOException {
        double litres = si(rate, Dimension.RATE) * 4046.8564224;
        return Nutrients.ofVolume(product(density, "", analysis), litres).kg();
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '"', textBlock = """
            # rate, speed, width, printed, source
            20 gal/ac, 4 mph, 20 in, 0.27 gal/min, "Cornell Cooperative Extension, Crop and Pest Management Guidelines 2024, Grapes, s. 7.6: seen"
            50 gal/ac, 6 mph, 60 in, 3.03 gal/min, "skip-row, a knife in every other middle: derived"
            50 gal/ac, 6 mph, 15 in, 0.76 gal/min, "outside half-rate knife: derived"
            20 gal/ac, 7.5 mph, 360 in, 9.09 gal/min, "whole 30 ft pass: derived"
            200 L/ha, 7.8 km/h, 0.5 m, 1.30 L/min, "Farm Ireland, Useful formulae for nozzle selection: seen (prints 1.3)"
            190 L/ha, 10 km/h, 50 cm, 1.58 L/min, "R package AgroTech 1.0.2, flowrat: inputs seen, 1.58333 derived"
            """)
    void a_flow_prints_as_its_source_prints_it(String rate, String speed, String width, String printed, String source) {
        double flow = RateFormula.flowLPerS(
                si(rate, Dimension.RATE), si(speed, Dimension.SPEED), si(width, Dimension.LENGTH));
        UnitFormat format = rate.contains("gal") ? US : METRIC;
        assertEquals(printed, plain(format.text(QuantityKind.FLOW, flow)), source);
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '"', textBlock = """
            # flow, speed, width, decimals of the source, printed, source
            3.75 gal/min, 5 mph, 222 in, 0, 20, "Albany County (Wyoming) Weed and Pest Control District: seen"
            35 oz/min, 4 mph, 20 in, 2, 20.30, "Henderson County problem 1-4: inputs seen, 20.3028 with the exact 46.40625"
            31 oz/min, 4 mph, 12 in, 1, 30.0, "Henderson County problem 1-5: inputs seen, 29.97 to more digits"
            """)
    void a_rate_prints_as_its_source_prints_it(
            String flow, String speed, String width, int decimals, String printed, String source) {
        double rate = RateFormula.rateLPerM2(
                si(flow, Dimension.FLOW), si(speed, Dimension.SPEED), si(width, Dimension.LENGTH));
        assertEquals(printed, US.fixed(QuantityKind.RATE.from(rate, UnitSystem.US), decimals), source);
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '"', textBlock = """
            # rate, density, analysis, lb N/ac as printed here, source
            20 gal/ac, 10.6 lb/gal, 28-0-0, 59.4, "Camberato, Purdue Extension 2023: printed 59.4, seen"
            30 gal/ac, 10.6 lb/gal, 28-0-0, 89.0, "the same prints 90 because it rounds a gallon to 3 lb N: seen; exactly 89.04"
            15 gal/ac, 10.69 lb/gal, 10-0-0, 16.0, "Vineyard Team, 300 gal on 20 ac: inputs seen; 16.035 derived"
            50 gal/ac, 10.67 lb/gal, 28-0-0, 149, "149.38 by the fact sheet Estimated Physical Characteristics: density seen"
            50 gal/ac, 10.65 lb/gal, 28-0-0, 149, "149.10 by UNL, Oklahoma State and Georgia Extension: density seen"
            50 gal/ac, 10.60 lb/gal, 28-0-0, 148, "148.40 by Purdue: density seen"
            50 gal/ac, 11.06 lb/gal, 32-0-0, 177, "176.96: density seen in five sources"
            10 gal/ac, 11.04 lb/gal, 12-0-0-26, 13.2, "ammonium thiosulphate by the fact sheet: density seen, CONFLICT"
            10 gal/ac, 11.50 lb/gal, 12-0-0-26, 13.8, "the same by UNL, Oklahoma State, Georgia: density seen, CONFLICT"
            20 gal/ac, 11.65 lb/gal, 10-34-0, 23.3, "10-34-0 by the fact sheet: density seen, CONFLICT"
            20 gal/ac, 11.40 lb/gal, 10-34-0, 22.8, "the same by Oklahoma State, UNL, Georgia: density seen, CONFLICT"
            10 gal/ac, 11.2 lb/gal, 7-21-7, 7.8, "7-21-7 by the fact sheet and Oklahoma State: density seen, CONFLICT"
            10 gal/ac, 11.00 lb/gal, 7-21-7, 7.7, "the same by UNL: density seen, CONFLICT"
            """)
    void nitrogen_prints_as_its_source_prints_it(
            String rate, String density, String analysis, String printed, String source) throws IOException {
        double kg = onAnAcre(rate, density, analysis).nitrogenKg();
        assertEquals(printed, US.number(QuantityKind.NITROGEN, kg), source);
        assertEquals(printed, US.number(QuantityKind.NITROGEN_RATE, kg / 4046.8564224), source);
    }

    @Test
    void the_other_nutrients_carry_the_conflict_too() throws IOException {
        // Sulfur of ammonium thiosulphate, lb S a gallon: 2.87 at 11.04 lb/gal, 2.99 at 11.50 (densities seen,
        // derived).
        assertEquals(
                "2.87",
                US.fixed(
                        pounds(onAnAcre("1 gal/ac", "11.04 lb/gal", "12-0-0-26").sulfurKg()), 2));
        assertEquals(
                "2.99",
                US.fixed(
                        pounds(onAnAcre("1 gal/ac", "11.50 lb/gal", "12-0-0-26").sulfurKg()), 2));
        // Phosphate of 10-34-0: 0.34 x 11.65 = 3.961 and 0.34 x 11.40 = 3.876 lb a gallon (densities seen, derived).
        assertEquals(
                "3.961",
                US.fixed(pounds(onAnAcre("1 gal/ac", "11.65 lb/gal", "10-34-0").phosphateKg()), 3));
        assertEquals(
                "3.876",
                US.fixed(pounds(onAnAcre("1 gal/ac", "11.40 lb/gal", "10-34-0").phosphateKg()), 3));
        // Potash of 7-21-7: 0.07 x 11.2 = 0.784 lb a gallon (density seen, derived).
        assertEquals(
                "0.784",
                US.fixed(pounds(onAnAcre("1 gal/ac", "11.2 lb/gal", "7-21-7").potashKg()), 3));
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '"', textBlock = """
            # density, at, printed, printed metric, % N, lb N/gal, source
            5.15 lb/gal, 60 F,   60 °F, 15.6 °C,  82-0-0, 4.223, "anhydrous ammonia, UNL PASSEL Nitrogen Fertilizers: density seen, N derived"
            5.69 lb/gal, -28 F,  −28 °F, −33.3 °C, 82-0-0, 4.666, "the same, Wisconsin Admin. Code ch. SPS 343 appendix: density seen, N derived (4.67)"
            7.58 lb/gal, 60 F,   60 °F, 15.6 °C,  20-0-0, 1.516, "aqua, San Joaquin County file 517758 p. 79: 5.0 lb and 0.66 gal a pound N seen; its temperature is not given there"
            10.78 lb/gal, 20 F,  20 °F, −6.7 °C,  28-0-0, 3.018, "UAN 28, the fact sheet's table: density seen, N derived"
            10.95 lb/gal, 30 F,  30 °F, −1.1 °C,  30-0-0, 3.285, "UAN 30, the fact sheet's table: density seen, N derived"
            11.17 lb/gal, 20 F,  20 °F, −6.7 °C,  32-0-0, 3.574, "UAN 32, the fact sheet's table: density seen, N derived"
            11.74 lb/gal, 30 F,  30 °F, −1.1 °C,  10-34-0, 1.174, "10-34-0, the fact sheet's table: density seen, N derived"
            """)
    void a_density_is_taken_at_its_temperature_and_never_corrected(
            String density, String at, String us, String metric, String analysis, String nitrogen, String source)
            throws IOException {
        Product product = product(density, "density_at: " + at + ",", analysis);
        assertEquals(us, plain(US.temperature(product.densityAtC())), source);
        assertEquals(metric, plain(METRIC.temperature(product.densityAtC())), source);
        double poundsPerGallon =
                pounds(Nutrients.ofVolume(product, 3.785411784).kg().nitrogenKg());
        assertEquals(nitrogen, US.fixed(poundsPerGallon, 3), source);
        Product same = product(density, "", analysis);
        assertEquals(same.nitrogenKgPerL(), product.nitrogenKgPerL(), "a temperature is for the record only");
    }

    @Test
    void gallons_for_a_rate_of_nitrogen_print_as_their_sources_print_them() throws IOException {
        // UNL CropWatch 2016, example 2: 75 lb N/ac of 28 % at 10.65 lb/gal is 25.151 gal/ac: seen.
        double rate = si("75 lb/ac", Dimension.MASS_PER_AREA)
                / product("10.65 lb/gal", "", "28-0-0").nitrogenKgPerL();
        assertEquals("25.151", US.fixed(QuantityKind.RATE.from(rate, UnitSystem.US), 3));
        // Vineyard Team: 15 lb N/ac of 10 % at 10.69 lb/gal is 14.03 gal/ac, on 20 ac 280.6 gal: seen.
        double vineyard = si("15 lb N/ac", Dimension.MASS_PER_AREA)
                / product("10.69 lb/gal", "", "10-0-0").nitrogenKgPerL();
        assertEquals("14.03", US.fixed(QuantityKind.RATE.from(vineyard, UnitSystem.US), 2));
        assertEquals("280.6 gal", plain(US.text(QuantityKind.VOLUME, vineyard * 20 * 4046.8564224)));
    }

    @ParameterizedTest
    @CsvSource({
        "7.0, 0.92",
        "8.0, 0.98",
        "8.34, 1.00",
        "9.0, 1.04",
        "10.0, 1.10",
        "10.65, 1.13",
        "11.06, 1.15",
        "11.4, 1.17",
        "11.5, 1.17",
        "11.6, 1.18",
        "12.0, 1.20"
    })
    void densities_carry_the_published_factors_for_calibrating_with_water(String poundsPerGallon, String factor) {
        // UNL CropWatch 2016: the root of the specific gravity against water at 8.34 lb/gal: printed, seen.
        double gravity = si(poundsPerGallon + " lb/gal", Dimension.DENSITY) / si("8.34 lb/gal", Dimension.DENSITY);
        assertEquals(factor, US.fixed(Math.sqrt(gravity), 2));
    }

    @Test
    void a_misprinted_factor_for_twelve_pounds_a_gallon_does_not_come_out() {
        // Oklahoma State prints specific gravity 1.68 and factor 1.30 for both 12 and 14 lb/gal: seen. 12 is 1.44 and
        // 1.20.
        double water = si("8.34 lb/gal", Dimension.DENSITY);
        double twelve = si("12 lb/gal", Dimension.DENSITY) / water;
        double fourteen = si("14 lb/gal", Dimension.DENSITY) / water;
        assertEquals("1.44", US.fixed(twelve, 2));
        assertEquals("1.20", US.fixed(Math.sqrt(twelve), 2));
        assertEquals("1.68", US.fixed(fourteen, 2));
        assertEquals("1.30", US.fixed(Math.sqrt(fourteen), 2));
        assertNotEquals("1.30", US.fixed(Math.sqrt(twelve), 2));
    }

    @Test
    void twenty_gallons_of_solution_are_calibrated_with_22_6_of_water() {
        // 28 % at 10.65 lb/gal, factor 1.13: Oklahoma State Extension; UNL CropWatch 2016; Georgia Extension (L.
        // Lazaro):
        // all print 22.6, seen. Unrounded 20 x sqrt(10.65/8.34) = 22.601.
        double gravity = si("10.65 lb/gal", Dimension.DENSITY) / si("8.34 lb/gal", Dimension.DENSITY);
        double water = si("20 gal/ac", Dimension.RATE) * Math.sqrt(gravity);
        assertEquals("22.6 gal/ac", plain(US.text(QuantityKind.RATE, water)));
    }

    @Test
    void what_a_label_says_is_in_28_and_32_percent_adds_up_to_its_analysis() throws IOException {
        // Supplier safety sheets (seen): 28 % is 39.4 ammonium nitrate and 30.6 urea, 32 % is 45 and 35 by weight;
        // ammonium nitrate is 35.0 % N, urea 46.65 % (derived): 28.06 and 32.08 %.
        assertEquals(
                0.394 * 0.350 + 0.306 * 0.4665,
                product("10.65 lb/gal", "", "28-0-0").nitrogenFraction(),
                0.001);
        assertEquals(
                0.45 * 0.350 + 0.35 * 0.4665,
                product("11.06 lb/gal", "", "32-0-0").nitrogenFraction(),
                0.001);
    }

    @ParameterizedTest
    @CsvSource({"10.67 lb/gal, 1.278548", "11.06 lb/gal, 1.325280", "1 lb/gal, 0.119826"})
    void densities_in_pounds_a_gallon_have_their_metric_twins(String density, String metric) {
        // Derived from the pound and the US gallon, exact by NIST Handbook 44 Appendix C.
        assertEquals(metric, METRIC.fixed(si(density, Dimension.DENSITY), 6));
    }

    @Test
    void a_pound_an_acre_prints_as_kilograms_a_hectare() {
        // 1.120851156 kg/ha and 9.353956228 L/ha, derived from exact definitions (NIST Handbook 44 Appendix C).
        assertEquals("1.120851156", METRIC.fixed(si("1 lb/ac", Dimension.MASS_PER_AREA) * 10_000, 9));
        assertEquals("9.353956", METRIC.fixed(si("1 gal/ac", Dimension.RATE) * 10_000, 6));
        assertEquals(
                "202 kg N/ha",
                plain(METRIC.text(QuantityKind.NITROGEN_RATE, si("180 lb/ac", Dimension.MASS_PER_AREA))));
    }

    private static double pounds(double kg) {
        return kg / 0.45359237;
    }
}
