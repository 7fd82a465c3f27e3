package io.rowledger.published;

import static io.rowledger.units.Factor.KILOGRAMS_PER_LITRE_PER_LBGAL;
import static io.rowledger.units.Factor.KILOGRAMS_PER_SQUARE_METRE_PER_LBAC;
import static io.rowledger.units.Factor.LITRES_PER_SQUARE_METRE_PER_GPA;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.rig.Product;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Density and analysis to nitrogen in a gallon and on an acre, as extension services print it. */
class ProductNitrogenTest {
    @ParameterizedTest
    @CsvSource(quoteCharacter = '"', textBlock = """
            # product, lb/gal, % N, lb N/gal, half a unit of its last digit, source
            UAN 28-0-0,     10.67, 28,  2.988, 0.0005, "fact sheet Estimated Physical Characteristics of Fertilizer Material: density seen, N derived"
            UAN 28-0-0,     10.65, 28,  2.982, 0.0005, "UNL CropWatch 2016; Oklahoma State and Georgia Extension: printed, seen"
            UAN 28-0-0,     10.6,  28,  2.97,  0.005,  "Camberato, Purdue Extension, Indiana Prairie Farmer 17 Jan 2023: printed, seen"
            UAN 28-0-0,     10.6,  28,  3,     0.5,    "the same, rounded for use in the field: printed, seen"
            UAN 32-0-0,     11.06, 32,  3.539, 0.0005, "the fact sheet; Mississippi State P1466; Oklahoma State, UNL, Georgia: density seen, N derived"
            30-0-0,         10.80, 30,  3.24,  0.005,  "Oklahoma State and Georgia Extension: density seen, N derived"
            ATS 12-0-0-26S, 11.04, 12,  1.325, 0.0005, "the fact sheet, against 11.50 elsewhere: density seen, N derived"
            ATS 12-0-0-26S, 11.50, 12,  1.380, 0.0005, "UNL PASSEL Sulfur Fertilizers; Oklahoma State, Georgia: density seen, N derived"
            10-34-0,        11.65, 10,  1.165, 0.0005, "the fact sheet, against 11.40 elsewhere: density seen, N derived"
            10-34-0,        11.40, 10,  1.140, 0.0005, "Oklahoma State, UNL and Georgia Extension: density seen, N derived"
            7-21-7,         11.2,  7,   0.78,  0.005,  "the fact sheet and Oklahoma State, against 11.00: density seen, N derived"
            7-21-7,         11.00, 7,   0.77,  0.005,  "UNL, against 11.2 elsewhere: density seen, N derived"
            82-0-0,         5.15,  82,  4.223, 0.0005, "UNL PASSEL Nitrogen Fertilizers, at 60 F: density seen, N derived"
            82-0-0,         5.69,  82,  4.67,  0.005,  "Wisconsin Admin. Code ch. SPS 343 appendix, at -28 F: density seen, N derived"
            10 % solution,  10.69, 10,  1.069, 0.0005, "Vineyard Team, Liquid Fertilizer Calculations: printed, seen"
            """)
    void a_gallon_holds_its_nitrogen(
            String product, double poundsPerGallon, double percent, double nitrogen, double half, String source) {
        assertEquals(nitrogen, nitrogenPerGallon(poundsPerGallon, percent), half + 1e-9, product + ", " + source);
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '"', textBlock = """
            # lb of product and gal that hold a pound of N, % N, lb N/gal
            5.0,  0.66, 20, 1.515, "aqua 20-0-0"
            3.12, 0.28, 32, 3.57,  "UAN 32-0-0"
            """)
    void a_table_of_pounds_and_gallons_per_pound_of_nitrogen_agrees(
            double pounds, double gallons, double percent, double nitrogen, String product) {
        // Table of nitrogen sources in San Joaquin County file 517758 p. 79: pounds and gallons seen, density derived.
        // Both of its columns have two or three digits, so nitrogen agrees to a hundredth of itself.
        assertEquals(nitrogen, nitrogenPerGallon(pounds / gallons, percent), nitrogen * 0.01, product);
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '"', textBlock = """
            # gal/ac, lb/gal, % N, lb N/ac, half a unit of its last digit, source
            20,      10.6,  28, 59.36,   0.005,  "Camberato 2023, worked exactly: derived"
            20,      10.6,  28, 59.4,    0.05,   "Camberato 2023 (60 close enough): printed, seen"
            30,      10.6,  28, 89.04,   0.005,  "Camberato 2023, worked exactly: derived"
            25.1509, 10.65, 28, 75,      0.0002, "UNL CropWatch 2016, example 2, prints 25.151 gal/ac for 75 lb: seen"
            14.032,  10.69, 10, 15,      0.001,  "Vineyard Team, prints 14.03 gal/ac for 15 lb: seen"
            15.0,    10.69, 10, 16.035,  0.0005, "Vineyard Team, 300 gal on 20 ac: inputs seen"
            50,      10.67, 28, 149.38,  0.005,  derived
            50,      10.65, 28, 149.10,  0.005,  derived
            50,      10.60, 28, 148.40,  0.005,  derived
            50,      11.06, 32, 176.96,  0.005,  derived
            """)
    void a_rate_puts_down_its_nitrogen(
            double gpa, double poundsPerGallon, double percent, double nitrogen, double half, String source) {
        assertEquals(nitrogen, nitrogenPerAcre(gpa, poundsPerGallon, percent), half, source);
    }

