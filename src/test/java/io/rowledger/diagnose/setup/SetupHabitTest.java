package io.rowledger.diagnose.setup;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A habit of lowering and lifting early or late is no wrong length, and a wrong length is found where speeds vary. */
class SetupHabitTest {
    private static final long SEED = 41;
    private static final int JOBS = 6;

    @TempDir
    Path folder;

    @Test
    void right_setups_with_habits_are_seldom_accused_of_a_length() {
        SetupHabitScores.Counts one = SetupHabitScores.run(folder, SEED, JOBS, false, true);
        SetupHabitScores.Counts several = SetupHabitScores.run(folder, SEED + 1, JOBS, true, true);
        System.out.println("Right setups, habits, one speed: " + one);
        System.out.println("Right setups, habits, several speeds: " + several);
        // The goal is 4 of 200: of 12 one may be.
        assertTrue(one.accused() + several.accused() <= 1, one + "; " + several);
        assertTrue(one.undetermined() > 0, "at one speed a log can't tell: " + one);
    }

    @Test
    void wrong_lengths_are_found_at_several_speeds_and_either_of_two_at_one() {
        SetupHabitScores.Counts several = SetupHabitScores.run(folder, SEED + 2, JOBS, true, false);
        SetupHabitScores.Counts one = SetupHabitScores.run(folder, SEED + 3, JOBS, false, false);
        System.out.println("Wrong lengths, no habits, several speeds: " + several);
        System.out.println("Wrong lengths, no habits, one speed: " + one);
        // Lengths off by 0.3 m and more, with any receiver and any rate: the long run finds some three of four.
        assertTrue(several.accused() >= 0.7 * JOBS, several.toString());
        assertTrue(one.undetermined() >= 0.9 * JOBS, one.toString());
    }
}
