package io.rowledger.diagnose.detect;

import static io.rowledger.diagnose.detect.HandMadeFlows.PERIOD_S;
import static io.rowledger.diagnose.detect.HandMadeFlows.START_S;
import static io.rowledger.diagnose.detect.HandMadeFlows.USUAL_GAL_PER_MIN;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.diagnose.detect.HandMadeFlows.Flow;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Rows that differ from the others while another meter, or the rounding, errs as well, on flows written down by hand. */
class HandMadeLevelsTest extends HandMadeCase {
    /** Row 2 from the onset on. */
    private static double leak(int row, double timeS) {
        return row == 2 && timeS >= ONSET_S ? 1.3 : 1;
    }

    /** Row 5 from the start on. */
    private static double scale(int row) {
        return row == 5 ? 1.34 : 1;
    }

    private Diagnosis metered(Flow gives, Flow reads) {
        return new HandMadeFlows(gives)
                .withEqualMeters()
                .metered(reads)
                .withTotal()
                .diagnose(folder);
    }

    @Test
    void a_leak_that_the_total_saw_is_told_beside_a_meter_that_reads_high_all_along() {
        Diagnosis diagnosis = metered((row, t, due) -> leak(row, t) * due, (row, t, gives) -> scale(row) * gives);
        assertEquals(Set.of("LEAKING[2]", "METER_SCALE[5]"), kinds(diagnosis), FaultField.brief(diagnosis));
    }

    @Test
    void a_rise_that_the_total_did_not_see_is_no_leak_there() {
        Diagnosis diagnosis = metered((row, t, due) -> due, (row, t, gives) -> leak(row, t) * scale(row) * gives);
        assertEquals(Set.of("METER_SCALE[5]"), kinds(diagnosis), FaultField.brief(diagnosis));
    }

    /**
     * Rows of 0.233 gal/min read 0.2 throughout. Outside rows of 1.5 times that, 0.35, read 0.3 or 0.4 as they scatter by 0.03 about it:
     * some 1.7 times 0.2 on average.
     */
    private Diagnosis rounded(double left, double right) {
        return new HandMadeFlows((row, t, due) ->
                        0.22 * due * (row == 1 ? left : row == 8 ? right : 1) + (due > 0 ? 0.03 * scatter(row, t) : 0))
                .withEqualMeters()
                .steadySpeed(5)
                .rounded(0.1)
                .diagnose(folder);
    }

    /** Uniform between -1 and 1 for an outside row, without a period; 0 for the others. */
    private static double scatter(int row, double timeS) {
        boolean outside = row == 1 || row == 8;
        return outside ? new SplittableRandom(1000L * row + (long) timeS).nextDouble(-1, 1) : 0;
    }

    @Test
    void both_outside_rows_are_off_by_their_share_as_far_as_the_rounding_tells() {
        Diagnosis diagnosis = rounded(1.5, 1.5);
        assertEquals(Set.of("OUTSIDE_SHARE[1, 8]"), kinds(diagnosis), FaultField.brief(diagnosis));
    }

    @Test
    void one_outside_row_is_no_share_there() {
        Diagnosis diagnosis = rounded(1.5, 1);
        assertEquals(Set.of("METER_SCALE[1]"), kinds(diagnosis), FaultField.brief(diagnosis));
    }

    @Test
    void a_leak_is_told_though_rounding_moves_the_sum_of_the_rows_as_much() {
        // 0.40 gal/min a row in the second pass, then 0.377, which reads 0.40: eight rows seem to give half a row more
        // than the total meter sees.
        double k = 0.4 / USUAL_GAL_PER_MIN;
        Diagnosis diagnosis = new HandMadeFlows((row, t, due) -> (row == 2 && t >= 2 * PERIOD_S ? 1.6 : 1) * k * due)
                .withEqualMeters()
                .speeds(5.4, 5, 4.71, 4.71, 4.71, 5.4)
                .swinging(0.004)
                .rounded(0.05)
                .withTotal()
                .diagnose(folder);
        assertTrue(kinds(diagnosis).contains("LEAKING[2]"), FaultField.brief(diagnosis));
    }

    @Test
    void a_row_that_always_read_a_little_low_is_restricted_from_when_it_fell() {
        Diagnosis diagnosis = new HandMadeFlows((row, t, due) -> (row != 2 ? 1 : t < ONSET_S ? 0.955 : 0.5) * due)
                .withEqualMeters()
                .diagnose(folder);
        assertEquals(Set.of("RESTRICTED[2]"), kinds(diagnosis), FaultField.brief(diagnosis));
        assertEquals(START_S + ONSET_S, diagnosis.findings().get(0).fromS(), 3);
    }
}
