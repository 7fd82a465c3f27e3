package io.rowledger.diagnose.detect;

import static io.rowledger.diagnose.detect.HandMadeFlows.PERIOD_S;

import io.rowledger.diagnose.detect.HandMadeFlows.Flow;
import io.rowledger.finding.FindingKind;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** A reading that rests in a log rounded to 0.01 gal/min, one percent of a row's flow, on flows written down by hand. */
class HandMadeRestTest extends HandMadeCase {
    private static final double STEP = 0.01;

    /** Uniform between -1 and 1, without a period. */
    private static double scatter(int row, double timeS) {
        return new SplittableRandom(1000L * row + (long) timeS).nextDouble(-1, 1);
    }

    /** All rows give 1.060 or 1.065 gal/min, at one speed, and scatter by 0.003 about it. */
    private static final Flow STEADY =
            (row, t, due) -> due > 0 ? (row == 5 ? 1.060 : 1.065) + 0.003 * scatter(row, t) : 0;

    /** In 80 s of the third pass. */
    private static boolean stuck(int row, double timeS) {
        return row == 5 && timeS >= 2 * PERIOD_S + 25 && timeS < 2 * PERIOD_S + 105;
    }

    @Test
    void a_row_in_the_middle_of_a_step_rests_while_others_read_two_neighboring_steps_in_turn() {
        // 1.06 all the time in row 5, 1.06 and 1.07 in turn in the others.
        silent(new HandMadeFlows(STEADY)
                .withEqualMeters()
                .steadySpeed(5)
                .rounded(STEP)
                .diagnose(folder));
    }

    @Test
    void a_reading_that_rests_while_others_follow_the_speed_over_several_steps_is_stuck() {
        // Speed and flow swing by 4 %, four steps, within 12 s.
        only(
                new HandMadeFlows((row, t, due) -> due)
                        .withEqualMeters()
                        .speeds(5, 5, 5, 5, 5, 5)
                        .within(12)
                        .metered((row, t, gives) -> stuck(row, t) ? 1.06 : gives)
                        .rounded(STEP)
                        .diagnose(folder),
                FindingKind.METER_STUCK,
                5);
    }
}
