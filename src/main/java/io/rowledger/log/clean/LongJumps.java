package io.rowledger.log.clean;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;

/** Refuses a log that jumps farther than a machine can be hauled in the time: two logs in one, or a broken receiver. */
final class LongJumps {
    /** Shortest jump that is refused, m; shorter ones are a break in the path. */
    private static final double MIN_JUMP_M = 100_000;
    /** Highest speed at which a machine is hauled, m/s: 90 mph. */
    private static final double MAX_HAUL_MPS = 40;

    private LongJumps() {}

    static void check(FileLog file) {
        RawLog log = file.log();
        for (int i = 1; i < log.records; i++) {
            double distanceM =
                    PositionOutliers.distanceM(log.latDeg[i - 1], log.lonDeg[i - 1], log.latDeg[i], log.lonDeg[i]);
            double stepS = log.timeS[i] - log.timeS[i - 1];
            if (distanceM > MIN_JUMP_M && (file.plan().isUntimed() || distanceM > MAX_HAUL_MPS * stepS)) {
                throw UnusableInputException.found(
                                "a jump of " + Math.round(distanceM / 1000) + " km from one record to the next"
                                        + (file.plan().isUntimed() ? "" : ", within " + Math.round(stepS) + " s"))
                        .inFile(file.name())
                        .atLine(log.line[i])
                        .expected("the path of one machine")
                        .hint("cut the log at that line and give the part that belongs to this field");
            }
        }
    }
}
