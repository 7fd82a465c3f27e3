package io.rowledger.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** The example worked by hand in the package's description. */
class RobustStatisticsTest {
    @Test
    void one_wild_value_moves_neither_median_nor_sigma() {
        double[] values = {1, 2, 3, 4, 100};
        assertEquals(3, RobustStatistics.median(values));
        assertEquals(1.4826, RobustStatistics.sigma(values), 1e-4);
        assertEquals(65.4, RobustStatistics.modifiedZ(100, values), 0.05);
    }
}
