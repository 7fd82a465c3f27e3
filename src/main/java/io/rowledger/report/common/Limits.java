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
    /** Skipped share of the field beyond which the answer is no plain yes, and beyond which it is no, percent; common practice, no source. */
    public static final double SKIPPED_WATCH_PCT = 2;

    public static final double SKIPPED_ACT_PCT = 5;
    /** The same of overlap: liquid in the wrong place, but no corn without nitrogen. */
    public static final double OVERLAP_WATCH_PCT = 5;

    public static final double OVERLAP_ACT_PCT = 10;
    /** The same of covered ground that received more than {@link #ACT_PCT} off its target. */
    public static final double OFF_RATE_WATCH_PCT = 5;

    public static final double OFF_RATE_ACT_PCT = 10;
    /** Skips and overlaps listed, each; the layers list all of them. */
    public static final int PLACES_LISTED = 15;
    /** Row names in one sentence. */
    public static final int ROWS_IN_A_SENTENCE = 4;
    /** Largest difference of grid total and log total, percent. */
    public static final double CONSERVATION_PCT = 0.1;
    /** Largest difference of covered plus skipped ground and boundary, percent. */
    public static final double AREA_SUM_PCT = 0.01;

    /** Records left out beyond which the first page says so, percent; common practice, no source. */
    public static final double DROPPED_PCT = 5;
    /** Ground worked at an unknown angle of the bar beyond which the first page says so, percent; common practice, no source. */
    public static final double UNSETTLED_PCT = 5;

    /** Covered ground outside the boundary beyond which the boundary may be wrong, percent; common practice, no source. */
    public static final double OUTSIDE_PCT = 5;

    /** Places and zones listed on the nitrogen record; summary.json lists all of them. */
    public static final int RECORD_LINES = 8;

    /** Load tickets named in one sentence. */
    public static final int TICKETS_NAMED = 6;

    private Limits() {}

    /** A limit in percent as an argument of a message, without decimals. */
    public static Argument wholePct(double limitPct) {
        return Message.decimal(limitPct, 0);
    }

    /** A deviation as it is printed, percent with one decimal: a row printed at 10.0 % is not more than 10 % off. */
    public static double printed(double deviationPct) {
        return Math.rint(deviationPct * 10) / 10;
    }

    /** CSS class of a deviation: empty, "watch" or "act". */
    public static String mark(double deviationPct) {
        double size = Math.abs(printed(deviationPct));
        if (!(size > WATCH_PCT)) {
            return "";
        }
        return size > ACT_PCT ? "act" : "watch";
    }
}
