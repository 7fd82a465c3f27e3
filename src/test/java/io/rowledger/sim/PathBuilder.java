package io.rowledger.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Lays a reference line for the rear axle out of straights, arcs, shortest turns and free curves. */
public final class PathBuilder {
    /** Points along the line, m: a chord strays 0.6 mm from an 8 m arc. */
    static final double POINT_SPACING_M = 0.2;

    private static final int SMOOTH_POINTS = 6;

    private double[] xs = new double[1024];
    private double[] ys = new double[1024];
    private double[] headings = new double[1024];
    private double[] speeds = new double[1024];
    private int n;
    private double x;
    private double y;
    private double heading;
    private double length;
    private double speed = 2;
    private final List<TourPath.WorkSpan> spans = new ArrayList<>();
    private final List<TourPath.Backing> backings = new ArrayList<>();

    /** Starts at (x, y), heading clockwise from north. */
    public PathBuilder(double xM, double yM, double headingRad) {
        x = xM;
        y = yM;
        heading = headingRad;
        put();
    }

    private void put() {
        if (n == xs.length) {
            xs = Arrays.copyOf(xs, 2 * n);
            ys = Arrays.copyOf(ys, 2 * n);
            headings = Arrays.copyOf(headings, 2 * n);
            speeds = Arrays.copyOf(speeds, 2 * n);
        }
        if (n > 0) {
            length += Math.hypot(x - xs[n - 1], y - ys[n - 1]);
        }
        xs[n] = x;
        ys[n] = y;
        headings[n] = heading;
        speeds[n++] = speed;
    }

    /** Speed of what follows, m/s. */
    public PathBuilder speed(double mps) {
        speed = mps;
        return this;
    }

    /** Length so far, m. */
    public double lengthM() {
        return length;
    }

    /** The drop line works from s0 to s1 along this line, m. */
    public PathBuilder work(double s0, double s1) {
        spans.add(new TourPath.WorkSpan(s0, s1));
        return this;
    }

    /** The tractor stops here, backs up so far and goes on. */
    public PathBuilder backUp(double distanceM) {
        backings.add(new TourPath.Backing(length, distanceM));
        return this;
    }

    /** Straight on, m. */
    public PathBuilder line(double lengthM) {
        return arc(0, lengthM);
    }

    /** An arc of constant curvature (1/m, positive right) and length (m). */
    public PathBuilder arc(double curvature, double lengthM) {
        int steps = (int) Math.ceil(lengthM / POINT_SPACING_M);
        double x0 = x;
        double y0 = y;
        double h0 = heading;
        for (int i = 1; i <= steps; i++) {
            double s = lengthM * i / steps;
            double turn = curvature * s;
            // Chord of the arc: exact for any curvature, and for none.
            double chord = Math.abs(turn) < 1e-9 ? s : s * Math.sin(turn / 2) / (turn / 2);
            x = x0 + chord * Math.sin(h0 + turn / 2);
            y = y0 + chord * Math.cos(h0 + turn / 2);
            heading = h0 + turn;
            put();
        }
        return this;
    }

    /** The shortest forward way to a pose with turns of this radius. */
    public PathBuilder turnTo(double xM, double yM, double headingRad, double radiusM) {
        Dubins.Way way = Dubins.shortest(new double[] {x, y, heading}, new double[] {xM, yM, headingRad}, radiusM);
        for (int i = 0; i < 3; i++) {
            arc(way.curvatures()[i], way.lengths()[i]);
        }
        return this;
    }

    /** Along given points (spaced about 0.2 m), starting near the present end. */
    public PathBuilder along(double[] px, double[] py) {
        for (int i = 0; i < px.length; i++) {
            int a = Math.max(0, i - 1);
            int b = Math.min(px.length - 1, i + 1);
            heading = nearest(Math.atan2(px[b] - px[a], py[b] - py[a]), heading);
            x = px[i];
            y = py[i];
            if (Math.hypot(x - xs[n - 1], y - ys[n - 1]) > 1e-3) {
                put();
            }
        }
        return this;
    }

    static double nearest(double angle, double to) {
        return angle + 2 * Math.PI * Math.rint((to - angle) / (2 * Math.PI));
    }

    /** The finished line; the tractor keeps the planned speeds within this acceleration, m/s². */
    public TourPath build(double accelMps2) {
        double[] s = new double[n];
        double[] curvature = new double[n];
        for (int i = 1; i < n; i++) {
            headings[i] = nearest(headings[i], headings[i - 1]);
            s[i] = s[i - 1] + Math.hypot(xs[i] - xs[i - 1], ys[i] - ys[i - 1]);
        }
        for (int i = 1; i < n - 1; i++) {
            int a = Math.max(0, i - SMOOTH_POINTS);
            int b = Math.min(n - 1, i + SMOOTH_POINTS);
            curvature[i] = (headings[b] - headings[a]) / (s[b] - s[a]);
        }
        double[] limit = Arrays.copyOf(speeds, n);
        for (int i = n - 2; i >= 0; i--) {
            limit[i] = Math.min(limit[i], Math.sqrt(limit[i + 1] * limit[i + 1] + 2 * accelMps2 * (s[i + 1] - s[i])));
        }
        return new TourPath(
                Arrays.copyOf(xs, n),
                Arrays.copyOf(ys, n),
                Arrays.copyOf(headings, n),
                curvature,
                s,
                limit,
                List.copyOf(spans),
                List.copyOf(backings));
    }
}
