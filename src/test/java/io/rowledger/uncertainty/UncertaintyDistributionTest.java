package io.rowledger.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class UncertaintyDistributionTest {
    /** NIST/SEMATECH e-Handbook, table of the cumulative normal distribution: 1.645 holds 90 %, 1.2816 leaves 10 % above. */
    @Test
    void a_normal_error_reaches_1_645_sigma_and_one_sided_1_282() {
        assertEquals(1.645 * 3, UncertaintyDistribution.about(7, 3, 0).expansion(), 0.001);
        assertEquals(1.2816 * 3, new UncertaintyDistribution(0, 1000, 3, 0).expansion(), 0.001);
    }

    @Test
    void a_rectangular_error_reaches_nine_tenths_of_its_half_width() {
        assertEquals(0.9 * 5, UncertaintyDistribution.about(7, 0, 5).expansion(), 1e-9);
        Interval interval = UncertaintyDistribution.about(7, 0, 5).interval(7);
        assertEquals(2.5, interval.low(), 1e-9);
        assertEquals(11.5, interval.high(), 1e-9);
    }

    /** A million draws of another generator: the 90 % point of |normal + even| is good to 0.2 %. */
    @Test
    void a_sum_of_both_reaches_as_far_as_drawn_sums_do() {
        Random random = new Random(5);
        double[] size = new double[1_000_000];
        for (int i = 0; i < size.length; i++) {
            size[i] = Math.abs(0.7 * random.nextGaussian() + 2 * (2 * random.nextDouble() - 1));
        }
        Arrays.sort(size);
        assertEquals(size[900_000], UncertaintyDistribution.about(0, 0.7, 2).expansion(), 0.006);
    }

    @Test
    void what_is_not_known_has_no_bounds() {
        assertFalse(UncertaintyDistribution.about(Double.NaN, 1, 0).interval(3).known());
        assertFalse(UncertaintyDistribution.about(3, Double.NaN, 0).interval(3).known());
        assertFalse(UncertaintyDistribution.about(3, 1, 0).interval(Double.NaN).known());
    }
}
