package io.rowledger.report.common;

import io.rowledger.rate.DeviationLimits;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;

/** Limits beyond which a report says something, and lengths of its lists. */
public final class Limits {
    /** Deviation of a row beyond which to watch, percent. */
    public static final double WATCH_PCT = 100 * DeviationLimits.WATCH;
    /** Deviation of a row beyond which to act, percent. */
    public static final double ACT_PCT = 100 * DeviationLimits.ACT;
    /** Deviation far off, percent. */
    public static final double FAR_PCT = 100 * DeviationLimits.FAR;
    /** Places listed a kind: two pages of them; the rest is summed up and stands in the layers. */
    static final int PLACES_LISTED = 25;
    /** Row names in one sentence. */
    public static final int ROWS_IN_A_SENTENCE = 4;
    /** Grid total and log total must agree to this, percent. */
    static final double CONSERVATION_PCT = 0.1;
    /** Covered and missed must make up the boundary to this, percent. */
    static final double AREA_SUM_PCT = 0.01;

    /** More records left out than this belongs on the first page, percent; common practice, no source. */
    static final double DROPPED_PCT = 5;
    /** More ground swept with the bar's angle unknown than this belongs on the first page; common practice, no source. */
    static final double UNSETTLED_PCT = 5;

    /** More covered ground outside the boundary than this casts doubt on the boundary; common practice, no source. */
    static final double OUTSIDE_PCT = 5;

    /** Places and zones listed on the nitrogen record; the rest is summed up and stands in summary.json. */
    public static final int RECORD_LINES = 8;

    /** Load tickets named in one sentence. */
    public static final int TICKETS_NAMED = 6;

    private Limits() {}

    /** A limit in percent as an argument of a message, without decimals. */
    public static Argument wholePct(double limitPct) {
        return Message.decimal(limitPct, 0);
    }

    /** The CSS class of a deviation. */
    public static String mark(double deviationPct) {
        double size = Math.abs(deviationPct);
        if (!(size > WATCH_PCT)) {
            return "";
        }
        return size > ACT_PCT ? "act" : "watch";
    }
}
