package io.rowledger.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class ScanLinesTest {
    private static final int LINES = 8;
    private final ScanLines lines = new ScanLines(0, 4, LINES);

    private void rectangle(double fromU, double toU) {
        lines.add(new double[] {fromU, toU, toU, fromU}, new double[] {0, 0, 4, 4});
    }

    private static double[][] everywhere(double... pairs) {
        double[][] domain = new double[LINES][];
        java.util.Arrays.fill(domain, pairs);
        return domain;
    }

    /** By hand: 10 m and 4 m wide, 2 m of it twice, 4 m high, in a field 15 m wide. */
    @Test
    void covered_overlap_and_skip_area_of_two_rectangles() {
        rectangle(0, 10);
        rectangle(8, 12);
        lines.sum(everywhere(-1, 14), 0);
        assertEquals(48, lines.coveredM2(), 1e-9);
        assertEquals(8, lines.overlapM2(), 1e-9);
        assertEquals(12, lines.skipM2(), 1e-9);
    }

    /** Covered ground outside the field fills nothing in it. */
    @Test
    void only_ground_inside_the_field_can_be_skipped() {
        rectangle(-5, -2);
        rectangle(20, 30);
        lines.sum(everywhere(0, 3, 6, 10), 0);
        assertEquals(7 * 4, lines.skipM2(), 1e-9);
    }

    @Test
    void without_a_boundary_only_gaps_between_strips_are_skips() {
        rectangle(0, 4);
        rectangle(5, 9);
        rectangle(14, 20);
        lines.sum(everywhere(0, 11), 2);
        // The gap of 1 m is narrow; of the one from 9 to 14 m, 2 m lie within the ground that is enclosed.
        assertEquals((1 + 2) * 4, lines.skipM2(), 1e-9);
    }

    /** A parallelogram and a triangle (two corners in one place), by the shoelace formula: 6·4 and ½·6·4. */
    @Test
    void slanting_and_folded_quadrangles_have_their_area() {
        lines.add(new double[] {0, 6, 9, 3}, new double[] {0, 0, 4, 4});
        lines.sum(everywhere(), 0);
        assertEquals(24, lines.coveredM2(), 1e-9);
        lines.clear();
        lines.add(new double[] {0, 6, 3, 3}, new double[] {0, 0, 4, 4});
        lines.sum(everywhere(), 0);
        assertEquals(12, lines.coveredM2(), 1e-9);
    }
}
