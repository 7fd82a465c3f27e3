package io.rowledger.report.compare;

import io.rowledger.report.common.Limits;
import io.rowledger.report.common.RowHealth;

/** How a row fared between two jobs. */
public enum RowVerdict {
    /** Off before, like its siblings now. */
    REPAIRED("like its siblings again", ""),
    /** Off before and after. */
    STILL_OFF("still off", "act"),
    /** Like its siblings before, off now. */
    WORSE("off now, and was not before", "act"),
    /** Like its siblings before and after. */
    FINE("like its siblings in both", ""),
    /** Too little judged time in one of the jobs. */
    NOT_EVALUATED("not judged in both", "watch");

    /** Off in more than this share of the judged time is more than an episode; common practice, no source. */
    private static final double OFTEN = 0.05;

    private final String words;
    private final String mark;

    RowVerdict(String words, String mark) {
        this.words = words;
        this.mark = mark;
    }

    /** For people. */
    public String words() {
        return words;
    }

    String mark() {
        return mark;
    }

    /** The verdict on one row. */
    public static RowVerdict of(RowHealth before, RowHealth after) {
        if (before.evaluatedS() < Matching.MIN_EVALUATED_S || after.evaluatedS() < Matching.MIN_EVALUATED_S) {
            return NOT_EVALUATED;
        }
        if (off(before)) {
            return off(after) ? STILL_OFF : REPAIRED;
        }
        return off(after) ? WORSE : FINE;
    }

    /** Off on the whole, or often. */
    private static boolean off(RowHealth row) {
        return Math.abs(row.medianDeviation()) * 100 > Limits.WATCH_PCT || row.offShare() > OFTEN;
    }
}
