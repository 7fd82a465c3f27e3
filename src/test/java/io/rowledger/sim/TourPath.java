package io.rowledger.sim;

import java.util.List;

/**
 * The planned line of the rear axle, points about 0.2 m apart, and where the bar works along it.
 *
 * @param x m east
 * @param y m north
 * @param headingRad tangent, unwrapped
 * @param curvaturePerM positive right, smoothed over 2.4 m
 * @param s length from the start, m
 * @param speedMps planned speed, slowing in time for what follows
 * @param spans where the drop line works, in order
 * @param backings where the tractor backs up, in order
 */
public record TourPath(
        double[] x,
        double[] y,
        double[] headingRad,
        double[] curvaturePerM,
        double[] s,
        double[] speedMps,
        List<WorkSpan> spans,
        List<Backing> backings) {
    /** The drop line works from {@code startM} to {@code endM} of the line's length. */
    public record WorkSpan(double startM, double endM) {}

    /** At {@code atM} the tractor stops and backs up {@code distanceM}. */
    public record Backing(double atM, double distanceM) {}

    /** Number of points. */
    public int size() {
        return x.length;
    }

    /** Length, m. */
    public double lengthM() {
        return s[s.length - 1];
    }
}
