package io.rowledger.diagnose.detect;

import static io.rowledger.diagnose.detect.HandMadeFlows.PERIOD_S;
import static io.rowledger.diagnose.detect.HandMadeFlows.USUAL_GAL_PER_MIN;
import static io.rowledger.diagnose.detect.HandMadeFlows.WORK_S;
import static io.rowledger.diagnose.detect.HandMadeFlows.down;
import static io.rowledger.diagnose.detect.HandMadeFlows.sinceDownS;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import io.rowledger.diagnose.Deviation;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.finding.FindingKind;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * A row that comes and goes beside one that gives a lasting fraction, in a log of means over {@value #AVERAGED_S} s at one speed, on flows
 * written down by hand.
 */
class HandMadeComeAndGoTest extends HandMadeCase {
    private static final int AVERAGED_S = 5;

    /** Share of what row 5 should give that it gives, or its meter sees, in the second after a time (1). */
    private interface Share {
        double at(double timeS);
    }

    /** Uniform between 0 and 1, without a period; row 0 is for what row 5 gives. */
    private static double random(int row, double timeS) {
        return new SplittableRandom(100_000L * row + (long) timeS).nextDouble();
    }

    /** Means over the last seconds of what flows, with row 5 at its share from the onset on; meters scatter by 0.4 %. */
    private Diagnosis averaged(double onsetS, Share share) {
        return new HandMadeFlows((row, t, due) -> {
                    double sum = 0;
                    for (int k = 0; k < AVERAGED_S; k++) {
                        double whenS = t - k;
                        double part = row == 5 && whenS >= onsetS ? share.at(whenS) : 1;
                        sum += down(whenS) ? part * USUAL_GAL_PER_MIN : 0;
                    }
                    return sum / AVERAGED_S;
                })
                .metered((row, t, gives) -> gives * (0.996 + 0.008 * random(row, t)))
                .steadySpeed(5)
                .diagnose(folder);
    }

    /** Zero in a quarter of the seconds, never in two in a row: means are 1 for a while, then 0.8, 0.6 or 0.4, without a period. */
    private static double dropsOut(double timeS) {
        return timeS % 2 == 0 && random(0, timeS) < 0.5 ? 0 : 1;
    }

    private static void offWithoutACause(Diagnosis diagnosis) {
        silent(diagnosis);
        assertEquals(
                List.of(5), diagnosis.unexplained().stream().map(Deviation::row).toList());
        assertFalse(diagnosis.allClear());
    }

    @Test
    void averaged_dropouts_are_no_restriction_but_a_row_that_is_off_without_a_recognized_cause() {
        offWithoutACause(averaged(ONSET_S, HandMadeComeAndGoTest::dropsOut));
    }

    @Test
    void averaged_dropouts_from_the_start_on_are_no_constant_meter_error() {
        offWithoutACause(averaged(0, HandMadeComeAndGoTest::dropsOut));
    }

    @Test
    void a_row_that_keeps_the_same_mean_is_restricted() {
        only(averaged(ONSET_S, t -> 0.7), FindingKind.RESTRICTED, 5);
    }

    @Test
    void a_restricted_row_whose_readings_scatter_stays_restricted() {
        // 0.75 to 1 in single seconds: some reach what it gave before, but no mean does.
        only(averaged(ONSET_S, t -> 0.75 + 0.25 * random(0, t)), FindingKind.RESTRICTED, 5);
    }

    @Test
    void a_restricted_row_that_was_whole_once_in_between_stays_restricted() {
        // For 12 s of the third pass.
        only(
                averaged(ONSET_S, t -> t >= 2 * PERIOD_S + 50 && t < 2 * PERIOD_S + 62 ? 1 : 0.7),
                FindingKind.RESTRICTED,
                5);
    }

    /** Nothing in the last 4 s of each pass. */
    private static double endsEarly(double timeS) {
        return sinceDownS(timeS) >= WORK_S - 4 ? 0 : 1;
    }

    @Test
    void a_row_that_drops_out_at_ends_as_it_does_everywhere_goes_off_early_nowhere() {
        offWithoutACause(averaged(ONSET_S, t -> dropsOut(t) * endsEarly(t)));
    }

    @Test
    void a_row_that_gives_its_part_but_at_ends_goes_off_early() {
        only(averaged(ONSET_S, HandMadeComeAndGoTest::endsEarly), FindingKind.EARLY_OFF, 5);
    }

    @Test
    void dropouts_that_means_run_together_are_no_row_that_comes_and_goes() {
        // Zero in every fourth second, and for 5 s in 38.
        none(FindingKind.INTERMITTENT, averaged(ONSET_S, t -> t % 4 == 0 || t % 38 < 5 ? 0 : 1));
    }

    @Test
    void spells_as_long_as_the_means_are_a_row_that_comes_and_goes() {
        only(averaged(ONSET_S, t -> t % 38 < 9 ? 0 : 1), FindingKind.INTERMITTENT, 5);
    }
}
