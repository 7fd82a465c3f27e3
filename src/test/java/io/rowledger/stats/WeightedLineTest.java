package io.rowledger.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class WeightedLineTest {
    /**
     * By hand: x̄ = 2.5, ȳ = 0.975, Σ(x − x̄)² = 5, Σ(x − x̄)(y − ȳ) = −0.08, so b = −0.016 and σ_b = 0.01/√5 = 0.004472. The residuals
     * 0.001, −0.003, 0.003 and −0.001 give χ² = 0.2 on 2 degrees of freedom: no more scatter than σ says. The normal quantile for
     * 90 % is 1.645, so the slope is −0.016 ± 0.0074.
     */
    @Test
    void a_line_through_four_jobs() {
        WeightedLine line = WeightedLine.through(
                new double[] {1, 2, 3, 4}, new double[] {1.00, 0.98, 0.97, 0.95}, new double[] {.01, .01, .01, .01});
        assertEquals(-0.016, line.slope(), 1e-12);
        assertEquals(0.01 / Math.sqrt(5), line.slopeSigma(), 1e-12);
        assertEquals(1.645 * 0.004472, line.uncertainty(0.9), 1e-5);
    }

    /**
     * The same with σ = 0.001: χ² = 20, so σ_b grows by √10 over 0.001/√5, which is the ordinary least-squares error. Student's t for
     * 90 % and 2 degrees of freedom is 2.920 (as in every table of t).
     */
    @Test
    void points_that_scatter_more_than_they_should_widen_the_error() {
        WeightedLine line = WeightedLine.through(
                new double[] {1, 2, 3, 4}, new double[] {1.00, 0.98, 0.97, 0.95}, new double[] {.001, .001, .001, .001
                });
        assertEquals(-0.016, line.slope(), 1e-12);
        double sigma = Math.sqrt(10) * 0.001 / Math.sqrt(5);
        assertEquals(sigma, line.slopeSigma(), 1e-12);
        assertEquals(2.920 * sigma, line.uncertainty(0.9), 1e-3 * sigma);
    }

    /** A point that is hardly known hardly counts: the line runs through the other three, of slope 0. */
    @Test
    void weights_count() {
        WeightedLine line = WeightedLine.through(
                new double[] {1, 2, 3, 4}, new double[] {1, 1, 1, 5}, new double[] {.01, .01, .01, 1e6});
        assertEquals(0, line.slope(), 1e-6);
    }

    @Test
    void two_points_or_one_place_are_no_line() {
        double[] sigma = {1, 1, 1};
        assertTrue(Double.isNaN(WeightedLine.through(new double[] {1, 2, Double.NaN}, new double[] {1, 2, 3}, sigma)
                .slope()));
        assertTrue(Double.isNaN(WeightedLine.through(new double[] {2, 2, 2}, new double[] {1, 2, 3}, sigma)
                .slope()));
        assertTrue(Double.isNaN(WeightedLine.through(new double[] {2, 2, 2}, new double[] {1, 2, 3}, sigma)
                .uncertainty(0.9)));
    }
}
