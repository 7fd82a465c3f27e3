package io.rowledger.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Factors from NIST SP 811 (2008) Appendix B and NIST Handbook 44 Appendix C unless said otherwise. */
class QuantityTest {
    private static double si(String text, Dimension dimension) {
        return assertInstanceOf(Quantity.class, Quantity.read(text, dimension), text)
                .si();
    }

    private static Refusal refused(String text, Dimension dimension) {
        return assertInstanceOf(Refusal.class, Quantity.read(text, dimension), text);
    }

    @Test
    void lengths_are_read_as_people_write_them() {
        assertEquals(5.9, si("5.9 m", Dimension.LENGTH));
        assertEquals(4.4, si("4.4m", Dimension.LENGTH));
        assertEquals(5.8928, si("19 ft 4 in", Dimension.LENGTH), 1e-12);
        assertEquals(5.8928, si("19' 4\"", Dimension.LENGTH), 1e-12);
        assertEquals(1.0668, si("3'6\"", Dimension.LENGTH), 1e-12);
        assertEquals(0.762, si("30 in", Dimension.LENGTH), 1e-12);
        assertEquals(-4.191, si("-165 in", Dimension.LENGTH), 1e-12);
        assertEquals(-4.191, si("\u2212165 in", Dimension.LENGTH), 1e-12);
        assertEquals(-1.0668, si("-3 ft 6 in", Dimension.LENGTH), 1e-12);
        assertEquals(0.75, si("75 cm", Dimension.LENGTH), 1e-12);
        assertEquals(0.5, si(".5 m", Dimension.LENGTH));
    }

    @Test
    void every_other_dimension_has_its_units() {
        assertEquals(1.325280, si("11.06 lb/gal", Dimension.DENSITY), 1e-6);
        assertEquals(1.325, si("1325 kg/m3", Dimension.DENSITY), 1e-12);
        // 9.353956 L/ha from 3.785411784 L and 4046.8564224 m2
        assertEquals(42 * 9.353956e-4, si("42 gal/ac", Dimension.RATE), 1e-8);
        assertEquals(0.02, si("200 L/ha", Dimension.RATE), 1e-15);
        assertEquals(0, si("0 s", Dimension.TIME));
        assertEquals(90, si("1 min 30 s", Dimension.TIME));
        assertEquals(6.309020e-2, si("1 gal/min", Dimension.FLOW), 1e-8);
        assertEquals(6.309020e-2, si("128 fl oz per minute", Dimension.FLOW), 1e-8);
        assertEquals(0.44704, si("1 mph", Dimension.SPEED), 1e-15);
        assertEquals(0.5144444, si("1 kn", Dimension.SPEED), 1e-7);
        assertEquals(2, si("7.2 km/h", Dimension.SPEED), 1e-12);
        assertEquals(6894.757, si("1 psi", Dimension.PRESSURE), 1e-3);
        assertEquals(1e5, si("1 bar", Dimension.PRESSURE));
        assertEquals(Math.PI / 2, si("90 deg", Dimension.ANGLE), 1e-15);
        assertEquals(0.32, si("32 %", Dimension.FRACTION), 1e-15);
    }

    @Test
    void a_figure_without_a_unit_is_answered_with_what_to_write() {
        Refusal refusal = refused("4.4", Dimension.LENGTH);
        assertEquals("\"4.4\", a figure without a unit", refusal.found());
        assertEquals("write the unit: 4.4 m, 4.4 cm, 4.4 mm, 4.4 ft or 4.4 in, whichever it is", refusal.hint());
    }

    @Test
    void a_unit_of_another_dimension_is_named_for_what_it_is() {
        assertEquals(
                "\"42 gal/min\", a flow", refused("42 gal/min", Dimension.RATE).found());
    }

    @Test
    void what_is_no_figure_is_refused() {
        for (String text : List.of(
                "",
                "m",
                "five m",
                "5,9 m",
                "1.2.3 m",
                "5 m 3",
                "4 in 19 ft",
                "3 ft 4 ft",
                "1 ft 2 ft 3 in",
                "5 - 3 m",
                "1e400 m x",
                "nan m",
                "5 m/s 2 m/s",
                "- m")) {
            refused(text, Dimension.LENGTH);
        }
    }
}
