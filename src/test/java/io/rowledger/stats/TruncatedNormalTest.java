package io.rowledger.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class TruncatedNormalTest {
    @Test
    void the_tail_beyond_a_bound_is_that_of_the_printed_table() {
        // M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 1964, tables 26.1 and 26.2: P(1), P(2),
        // P(3),
        // and -log10 Q(x) for x = 5, 10 and 20. A bound of 31 sigma stands for infinity.
        assertEquals(
                Math.log(1 - 0.841344746068543), TruncatedNormal.of(1, 31, 0, 1).logZ(), 1e-13);
        assertEquals(
                Math.log(1 - 0.977249868051821), TruncatedNormal.of(2, 31, 0, 1).logZ(), 1e-12);
        assertEquals(
                Math.log(1 - 0.998650101968370), TruncatedNormal.of(3, 31, 0, 1).logZ(), 1e-11);
        assertEquals(6.54265, -TruncatedNormal.of(5, 31, 0, 1).logZ() / Math.log(10), 5e-6);
        assertEquals(23.11805, -TruncatedNormal.of(10, 31, 0, 1).logZ() / Math.log(10), 5e-6);
        assertEquals(88.56010, -TruncatedNormal.of(20, 31, 0, 1).logZ() / Math.log(10), 5e-6);
    }

    @Test
    void slope_and_bend_are_the_derivatives_of_the_log_likelihood() {
        double h = 1e-4;
        for (double mean : new double[] {-9, -1.2, -0.3, 0, 0.5, 2, 12}) {
            TruncatedNormal at = TruncatedNormal.of(-1, 0.6, mean, 0.4);
            double ahead = TruncatedNormal.of(-1, 0.6, mean + h, 0.4).logZ();
            double behind = TruncatedNormal.of(-1, 0.6, mean - h, 0.4).logZ();
            assertEquals((ahead - behind) / (2 * h), at.slope(), 1e-4 * (1 + Math.abs(at.slope())));
            assertEquals((ahead - 2 * at.logZ() + behind) / (h * h), at.bend(), 2e-3 * (1 + Math.abs(at.bend())));
        }
    }

    @Test
    void far_outside_its_bounds_a_mean_is_pulled_back_and_no_number_is_lost() {
        TruncatedNormal far = TruncatedNormal.of(-1, 1, 500, 0.5);
        assertTrue(Double.isFinite(far.logZ()));
        assertTrue(far.slope() < 0 && Double.isFinite(far.slope()));
        assertTrue(far.bend() <= 0 && Double.isFinite(far.bend()));
    }
}
