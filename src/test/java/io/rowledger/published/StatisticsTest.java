package io.rowledger.published;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.stats.WeightedMoments;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Mean and standard deviation against the certified values of the Statistical Reference Datasets (StRD) of NIST,
 * univariate summary statistics: certified text seen, recomputed with 50 digits and agreed. The set PiDigits is not here:
 * the true first 5000 digits of π sum to 22,679, its certified mean says 22,674, so it cannot be made by rule.
 */
class StatisticsTest {
    /** Certified values have 15 digits; sums of a thousand doubles lose one or two of them. */
    private static final double FOURTEEN_DIGITS = 1e-14;

    private static final double THIRTEEN_DIGITS = 1e-13;

    @ParameterizedTest
    @CsvSource({
        "lew,      200, -177.435000000000, 277.332168044316",
        "lottery,  218, 518.958715596330,  291.699727470969",
        "mavro,    50,  2.00185600000000,  0.000429123454003053",
        "michelso, 100, 299.852400000000,  0.0790105478190518"
    })
    void observed_sets_have_their_certified_mean_and_deviation(String set, int n, double mean, double deviation)
            throws IOException {
        double[] data = resource(set);
        assertEquals(n, data.length);
        WeightedMoments moments = momentsOf(data);
        assertEquals(mean, moments.mean(), Math.abs(mean) * FOURTEEN_DIGITS);
        assertEquals(deviation, moments.sampleDeviation(), deviation * heldDigits(mean, deviation));
    }

    @ParameterizedTest
    @CsvSource({
        // The set's base number, certified mean and deviation; 1001 values: base + 0.2 once, then base + 0.1 and
        // base + 0.3 in turn (NumAcc2 with base 1, so 1.2, 1.1, 1.3 ...).
        "NumAcc2, 1,        1.2,        0.1",
        "NumAcc3, 1000000,  1000000.2,  0.1",
        "NumAcc4, 10000000, 10000000.2, 0.1"
    })
    void generated_sets_have_their_certified_mean_and_deviation(
            String set, double base, double mean, double deviation) {
        double[] data = new double[1001];
        for (int i = 0; i < data.length; i++) {
            data[i] = base + (i == 0 ? 0.2 : i % 2 == 1 ? 0.1 : 0.3);
        }
        WeightedMoments moments = momentsOf(data);
        assertEquals(mean, moments.mean(), mean * FOURTEEN_DIGITS, set);
        // Sums of squares would leave no digit of NumAcc4: 1e17 less 1e17 to find 10.
        assertEquals(deviation, moments.sampleDeviation(), deviation * heldDigits(mean, deviation), set);
    }

    @Test
    void num_acc_1_has_its_certified_mean_and_deviation() {
        WeightedMoments moments = momentsOf(10_000_001, 10_000_003, 10_000_002);
        assertEquals(10_000_002, moments.mean(), 0);
        assertEquals(1, moments.sampleDeviation(), 1e-15);
    }

    @Test
    void a_weight_counts_like_as_many_equal_observations() {
        // NumAcc2 as three weighted values: 1.2 once, 1.1 and 1.3 five hundred times each; certified mean 1.2 and
        // deviation 0.1 with n − 1.
        WeightedMoments moments = new WeightedMoments();
        moments.add(1.2, 1);
        moments.add(1.1, 500);
        moments.add(1.3, 500);
        assertEquals(1001, moments.weight());
        assertEquals(1.2, moments.mean(), 1e-14);
        assertEquals(0.1, moments.sampleDeviation(), 1e-14);
        assertEquals(0.1 * Math.sqrt(1000.0 / 1001), moments.populationDeviation(), 1e-14);
        assertEquals(0.1 * Math.sqrt(1000.0 / 1001) / 1.2, moments.variation(), 1e-14);
    }

    @Test
    void eight_outlets_of_which_one_is_low_have_the_variation_worked_out_by_hand() {
        // Derived: mean 34.1125, sample deviation 2.479883, coefficient of variation 7.2697 %.
        WeightedMoments moments = momentsOf(35, 34.6, 35.3, 34.9, 35.1, 34.8, 35.2, 28);
        assertEquals(34.1125, moments.mean(), 1e-12);
        assertEquals(2.479883, moments.sampleDeviation(), 5e-7);
        assertEquals(7.2697, 100 * moments.sampleDeviation() / moments.mean(), 5e-5);
    }

    /** What the doubles of the data themselves leave of the deviation's digits: an ulp of the mean over the deviation. */
    private static double heldDigits(double mean, double deviation) {
        return Math.max(THIRTEEN_DIGITS, Math.ulp(mean) / deviation);
    }

    private static WeightedMoments momentsOf(double... data) {
        WeightedMoments moments = new WeightedMoments();
        for (double x : data) {
            moments.add(x, 1);
        }
        return moments;
    }

    private static double[] resource(String set) throws IOException {
        String name = "/published/nist/" + set + ".txt";
        try (InputStream in = Objects.requireNonNull(StatisticsTest.class.getResourceAsStream(name))) {
            String text = new String(in.readAllBytes(), StandardCharsets.US_ASCII);
            return Arrays.stream(text.trim().split("\\s+"))
                    .mapToDouble(Double::parseDouble)
                    .toArray();
        }
    }
}
