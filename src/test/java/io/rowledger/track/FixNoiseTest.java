package io.rowledger.track;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.log.LogTable;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FixNoiseTest {
    @ParameterizedTest
    @CsvSource({"0.005, 0.005", "0.012, 0.012", "0.03, 0.03", "0.5, 0.06", "0.0001, 0.0024"})
    void the_logs_own_noise_is_believed_within_a_factor_of_five_of_the_nominal_1_2_cm(double real, double found) {
        SplittableRandom random = new SplittableRandom(3);
        LogTable log = TestLogs.along(
                t -> new double[] {
                    20 * Math.sin(t / 30) + real * random.nextGaussian(), 2 * t + real * random.nextGaussian()
                },
                4000,
                5,
                1,
                0.05);
        Track track = TrackBuilder.build(log, TestLogs.rig(1.6, 0.9, 4.4, 5.9, 1), TrackOptions.defaults());
        assertEquals(found, track.quality().noiseM()[4], 0.06 * found);
    }

    @Test
    void a_short_log_keeps_the_nominal_value() {
        LogTable log = TestLogs.along(t -> new double[] {0, 2 * t}, 100, 5, 1, 0.05);
        Track track = TrackBuilder.build(log, TestLogs.rig(1.6, 0.9, 4.4, 5.9, 1), TrackOptions.defaults());
        assertEquals(0.012, track.quality().noiseM()[4]);
    }
}
