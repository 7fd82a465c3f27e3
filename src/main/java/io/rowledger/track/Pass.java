package io.rowledger.track;

/**
 * One unbroken stretch of working steps.
 *
 * @param number from 1, in time order
 * @param firstStep its first step
 * @param endStep one past its last step
 * @param startS seconds since the Unix epoch
 * @param endS seconds since the Unix epoch
 * @param lengthM way of the drop line's centre, m
 * @param headingRad mean direction of travel
 */
public record Pass(
        int number, int firstStep, int endStep, double startS, double endS, double lengthM, double headingRad) {}
