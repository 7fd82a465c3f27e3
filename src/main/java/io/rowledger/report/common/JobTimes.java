package io.rowledger.report.common;

import io.rowledger.analysis.Analysis;
import io.rowledger.track.Pass;
import java.util.List;

/** When the work was done: from the first pass's start to the last one's end; without a pass, the log's own span. */
public final class JobTimes {
    private JobTimes() {}

    /** Epoch seconds, NaN for an empty log. */
    public static double startS(Analysis a) {
        List<Pass> passes = a.track().passes();
        if (!passes.isEmpty()) {
            return passes.get(0).startS();
        }
        return a.log().records() == 0 ? Double.NaN : a.log().timeS(0);
    }

    /** Epoch seconds, NaN for an empty log. */
    public static double endS(Analysis a) {
        List<Pass> passes = a.track().passes();
        if (!passes.isEmpty()) {
            return passes.get(passes.size() - 1).endS();
        }
        return a.log().records() == 0 ? Double.NaN : a.log().timeS(a.log().records() - 1);
    }
}
