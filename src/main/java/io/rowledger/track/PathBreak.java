package io.rowledger.track;

/**
 * A place where the positions can't be trusted: between the last fix before it and the first after it.
 *
 * @param kind what is wrong
 * @param startS time of the last trusted fix, seconds since the Unix epoch
 * @param endS time of the first fix after it
 * @param fromEastM where the last trusted fix was, in the job's plane
 * @param fromNorthM where the last trusted fix was
 * @param toEastM where the first fix after it was
 * @param toNorthM where the first fix after it was
 * @param lowered true where the bar was down on either side, so that work may lie in between
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
    /** What is wrong. */
    public enum Kind {
        /** No usable fix for longer than a step can bridge; nothing is assumed. */
        SILENT,
        /** The same with the bar down, driven straight on between fixes that agree: the path is carried across. */
        CROSSED,
        /** The position shifted at once, as a receiver does that lost its corrections or found them again. */
        SHIFTED
    }

    /** Straight from one side to the other, m. */
    public double lengthM() {
        return Math.hypot(toEastM - fromEastM, toNorthM - fromNorthM);
    }

    /** How long it lasts, s. */
    public double lastsS() {
        return endS - startS;
    }
}
