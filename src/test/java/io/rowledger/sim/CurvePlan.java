package io.rowledger.sim;

import java.util.ArrayList;
import java.util.List;

/**
 * Parallel curves, driven back and forth.
 *
 * @param shape which curve
 * @param sizeM arcs: radius of the innermost pass; waves: amplitude; circle: radius
 * @param lengthM arcs and waves: length of a pass along the middle of the bundle (straight across for waves); circle:
 *     turns
 * @param waveM waves: wavelength
 * @param passes how many
 * @param headingRad direction of the waves, or of the arcs' axis
 * @param workMps working speed
 * @param bounded whether the field has a boundary
 * @param exactEnds whether passes begin and end where planned, and not at the nearest of the path's points, up to 0.1 m off
 *     and alike for every pass driven one way: seen from the log that is a drop line set up wrong by as much
 */
public record CurvePlan(
        Shape shape,
        double sizeM,
        double lengthM,
        double waveM,
        int passes,
        double headingRad,
        double workMps,
        boolean bounded,
        boolean exactEnds)
        implements FieldPlan.Layout {
    private static final double RUN_IN_M = 10;
    private static final double TURN_RADIUS_M = 7.5;
    private static final double TURN_MPS = 1.8;

    /** Kinds of curve. */
    public enum Shape {
        /** Arcs about one centre. */
        ARCS,
        /** Parallels of a sine wave. */
        WAVES,
        /** One circle, clockwise, driven over and over on the same line. */
        CIRCLE
    }

    /** Arcs from this radius outward. */
    public static CurvePlan arcs(double innerRadiusM, double lengthM, int passes) {
        return new CurvePlan(Shape.ARCS, innerRadiusM, lengthM, 0, passes, 0.4, 2.1, true, false);
    }

    /** Parallels of a sine wave. */
    public static CurvePlan waves(double amplitudeM, double wavelengthM, double lengthM, int passes) {
        return new CurvePlan(Shape.WAVES, amplitudeM, lengthM, wavelengthM, passes, 0.4, 2.1, true, false);
    }

    /** A clockwise circle of the rear axle; the bar works from the first quarter turn on. */
    public static CurvePlan circle(double radiusM, double turns, double speedMps) {
        return new CurvePlan(Shape.CIRCLE, radiusM, turns, 0, 1, 0, speedMps, false, false);
    }

    /** The same without a boundary. */
    public CurvePlan unbounded() {
        return new CurvePlan(shape, sizeM, lengthM, waveM, passes, headingRad, workMps, false, exactEnds);
    }

    /** The same at another working speed, m/s. */
    public CurvePlan speed(double mps) {
        return new CurvePlan(shape, sizeM, lengthM, waveM, passes, headingRad, mps, bounded, exactEnds);
    }

    /** The same with passes that begin and end where planned. */
    public CurvePlan endingExactly() {
        return new CurvePlan(shape, sizeM, lengthM, waveM, passes, headingRad, workMps, bounded, true);
    }

    @Override
    public FieldPlan lay(SimRig rig) {
        if (shape == Shape.CIRCLE) {
            PathBuilder path = new PathBuilder(-sizeM, 0, 0).speed(workMps);
            double around = 2 * Math.PI * sizeM;
            path.arc(1 / sizeM, around * lengthM);
            path.work(around / 4, around * lengthM - rig.dropBehindAxleM() - 1);
            return new FieldPlan(path.build(0.5), null, 0);
        }
        Frame frame = new Frame(0, 0, headingRad);
        PathBuilder path = null;
        for (int j = 0; j < passes; j++) {
            path = pass(path, frame, (j - (passes - 1) / 2.0) * rig.widthM(), j % 2 == 0, rig);
        }
        path.speed(1).line(3);
        double[][] ring = bounded ? frame.ring(boundary(rig)) : null;
        return new FieldPlan(path.build(0.5), ring, headingRad);
    }

    /** Point and right-hand normal of the middle curve at length-like parameter t (0 to lengthM), shifted by d. */
    private double[] point(double t, double d, SimRig rig) {
        double ahead = t - lengthM / 2;
        if (shape == Shape.ARCS) {
            double middle = sizeM + (passes - 1) / 2.0 * rig.widthM();
            double angle = ahead / middle;
            // Centre on the right: going forward turns clockwise, larger radii lie to the left.
            double radius = middle - d;
            return new double[] {radius * Math.sin(angle), middle - radius * Math.cos(angle)};
        }
        double k = 2 * Math.PI / waveM;
        double slope = sizeM * k * Math.cos(k * ahead);
        double norm = Math.sqrt(1 + slope * slope);
        return new double[] {ahead - d * slope / norm, sizeM * Math.sin(k * ahead) + d / norm};
    }

    private List<double[]> stretch(double from, double to, double d, SimRig rig) {
        int steps = (int) Math.ceil(Math.abs(to - from) / PathBuilder.POINT_SPACING_M);
        List<double[]> points = new ArrayList<>();
        for (int i = 0; i <= steps; i++) {
            points.add(point(from + (to - from) * i / steps, d, rig));
        }
        return points;
    }

    private PathBuilder pass(PathBuilder before, Frame frame, double d, boolean up, SimRig rig) {
        double runOut = rig.dropBehindAxleM() + 4;
        double dir = up ? 1 : -1;
        double start = up ? 0 : lengthM;
        double end = up ? lengthM : 0;
        List<double[]> points = stretch(start - dir * RUN_IN_M, end + dir * runOut, d, rig);
        double[] x = new double[points.size()];
        double[] y = new double[points.size()];
        double s0 = 0;
        double s1 = 0;
        double[] first = point(start, d, rig);
        double[] last = point(end, d, rig);
        int firstAt = nearest(points, first);
        int lastAt = nearest(points, last);
        double length = 0;
        for (int i = 0; i < x.length; i++) {
            x[i] = frame.x(points.get(i)[0], points.get(i)[1]);
            y[i] = frame.y(points.get(i)[0], points.get(i)[1]);
            length += i > 0 ? Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]) : 0;
            s0 = i == firstAt ? length : s0;
            s1 = i == lastAt ? length : s1;
        }
        if (exactEnds) {
            s0 += beyond(points, firstAt, first);
            s1 += beyond(points, lastAt, last);
        }
        double heading = Math.atan2(x[1] - x[0], y[1] - y[0]);
        PathBuilder path = before == null
                ? new PathBuilder(x[0], y[0], heading)
                : before.speed(TURN_MPS).turnTo(x[0], y[0], heading, TURN_RADIUS_M);
        double at = path.lengthM();
        path.speed(workMps).work(at + s0, at + s1);
        return path.along(x, y);
    }

    private static int nearest(List<double[]> points, double[] to) {
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < points.size(); i++) {
            double distance = Math.hypot(points.get(i)[0] - to[0], points.get(i)[1] - to[1]);
            if (distance < least) {
                least = distance;
                best = i;
            }
        }
        return best;
    }

    /** How far past a point of the path another point near it lies, along the path, m. */
    private static double beyond(List<double[]> points, int at, double[] to) {
        double[] a = points.get(at - 1);
        double[] b = points.get(at + 1);
        double chord = Math.hypot(b[0] - a[0], b[1] - a[1]);
        double dx = to[0] - points.get(at)[0];
        double dy = to[1] - points.get(at)[1];
        return (dx * (b[0] - a[0]) + dy * (b[1] - a[1])) / chord;
    }

    private double[][] boundary(SimRig rig) {
        double half = passes * rig.widthM() / 2;
        List<double[]> ring = new ArrayList<>();
        int steps = (int) Math.ceil(lengthM);
        for (int i = 0; i <= steps; i++) {
            ring.add(point(lengthM * i / steps, -half, rig));
        }
        for (int i = steps; i >= 0; i--) {
            ring.add(point(lengthM * i / steps, half, rig));
        }
        return ring.toArray(new double[0][]);
    }
}
