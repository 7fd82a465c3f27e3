package io.rowledger.diagnose.setup;

import io.rowledger.rig.Rig;
import io.rowledger.rig.RigReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/** Counts what the setup check says of a drop line over many jobs with habits or wrong lengths. */
final class SetupHabitScores {
    private static final double RIGHT_M = 5;

    /**
     * Verdicts of the setup check.
     *
     * @param jobs number of jobs
     * @param accused length contradicted
     * @param undetermined length or habit, not told apart
     * @param near contradicted and within 0.15 m of the truth
     */
    record Counts(int jobs, int accused, int undetermined, int near) {
        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "%d jobs: length contradicted in %d (%d within 0.15 m of the truth), either of two in %d",
                    jobs,
                    accused,
                    near,
                    undetermined);
        }
    }

    private SetupHabitScores() {}

    /** Jobs with a right rig file and a habit, or with a rig file that is wrong by 0.3 to 2 m and no habit. */
    static Counts run(Path folder, long seed, int jobs, boolean severalSpeeds, boolean habit) {
        int[][] results = IntStream.range(0, jobs)
                .parallel()
                .mapToObj(i -> one(folder, seed * 10_007 + i, severalSpeeds, habit))
                .toArray(int[][]::new);
        int[] sums = new int[3];
        for (int[] one : results) {
            for (int k = 0; k < sums.length; k++) {
                sums[k] += one[k];
            }
        }
        return new Counts(jobs, sums[0], sums[1], sums[2]);
    }

    private static int[] one(Path folder, long seed, boolean severalSpeeds, boolean habit) {
        SplittableRandom random = new SplittableRandom(seed);
        HabitJob job = HabitJob.draw(random, severalSpeeds, habit);
        double wrongM = (random.nextBoolean() ? 1 : -1) * random.nextDouble(0.3, 2);
        Rig rig = RigReader.ofText("rig.yaml", HabitJob.rig(habit ? RIGHT_M : RIGHT_M + wrongM));
        try {
            Path file = Files.writeString(folder.resolve(seed + ".csv"), job.csv(random));
            SetupMeasurement drop = Checking.of(Checking.log(file, rig), rig).measurements().stream()
                    .filter(m -> m.parameter() == SetupParameter.DROP_OFFSET)
                    .findFirst()
                    .orElseThrow();
            Files.delete(file);
            boolean near = drop.differs() && Math.abs(drop.estimate() - RIGHT_M) <= 0.15;
            return new int[] {drop.differs() ? 1 : 0, drop.determined() ? 0 : 1, near ? 1 : 0};
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
