package io.rowledger.diagnose.setup;

/**
 * One observation held against the line between two others, in the frame of the first: forward or right positive, m.
 *
 * @param of index of the observation
 * @param before index of its left neighbour
 * @param after index of its right neighbour
 * @param weightBefore share of the left neighbour in the line, 0 to 1; the rest is the right one's
 * @param axisRad direction in which the value is positive, clockwise from north: errors of two contrasts go together as
 *     far as their directions do
 * @param valueM how far the observation lies from the line
 * @param effect how far one metre of the error looked for would put it
 * @param speedEffect how far one second of delay would put it, m/s
 */
record Contrast(
        int of,
        int before,
        int after,
        double weightBefore,
        double axisRad,
        double valueM,
        double effect,
        double speedEffect) {
    double weightAfter() {
        return 1 - weightBefore;
    }
}
