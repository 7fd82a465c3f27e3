package io.rowledger.geo;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** The example of the room's package page, number by number. */
class GeoWorkedExampleTest {
    private static final double HALF_A_MILLIMETRE = 5e-4;

    @Test
    void nine_ten_thousandths_of_a_degree_at_45_north_are_the_metres_worked_by_hand() {
        LocalPlane plane = new LocalPlane(45, -93);
        double[] north = new double[2];
        double[] east = new double[2];
        plane.forward(45.0009, -93, north);
        plane.forward(45, -92.9991, east);
        assertEquals(0, north[0], HALF_A_MILLIMETRE);
        assertEquals(100.019, north[1], HALF_A_MILLIMETRE);
        assertEquals(70.962, east[0], HALF_A_MILLIMETRE);
        // The parallel bends north by x²·tan φ / 2N, 0.4 mm here; on the page it is straight.
        assertEquals(0, east[1], HALF_A_MILLIMETRE);
        assertEquals(-35.355, Math.toDegrees(Heading.of(north[0] - east[0], north[1] - east[1])), 5e-4);
    }

    @Test
    void a_length_a_kilometre_off_the_meridian_is_too_long_by_twelve_parts_in_a_thousand_million() {
        // x²/(2·M·N) = 10⁶ / (2 · 6,367,381.82 · 6,388,838.29) = 1.229e-8.
        LocalPlane plane = new LocalPlane(45, -93);
        double[] there = new double[2];
        plane.inverse(1000, 0, there);
        double lat = there[0];
        double lon = there[1];
        plane.forward(lat + 5e-4, lon, there);
        double eastTop = there[0];
        double northTop = there[1];
        plane.forward(lat - 5e-4, lon, there);
        double off = Math.hypot(eastTop - there[0], northTop - there[1]);
        LocalPlane own = new LocalPlane(lat, lon);
        own.forward(lat + 5e-4, lon, there);
        double top = there[1];
        own.forward(lat - 5e-4, lon, there);
        assertEquals(1.229e-8, off / (top - there[1]) - 1, 2e-10);
    }

    @Test
    void headings_turn_clockwise_from_north_and_wrap_to_half_a_turn() {
        assertEquals(0, Heading.of(0, 1));
        assertEquals(Math.PI / 2, Heading.of(1, 0));
        assertEquals(Math.PI, Heading.of(0, -1));
        assertEquals(-Math.PI / 2, Heading.of(-1, 0));
        assertEquals(Math.PI, Heading.wrap(-Math.PI), 1e-15);
        assertEquals(-Math.PI / 2, Heading.wrap(3.5 * Math.PI), 1e-12);
        assertEquals(0.1, Heading.wrap(0.1 + 6 * Math.PI), 1e-12);
    }
}
