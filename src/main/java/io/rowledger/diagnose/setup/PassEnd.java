package io.rowledger.diagnose.setup;

/**
 * Start or stop of a pass.
 *
 * @param pass from 1
 * @param start true for a start
 * @param timeS time, s
 * @param eastM center of the drop line, m
 * @param northM center of the drop line, m
 * @param headingRad heading of the bar
 * @param speedMps speed of the drop line, m/s
 * @param halfM half the distance between the two records around it, m: the end lies anywhere between them
 */
record PassEnd(
        int pass,
        boolean start,
        double timeS,
        double eastM,
        double northM,
        double headingRad,
        double speedMps,
        double halfM) {}
