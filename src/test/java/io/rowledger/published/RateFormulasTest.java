package io.rowledger.published;

import static io.rowledger.units.Factor.KILOGRAMS_PER_POUND;
import static io.rowledger.units.Factor.LITRES_PER_FLUID_OUNCE;
import static io.rowledger.units.Factor.LITRES_PER_GALLON;
import static io.rowledger.units.Factor.LITRES_PER_SECOND_PER_GPM;
import static io.rowledger.units.Factor.LITRES_PER_SECOND_PER_LPM;
import static io.rowledger.units.Factor.LITRES_PER_SQUARE_METRE_PER_GPA;
import static io.rowledger.units.Factor.LITRES_PER_SQUARE_METRE_PER_LPHA;
import static io.rowledger.units.Factor.METRES_PER_FOOT;
import static io.rowledger.units.Factor.METRES_PER_INCH;
import static io.rowledger.units.Factor.METRES_PER_SECOND_PER_KMH;
import static io.rowledger.units.Factor.METRES_PER_SECOND_PER_MPH;
import static io.rowledger.units.Factor.SQUARE_METRES_PER_ACRE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.rate.RateFormula;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rate, speed, width and flow as extension services print them. */
class RateFormulasTest {
    /** Half a unit of the last digit worked out here. */
    private static final double SIX_DIGITS = 5.1e-7;

    @Test
    void the_customary_constants_are_exact() {
        // Derived: 43,560 ft²/ac × 12 in/ft × 60 min/h ÷ 5,280 ft/mi = 5940; 10,000 m²/ha × 60 ÷ 1000 = 600;
        // 5940/128 = 46.406 with ounces a minute. Printed as 5940, 46.4 and 600 by every source below.
        assertEquals(1, gallonsPerMinute(1, 1, 5940), 1e-12);
        assertEquals(1, gallonsPerMinute(1, 1, 495 * 12), 1e-12, "495 with the width in feet");
        assertEquals(1, litresPerMinute(1, 1, 600), 1e-12);
        assertEquals(46.40625, gallonsPerAcre(1.0 / 128, 1, 1), 1e-10);
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '"', textBlock = """
            # gal/ac, mph, in, gal/min, source
            20, 4,  20, 0.269360, "Cornell Cooperative Extension, Crop and Pest Management Guidelines 2024, Grapes, s. 7.6: seen (prints 0.27)"
            15, 6,  30, 0.454545, "knife in every 30 in middle: derived"
            50, 6,  30, 1.515152, "knife in every 30 in middle: derived"
            50, 6,  60, 3.030303, "skip-row, a knife in every other middle: derived"
            50, 6,  15, 0.757576, "outside half-rate knife: derived"
            20, 7.5, 360, 9.090909, "whole 30 ft pass: derived"
            """)
    void flow_follows_from_rate_speed_and_width(double gpa, double mph, double inches, double gpm, String source) {
        assertEquals(gpm, gallonsPerMinute(gpa, mph, inches), SIX_DIGITS, source);
        assertEquals(gpa, gallonsPerAcre(gpm, mph, inches), gpa * 2e-6, source);
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '"', textBlock = """
            # gal/min, mph, in, gal/ac, half a unit of the last digit, source
            3.75,      5, 222, 20.0676, 0.00005, "Albany County (Wyoming) Weed and Pest Control District, Calibrating your sprayer: seen, worked to more digits"
            3.75,      5, 222, 20,      0.5,     "the same, as printed: seen"
            0.2734375, 4, 20,  20.30,   0.005,   "35 oz/min, Henderson County applicator problem 1-4: inputs seen"
            0.2421875, 4, 12,  29.97,   0.005,   "31 oz/min on a 12 in band, Henderson County applicator problem 1-5: inputs seen"
            """)
    void rate_follows_from_flow_speed_and_width(
            double gpm, double mph, double inches, double gpa, double half, String source) {
        // Sources that count in ounces round 46.40625 to 46.4, 1.3 parts in ten thousand.
        double ounceConstant = source.contains("oz/min") ? gpa * 1.4e-4 : 0;
        assertEquals(gpa, gallonsPerAcre(gpm, mph, inches), half + ounceConstant, source);
    }

    @Test
    void the_first_example_prints_as_its_source_prints_it() {
        // Cornell Cooperative Extension, as above: 20 × 4 × 20 / 5940 = 1600/5940, printed 0.27: seen.
        assertEquals(0.27, Math.round(gallonsPerMinute(20, 4, 20) * 100) / 100.0);
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '"', textBlock = """
            # L/ha, km/h, m, L/min, half a unit of the last digit, source
            200, 7.8, 0.5, 1.3,      1e-9,    "Farm Ireland, Useful formulae for nozzle selection, forward speed and application rate: seen"
            190, 10,  0.5, 1.583333, 5e-7,    "R package AgroTech 1.0.2, flowrat(Q = 190, V = 10, W = 50): inputs seen"
            98.84, 9, 0.5, 0.7413,   5e-5,    "40 L/ac at 9 km/h, Alberta Agdex 606-1 p. 17, 0.5 m spacing assumed: derived"
            """)
    void metric_flow_follows_from_rate_speed_and_width(
            double lpha, double kmh, double metres, double lpm, double half, String source) {
        assertEquals(lpm, litresPerMinute(lpha, kmh, metres), half, source);
        double rate = RateFormula.rateLPerM2(lpm * LITRES_PER_SECOND_PER_LPM, kmh * METRES_PER_SECOND_PER_KMH, metres);
        assertEquals(lpha, rate / LITRES_PER_SQUARE_METRE_PER_LPHA, lpha * half / lpm + 1e-9, source);
    }

