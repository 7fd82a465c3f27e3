package io.rowledger.published;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.units.Factor;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Conversion factors against NIST SP 811 (2008) Appendix B, NIST Handbook 44 Appendix C and ISO 11783-11. */
class UnitFactorsTest {
    static Arguments[] factors() {
        return new Arguments[] {
            exact("inch, m", 0.0254, Factor.METRES_PER_INCH),
            exact("international foot, m", 0.3048, Factor.METRES_PER_FOOT),
            exact("mile, m", 1609.344, Factor.METRES_PER_MILE),
            exact("international acre, m² (this one seen)", 4046.8564224, Factor.SQUARE_METRES_PER_ACRE),
            exact("hectare, m²", 10_000, Factor.SQUARE_METRES_PER_HECTARE),
            exact("US gallon of 231 in³, L", 3.785411784, Factor.LITRES_PER_GALLON),
            exact("avoirdupois pound, kg", 0.45359237, Factor.KILOGRAMS_PER_POUND),
            exact("mile an hour, m/s", 0.44704, Factor.METRES_PER_SECOND_PER_MPH),
            derived("mile an hour, km/h", 1.609344, 5e-7, Factor.METRES_PER_SECOND_PER_MPH * 3.6),
            derived(
                    "gallon an acre, L/ha, cut off after nine decimals",
                    9.353956228,
                    1e-9,
                    Factor.LITRES_PER_SQUARE_METRE_PER_GPA * 1e4),
            derived("pound an acre, kg/ha", 1.120851156, 5e-10, Factor.KILOGRAMS_PER_SQUARE_METRE_PER_LBAC * 1e4),
            derived("gallon a minute, L/min", 3.785411784, 1e-14, Factor.LITRES_PER_SECOND_PER_GPM * 60),
            derived("pound a gallon, kg/L", 0.119826427, 5e-10, Factor.KILOGRAMS_PER_LITRE_PER_LBGAL),
            derived("10.67 lb/gal, kg/L", 1.278548, 5e-7, 10.67 * Factor.KILOGRAMS_PER_LITRE_PER_LBGAL),
            derived("11.06 lb/gal, kg/L", 1.325280, 5e-7, 11.06 * Factor.KILOGRAMS_PER_LITRE_PER_LBGAL),
            derived("kilometre an hour, m/s", 0.2777777778, 5e-11, Factor.METRES_PER_SECOND_PER_KMH),
            derived("litre a minute, L/s", 0.0166666667, 5e-11, Factor.LITRES_PER_SECOND_PER_LPM),
            derived("litre a hectare, L/m²", 1e-4, 1e-19, Factor.LITRES_PER_SQUARE_METRE_PER_LPHA),
            derived("US fluid ounce, mL", 29.5735295625, 1e-12, Factor.LITRES_PER_FLUID_OUNCE * 1000),
            // 0.45359237 kg × 9.80665 m/s² over 0.0254² m²; the table rounds it to seven digits.
            derived("pound-force a square inch, Pa", 6894.757293, 5e-4, Factor.PASCALS_PER_PSI),
        };
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("factors")
    void a_factor_is_the_published_one(String what, double published, double half, double ours) {
        assertEquals(published, ours, half, what);
    }

    static Arguments[] dictionary() {
        // ISO 11783-11 data dictionary (isobus.net): number, name, unit and resolution seen; the raw figures derived.
        double cubicMillimetres = 1e6;
        return new Arguments[] {
            derived(
                    "DDI 2 actual volume per area, 1 gal/ac in 0.01 mm³/m²",
                    93_540,
                    0.5,
                    Factor.LITRES_PER_SQUARE_METRE_PER_GPA * cubicMillimetres / 0.01),
            derived(
                    "DDI 2 actual volume per area, 1 L/ha in 0.01 mm³/m²",
                    10_000,
                    1e-9,
                    Factor.LITRES_PER_SQUARE_METRE_PER_LPHA * cubicMillimetres / 0.01),
            derived(
                    "DDI 7 actual mass per area, 1 lb/ac in mg/m²",
                    112.085,
                    5e-4,
                    Factor.KILOGRAMS_PER_SQUARE_METRE_PER_LBAC * 1e6),
            derived(
                    "DDI 37 actual volume per time, 1 L/min in mm³/s",
                    16_666.7,
                    0.05,
                    Factor.LITRES_PER_SECOND_PER_LPM * cubicMillimetres),
            derived(
                    "DDI 37 actual volume per time, 1 gal/min in mm³/s",
                    63_090.1964,
                    5e-5,
                    Factor.LITRES_PER_SECOND_PER_GPM * cubicMillimetres),
            derived("DDI 67 actual working width, 30 ft in mm", 9144, 1e-9, 30 * Factor.METRES_PER_FOOT * 1000),
            derived(
                    "DDI 121 density, 10.67 lb/gal in mg/L",
                    1_278_548,
                    0.5,
                    10.67 * Factor.KILOGRAMS_PER_LITRE_PER_LBGAL * 1e6),
        };
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("dictionary")
    void a_customary_figure_is_the_raw_value_of_the_data_dictionary(
            String what, double published, double half, double ours) {
        assertEquals(published, ours, half, what);
    }

    @Test
    void the_acre_is_the_international_one() {
        // The US survey acre is 4046.872609874 m², a ratio of 1.000004000012 (derived from the survey foot 1200/3937
        // m):
        // 0.0006 ac on 160 ac. NIST and NGS retired the survey foot at the end of 2022 (from memory).
        assertEquals(1.000004000012, 4046.872609874 / Factor.SQUARE_METRES_PER_ACRE, 5e-13);
        assertEquals(43_560, Factor.SQUARE_METRES_PER_ACRE / (Factor.METRES_PER_FOOT * Factor.METRES_PER_FOOT), 1e-9);
    }

    private static Arguments exact(String what, double published, double ours) {
        return Arguments.of(what + ": exact", published, Math.ulp(published), ours);
    }

    private static Arguments derived(String what, double published, double half, double ours) {
        return Arguments.of(what + ": derived", published, half, ours);
    }
}
