package io.rowledger.report.common;

import io.rowledger.log.LogTable;
import io.rowledger.track.Pass;
import io.rowledger.track.Track;
import java.util.List;

/**
 * When the work was done: from the start of the first pass to the end of the last one; without a pass, the span of the log.
 *
 * @param startS epoch seconds; NaN for an empty log
 * @param endS epoch seconds; NaN for an empty log
 */
public record JobTimes(double startS, double endS) {
    /** The times of a job. */
    public static JobTimes of(Track track, LogTable log) {
        List<Pass> passes = track.passes();
        if (!passes.isEmpty()) {
            return new JobTimes(
                    passes.get(0).startS(), passes.get(passes.size() - 1).endS());
        }
        int records = log.records();
        return records == 0 ? new JobTimes(Double.NaN, Double.NaN) : new JobTimes(log.timeS(0), log.timeS(records - 1));
    }
}
