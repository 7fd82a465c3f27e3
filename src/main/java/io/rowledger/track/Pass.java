package io.rowledger.track;

/**
 * One unbroken stretch of working steps.
 *
 * @param number from 1, in time order
 * @param firstStep its first step
 * @param endStep one past its last step
 * @param startS seconds since the Unix epoch
 * @param endS seconds since the Unix epoch
 * @param lengthM distance travelled by the drop line's center, m
 * @param headingRad direction from its first to its last pose, rad
 */
public record Pass(
        int number, int firstStep, int endStep, double startS, double endS, double lengthM, double headingRad) {}
