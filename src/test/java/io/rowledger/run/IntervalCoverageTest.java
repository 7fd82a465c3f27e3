package io.rowledger.run;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short, seeded part of the intervals' coverage test that runs with every build. */
class IntervalCoverageTest {
    private static final long SEED = 3;
    private static final int JOBS = 3;

    @TempDir
    Path folder;

    /** Three jobs can only show gross errors: of every 90 % interval, two of the three must hold. */
    @Test
    void intervals_hold_the_truth_of_a_few_mismeasured_jobs() {
        IntervalScores scores = IntervalScores.score(folder, SEED, JOBS);
        assertEquals(List.of(), scores.outside(60, 100));
    }
}
