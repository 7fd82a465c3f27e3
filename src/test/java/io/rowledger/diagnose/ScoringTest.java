package io.rowledger.diagnose;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short, seeded part of the scoring that runs with every build. */
@Tag("slow")
class ScoringTest {
    private static final long SEED = 11;
    private static final int LOGS = 14;

    @TempDir
    Path folder;

    @Test
    void nine_faults_in_ten_are_found_and_no_healthy_row_is_accused() {
        Scores scores = ScoringRun.score(folder, SEED, LOGS);
        assertTrue(scores.put() >= 10, () -> "too few faults to say anything: " + scores.put());
        assertTrue(10 * scores.skips() <= scores.put(), () -> scores.misses().toString());
        assertTrue(scores.falseFindings() <= 1, () -> scores.misses().toString());
        assertEquals(0, scores.cleanLogsWithRowFinding(), () -> scores.misses().toString());
    }
}