    @Test
    void a_source_that_rounds_a_gallon_to_three_pounds_prints_a_little_more() {
        // Camberato 2023 prints 90 lb N/ac for 30 gal/ac of 28 %, counting 3 lb a gallon (seen); 89.04 worked exactly.
        assertEquals(90, nitrogenPerAcre(30, 10.6, 28) * 3 / nitrogenPerGallon(10.6, 28), 1e-9);
        assertEquals(90, nitrogenPerAcre(30, 10.6, 28), 1.0);
    }

    @Test
    void sources_differ_by_more_than_a_percent_so_no_density_is_built_in() {
        // Ammonium thiosulphate 11.04 or 11.50, 10-34-0 11.65 or 11.40, 7-21-7 11.2 or 11.0 lb/gal: all seen. Density
        // comes from the rig file or not at all, and without one the nitrogen is unknown rather than guessed.
        assertEquals(1.0417, nitrogenPerGallon(11.50, 12) / nitrogenPerGallon(11.04, 12), 5e-5);
        assertEquals(1.0219, nitrogenPerGallon(11.65, 10) / nitrogenPerGallon(11.40, 10), 5e-5);
        assertEquals(1.0182, nitrogenPerGallon(11.2, 7) / nitrogenPerGallon(11.00, 7), 5e-5);
        assertTrue(Double.isNaN(nitrogenPerGallon(Double.NaN, 28)));
        assertTrue(Double.isNaN(product(Double.NaN, 28).nitrogenKgPerM2(0.004)));
    }

    @Test
    void warm_solution_holds_about_a_percent_less_nitrogen_a_gallon() {
        // The fact sheet above: 28 % is 10.74 lb/gal at 40 F and 10.6 at 80 F and shrinks by "1.3 %": seen; 1.304 %
        // derived.
        // The sheet calls that minor in practice; density is not corrected here, the user enters it.
        double shrink = 1 - nitrogenPerGallon(10.60, 28) / nitrogenPerGallon(10.74, 28);
        assertEquals(1.304, 100 * shrink, 0.0005);
    }

    private static double nitrogenPerGallon(double poundsPerGallon, double percent) {
        return product(poundsPerGallon, percent).nitrogenKgPerL() / KILOGRAMS_PER_LITRE_PER_LBGAL;
    }

    private static double nitrogenPerAcre(double gpa, double poundsPerGallon, double percent) {
        double rate = gpa * LITRES_PER_SQUARE_METRE_PER_GPA;
        return product(poundsPerGallon, percent).nitrogenKgPerM2(rate) / KILOGRAMS_PER_SQUARE_METRE_PER_LBAC;
    }

    private static Product product(double poundsPerGallon, double percent) {
        double density = poundsPerGallon * KILOGRAMS_PER_LITRE_PER_LBGAL;
        return new Product("n", "solution", density, percent / 100, 0, 0, 0, Double.NaN, 0);
    }
}
