package io.rowledger.report.common;

/**
 * How far off a row may be before the report says so.
 *
 * <p>Five percent of the average: the outlet limit of Alberta Agriculture, Agdex 606-1 p. 17, and the University of
 * Idaho boom worksheet. Ten percent: the limit at which state publications tell people to replace an outlet.
 */
public final class Limits {
    /** Beyond this, watch. */
    public static final double WATCH_PCT = 5;
    /** Beyond this, act. */
    static final double ACT_PCT = 10;
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

    /** The CSS class of a deviation. */
    public static String mark(double deviationPct) {
        double size = Math.abs(deviationPct);
        if (!(size > WATCH_PCT)) {
            return "";
        }
        return size > ACT_PCT ? "act" : "watch";
    }
}
