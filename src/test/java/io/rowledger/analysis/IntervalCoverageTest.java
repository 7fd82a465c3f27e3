package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short, seeded part of the intervals' coverage test that runs with every build. */
@Tag("slow")
class IntervalCoverageTest {
    private static final long SEED = 3;
    private static final int JOBS = 3;

    @TempDir
    Path folder;

    /** A skip of this job, opened and put on the grid, has a corner across its own ring; it once ended the program. */
    @Test
    void a_skip_whose_opened_ring_is_tied_is_measured() {
        MismeasuredJob job = MismeasuredJob.draw(606_504_447);
        job.result().writeTo(folder);
        Analysis a = Pipeline.analyze(
                new JobFiles(
                        List.of(folder.resolve("log.csv")),
                        folder.resolve("rig.yaml"),
                        folder.resolve("boundary.geojson")),
                2,
                Progress.SILENT);
        double truthM2 = job.result().truth().ground().skipM2();
        assertTrue(a.intervals().skipAreaM2().holds(truthM2), a.intervals().skipAreaM2() + ", truth " + truthM2);
    }

    /** Three jobs can only show gross errors: of every 90 % interval, two of the three must hold. */
    @Test
    void intervals_hold_the_truth_of_a_few_mismeasured_jobs() {
        IntervalScores scores = IntervalScores.score(folder, SEED, JOBS);
        assertEquals(List.of(), scores.outside(60, 100));
    }
}
