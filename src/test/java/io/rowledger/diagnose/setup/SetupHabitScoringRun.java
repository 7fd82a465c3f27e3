package io.rowledger.diagnose.setup;

import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.site.SitePage;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How often the setup check takes a habit for a length, and finds a wrong length: 200 right setups with habits and 200 wrong
 * lengths without, half of each at one speed. {@code mvn -Psetup-scoring test} runs it ({@code -Dsetup.logs}, {@code
 * -Dsetup.seed} for others). Not part of a build: a short run of the same is, in {@link SetupHabitTest}.
 */
class SetupHabitScoringRun {
    @TempDir
    Path folder;

    @Test
    void habits_are_not_taken_for_lengths() {
        long seed = Long.getLong("setup.seed", 20_264);
        int jobs = Integer.getInteger("setup.logs", 200) / 2;
        SetupHabitScores.Counts oneSpeed = SetupHabitScores.run(folder, seed, jobs, false, true);
        SetupHabitScores.Counts several = SetupHabitScores.run(folder, seed + 1, jobs, true, true);
        String table = String.join(
                "\n",
                "Right setups, habits, one speed: " + oneSpeed,
                "Right setups, habits, several speeds: " + several,
                "Wrong lengths, no habits, one speed: " + SetupHabitScores.run(folder, seed + 2, jobs, false, false),
                "Wrong lengths, no habits, several speeds: "
                        + SetupHabitScores.run(folder, seed + 3, jobs, true, false));
        System.out.println(table);
        SitePage.write("accuracy", "setup-habits", SitePage.code(table));
        assertTrue(50 * (oneSpeed.accused() + several.accused()) <= 2 * jobs, oneSpeed + "; " + several);
    }
}
