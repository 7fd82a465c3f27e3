package io.rowledger.track;

/**
 * A break in the measured path between two successive fixes.
 *
 * @param kind kind of break
 * @param startS time of the last fix before it, seconds since the Unix epoch
 * @param endS time of the first fix after it, seconds since the Unix epoch
 * @param fromEastM east of the last fix before it, m in the job's plane
 * @param fromNorthM north of the last fix before it, m
 * @param toEastM east of the first fix after it, m
 * @param toNorthM north of the first fix after it, m
 * @param lowered true if the bar was down on either side, so that ground may have been worked in between
 */
public record PathBreak(
        Kind kind,
        double startS,
        double endS,
        double fromEastM,
        double fromNorthM,
        double toEastM,
        double toNorthM,
        boolean lowered) {
    /** Kind of break. */
    public enum Kind {
        /** No usable fix for longer than a step may last; nothing is assumed about the time between. */
        GAP,
        /** The same with the bar down and fixes on both sides that agree: the path is interpolated, see {@link GapBridging}. */
        BRIDGED,
        /** The position stepped, as when a receiver loses or regains its corrections, see {@link PositionSteps}. */
        SHIFTED
    }

    /** Returns the straight distance between the two fixes, m. */
    public double lengthM() {
        return Math.hypot(toEastM - fromEastM, toNorthM - fromNorthM);
    }

    /** Returns the time between the two fixes, s. */
    public double durationS() {
        return endS - startS;
    }
}
