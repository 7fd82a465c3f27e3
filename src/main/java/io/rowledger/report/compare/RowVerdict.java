package io.rowledger.report.compare;

import io.rowledger.report.common.Limits;
import io.rowledger.report.findings.RowHealth;
import io.rowledger.text.Message;

/** How a row did in two jobs. */
public enum RowVerdict {
    /** Off before, like the other rows now. */
    REPAIRED(""),
    /** Off before and after. */
    STILL_OFF("act"),
    /** Like the other rows before, off now. */
    WORSE("act"),
    /** Like the other rows before and after. */
    FINE(""),
    /** Too little evaluated time in one of the jobs. */
    NOT_EVALUATED("watch");

    /** Share of the evaluated time off target beyond which a row counts as off; common practice, no source. */
    private static final double MAX_OFF_SHARE = 0.05;

    private final String mark;

    RowVerdict(String mark) {
        this.mark = mark;
    }

    /** The verdict in words. */
    Message text() {
        return Message.of("compare.verdict." + name());
    }

    /** CSS class of the verdict; may be empty. */
    String mark() {
        return mark;
    }

    /** The verdict on one row. */
    public static RowVerdict of(RowHealth before, RowHealth after) {
        if (before.evaluatedS() < Matching.MIN_EVALUATED_S || after.evaluatedS() < Matching.MIN_EVALUATED_S) {
            return NOT_EVALUATED;
        }
        if (isOff(before)) {
            return isOff(after) ? STILL_OFF : REPAIRED;
        }
        return isOff(after) ? WORSE : FINE;
    }

    /** True if the median is off, or the row was off for long. */
    private static boolean isOff(RowHealth row) {
        return Math.abs(row.medianDeviation()) * 100 > Limits.WATCH_PCT || row.offShare() > MAX_OFF_SHARE;
    }
}
