package io.rowledger.published;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.stats.ChangePoints;
import io.rowledger.stats.RobustStatistics;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Cumulative sums and robust outliers against printed tables and worked examples. */
class RobustStatisticsTest {
    /**
     * Modified z: 0.6745 (x − median)/MAD, an outlier beyond 3.5. B. Iglewicz, D. C. Hoaglin, How to Detect and Handle
     * Outliers, ASQC Basic References in Quality Control vol. 16, 1993, section 3.3, pp. 11-13: seen. The examples are
     * derived from it; 0.6745 is Φ⁻¹(0.75) = 0.674489750 to four digits.
     */
    @Test
    void modified_z_of_worked_examples() {
        double[] seven = {10, 10.2, 9.9, 10.1, 10, 9.8, 13};
        assertEquals(10, RobustStatistics.median(seven));
        assertEquals(20.235, RobustStatistics.modifiedZ(13, seven), 20.235 * 2e-5);
        double most = Arrays.stream(seven)
                .filter(x -> x != 13)
                .map(x -> Math.abs(RobustStatistics.modifiedZ(x, seven)))
                .max()
                .orElseThrow();
        assertEquals(1.349, most, 1.349 * 2e-5);
        double[] outlets = {35, 34.6, 35.3, 34.9, 35.1, 34.8, 35.2, 28};
        assertEquals(34.95, RobustStatistics.median(outlets), 1e-12);
        assertEquals(-23.4389, RobustStatistics.modifiedZ(28, outlets), 23.4389 * 2e-5);
        for (double x : outlets) {
            assertEquals(
                    x == 28,
                    Math.abs(RobustStatistics.modifiedZ(x, outlets)) > RobustStatistics.OUTLIER_Z,
                    "outlet at " + x);
        }
    }

    /** Derived: Φ⁻¹(0.75) = 0.674489750196, its inverse 1.482602218506; √(π/2) = 1.253314137316. */
    @Test
    void constants_are_those_of_the_normal_distribution() {
        assertEquals(1 / 0.674489750196082, RobustStatistics.MAD_TO_SIGMA, 1e-12);
        assertEquals(Math.sqrt(Math.PI / 2), RobustStatistics.MEAN_DEVIATION_TO_SIGMA, 1e-15);
        // Both estimate σ of normal values: 40,000 of them leave an error of about 0.6 %.
        SplittableRandom random = new SplittableRandom(5);
        double[] normal =
                random.doubles(40_000).map(u -> Math.sqrt(-2 * Math.log(1 - u))).toArray();
        for (int i = 0; i < normal.length; i++) {
            normal[i] *= 3 * Math.cos(2 * Math.PI * random.nextDouble());
        }
        assertEquals(3, RobustStatistics.sigma(normal), 0.06);
    }

    /**
     * A steady controller makes most values equal and the MAD 0; then the mean absolute deviation times 1.2533 stands in
     * (from memory). Worked by hand: seven times 5 and once 9, mean absolute deviation 0.5.
     */
    @Test
    void equal_values_do_not_divide_by_zero() {
        double[] steady = {5, 5, 5, 5, 9, 5, 5, 5};
        assertEquals(0.5 * 1.2533141373155001, RobustStatistics.sigma(steady), 1e-12);
        assertEquals(4 / (0.5 * 1.2533141373155001), RobustStatistics.modifiedZ(9, steady), 1e-12);
        assertEquals(0, RobustStatistics.modifiedZ(5, steady));
        assertEquals(0, RobustStatistics.modifiedZ(7, new double[] {7, 7, 7}));
    }

    /** The median by selection is the middle of the sorted values, whatever their order. */
    @Test
    void the_median_by_selection_is_that_of_the_sorted_values() {
        SplittableRandom random = new SplittableRandom(11);
        for (int round = 0; round < 2000; round++) {
            int n = 1 + random.nextInt(64);
            double[] values = random.doubles(n).map(x -> Math.floor(x * 20)).toArray();
            double[] sorted = values.clone();
            Arrays.sort(sorted);
            double expected = n % 2 == 1 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
            assertEquals(expected, RobustStatistics.median(values, n), 0.0);
        }
    }

    /** Derived: a step by three σ in 200 normal values is cut at the step; plain noise is not cut. */
    @Test
    void binary_segmentation_cuts_at_the_step_and_nowhere_else() {
        SplittableRandom random = new SplittableRandom(3);
        double[] values = new double[200];
        for (int i = 0; i < values.length; i++) {
            double noise = 0;
            for (int k = 0; k < 12; k++) {
                noise += random.nextDouble() - 0.5;
            }
            values[i] = (i < 120 ? 10 : 7) + noise;
        }
        int[] starts = new ChangePoints(5, 0.5, 3).starts(values, values.length);
        assertEquals(2, starts.length, Arrays.toString(starts));
        assertTrue(Math.abs(starts[1] - 120) <= 2, Arrays.toString(starts));
        assertArrayEquals(new int[] {0}, new ChangePoints(5, 0.5, 3).starts(values, 120));
    }
}