    @Test
    void the_alberta_nozzle_lies_within_the_band_its_source_calls_good() {
        // Alberta Agriculture, Agdex 606-1, p. 17: 40 L/ac at 9 km/h, 0.71 to 0.79 L/min a nozzle is in order: seen.
        double lpha = 40 / (SQUARE_METRES_PER_ACRE / 10_000);
        double lpm = litresPerMinute(lpha, 9, 0.5);
        assertTrue(lpm > 0.71 && lpm < 0.79, "L/min: " + lpm);
    }

    @Test
    void a_measured_strip_gives_its_rate() {
        // Henderson County applicator problem 1-2: 6.5 gal on 660 × 21.7 ft is 19.77 gal/ac: inputs seen.
        double seconds = 75;
        double rate = RateFormula.rateLPerM2(
                6.5 * LITRES_PER_GALLON / seconds, 660 * METRES_PER_FOOT / seconds, 21.7 * METRES_PER_FOOT);
        assertEquals(19.77, rate / LITRES_PER_SQUARE_METRE_PER_GPA, 0.005);
    }

    @ParameterizedTest
    @CsvSource({"20, 204.19, 204", "30, 136.13, 136"})
    void on_the_128th_acre_course_an_ounce_is_a_gallon_an_acre(double inches, double feet, double printed) {
        // Clemson University, 1/128-acre method, course lengths printed 204 and 136 ft: seen; two more digits derived.
        double rate = RateFormula.rateLPerM2(LITRES_PER_FLUID_OUNCE, feet * METRES_PER_FOOT, inches * METRES_PER_INCH);
        assertEquals(1, rate / LITRES_PER_SQUARE_METRE_PER_GPA, 0.0051 / feet);
        assertEquals(printed, Math.rint(feet));
    }

    @Test
    void a_misprinted_course_length_does_not_come_out() {
        // One Clemson table prints "120 in, 204 ft" and means 20 in: seen. With 120 in an ounce is a sixth of a gallon.
        double rate = RateFormula.rateLPerM2(LITRES_PER_FLUID_OUNCE, 204 * METRES_PER_FOOT, 120 * METRES_PER_INCH);
        assertEquals(1.0 / 6, rate / LITRES_PER_SQUARE_METRE_PER_GPA, 0.001);
    }

    @Test
    void a_misprinted_rate_does_not_come_out() {
        // A Florida exam-preparation page prints 0.15 gal/min at 5 mph over 48 in as 327 gal/ac: it left out the 88
        // feet
        // a minute in a mile an hour (seen). Right is 3.71 (derived).
        double gpa = gallonsPerAcre(0.15, 5, 48);
        assertEquals(3.71, gpa, 0.005);
        assertEquals(327, gpa * 88, 0.5);
    }

    @Test
    void speeds_come_from_distance_and_time() {
        // Henderson County applicator problem 1-3: 300 ft in 51 s; with its constant 204/s 4.00 mph, exactly 4.011.
        double mph = 300 * METRES_PER_FOOT / 51 / METRES_PER_SECOND_PER_MPH;
        assertEquals(4.011, mph, 0.0005);
        assertEquals(204.545, 51 * mph, 0.0005);
        // Alberta Agdex 606-1 prints 6:48 for 800 m at 7 km/h: seen, a misprint; its other rows are right. Exact
        // 6:51.4.
        assertEquals(6 * 60 + 51.4, 800 / (7 * METRES_PER_SECOND_PER_KMH), 0.05);
    }

    @Test
    void a_rate_in_gallons_or_pounds_an_acre_has_its_metric_twin() {
        // Derived from the exact definitions (NIST SP 811 App. B): 1 gal/ac = 9.353956228 L/ha (cut off), 1 lb/ac =
        // 1.120851156 kg/ha.
        assertEquals(9.353956228, LITRES_PER_SQUARE_METRE_PER_GPA / LITRES_PER_SQUARE_METRE_PER_LPHA, 1e-9);
        assertEquals(1.120851156, KILOGRAMS_PER_POUND / SQUARE_METRES_PER_ACRE * 10_000, 5e-10);
    }

    private static double gallonsPerMinute(double gpa, double mph, double inches) {
        double flow = RateFormula.flowLPerS(
                gpa * LITRES_PER_SQUARE_METRE_PER_GPA, mph * METRES_PER_SECOND_PER_MPH, inches * METRES_PER_INCH);
        return flow / LITRES_PER_SECOND_PER_GPM;
    }

    private static double gallonsPerAcre(double gpm, double mph, double inches) {
        double rate = RateFormula.rateLPerM2(
                gpm * LITRES_PER_SECOND_PER_GPM, mph * METRES_PER_SECOND_PER_MPH, inches * METRES_PER_INCH);
        return rate / LITRES_PER_SQUARE_METRE_PER_GPA;
    }

    private static double litresPerMinute(double lpha, double kmh, double metres) {
        double flow =
                RateFormula.flowLPerS(lpha * LITRES_PER_SQUARE_METRE_PER_LPHA, kmh * METRES_PER_SECOND_PER_KMH, metres);
        return flow / LITRES_PER_SECOND_PER_LPM;
    }
}
