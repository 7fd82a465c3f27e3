package io.rowledger.diagnose.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.log.LogTable;
import io.rowledger.rig.Rig;
import io.rowledger.rig.RigReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A short, seeded part of what {@code mvn -Psetup-scoring test} runs: the measures, without the ground. */
@Tag("slow")
class SetupScoringTest {
    private static final long SEED = Long.getLong("setup.seed", 31);
    private static final int JOBS = Integer.getInteger("setup.logs", 14);

    @TempDir
    Path folder;

    @Test
    void wrong_setups_are_measured_and_right_ones_left_alone() throws IOException {
        SetupScores scores = new SetupScores();
        for (int i = 0; i < JOBS; i++) {
            RandomSetup.Drawn d = RandomSetup.draw(SEED * RandomSetup.STRIDE + i);
            Path log = Files.writeString(folder.resolve("log.csv"), d.result().logText());
            Rig wrong = RigReader.ofText("wrong.yaml", d.wrongText());
            LogTable table = Checking.log(log, wrong);
            scores.add(d, Checking.of(table, wrong), Checking.of(table, RigReader.ofText("right.yaml", d.rightText())));
        }
        System.out.println(scores.table("Setup check on " + JOBS + " simulated jobs, seed " + SEED));
        scores.far().forEach(System.out::println);
        // Of so few jobs one may miss its bound; how often intervals hold the truth takes more of them.
        assertEquals(List.of(), scores.broken(0.9, Integer.MAX_VALUE));
    }
}
