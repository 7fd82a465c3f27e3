package io.rowledger.diagnose.setup;

/**
 * One observation against the line between its two neighbors, in the frame of the first: forward or right positive, m.
 *
 * @param of index of the observation
 * @param before index of its left neighbor
 * @param after index of its right neighbor
 * @param weightBefore weight of the left neighbor in the line, 0 to 1; the right one has the rest
 * @param axisRad direction in which the value is positive, clockwise from north: the errors of two contrasts are correlated as
 *     far as their directions agree
 * @param valueM distance of the observation from the line
 * @param effect change of the value per meter of the error looked for (1)
 * @param habitEffect change of the value per second by which the bar is lowered and lifted late, m/s
 * @param unlikeEffect change of the value per second by which it is lowered later and lifted earlier than that, m/s
 */
record Contrast(
        int of,
        int before,
        int after,
        double weightBefore,
        double axisRad,
        double valueM,
        double effect,
        double habitEffect,
        double unlikeEffect) {
    double weightAfter() {
        return 1 - weightBefore;
    }

    /** Returns the contrast as it would be if every end were crossed at one speed, m/s. */
    Contrast atSpeed(double speedMps) {
        return new Contrast(of, before, after, weightBefore, axisRad, valueM, effect, -speedMps * effect, 0);
    }
}
