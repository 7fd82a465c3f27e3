package io.rowledger.sim;

import java.util.ArrayList;
import java.util.List;

/**
 * Headland laps and back-and-forth passes in a convex field.
 *
 * @param corners the field in its own axes {u along the passes, w to the right}, m, in the order the laps are driven
 * @param headingRad heading of u
 * @param laps laps around the field with liquid on, before the passes
 * @param skip every how many-th pass is driven in one sweep: 1 next to next (bulb turns), 3 wide U-turns
 * @param turnRadiusM radius planned for turns at the ends
 * @param cornerRadiusM radius of the laps' corners
 * @param workMps working speed
 * @param turnMps speed in turns with the bar lifted
 * @param lapMps speed of the laps
 * @param backUpAfter passes (from 0) after which the tractor backs up 4 m
 * @param shiftedPass pass (from 0) that is driven off its line, -1 for none
 * @param shiftM by so much, to the right of u
 */
public record PassPlan(
        double[][] corners,
        double headingRad,
        int laps,
        int skip,
        double turnRadiusM,
        double cornerRadiusM,
        double workMps,
        double turnMps,
        double lapMps,
        List<Integer> backUpAfter,
        int shiftedPass,
        double shiftM)
        implements FieldPlan.Layout {
    private static final double RUN_IN_M = 8;
    private static final double CLEAR_M = 1.5;
    private static final double LAP_CLOSE_M = 1;

    /** A rectangle of this length and so many passes between (and beside) the laps, for a bar of this width. */
    public static PassPlan rectangle(double lengthM, int passes, int laps, double barM) {
        double width = (passes + 2 * laps) * barM;
        return field(new double[][] {{0, 0}, {lengthM, 0}, {lengthM, width}, {0, width}}, laps);
    }

    /** Any convex field. */
    public static PassPlan field(double[][] corners, int laps) {
        return new PassPlan(corners, 0.3, laps, 1, 7.5, 9, 2.3, 1.8, 1.9, List.of(), -1, 0);
    }

    /** The same in another direction. */
    public PassPlan heading(double rad) {
        return new PassPlan(
                corners,
                rad,
                laps,
                skip,
                turnRadiusM,
                cornerRadiusM,
                workMps,
                turnMps,
                lapMps,
                backUpAfter,
                shiftedPass,
                shiftM);
    }

    /** The same at other speeds, m/s: working, turning, on the laps. */
    public PassPlan speeds(double work, double turn, double lap) {
        return new PassPlan(
                corners,
                headingRad,
                laps,
                skip,
                turnRadiusM,
                cornerRadiusM,
                work,
                turn,
                lap,
                backUpAfter,
                shiftedPass,
                shiftM);
    }

    /** The same, driving every so many-th pass in one sweep. */
    public PassPlan skipping(int every) {
        return new PassPlan(
                corners,
                headingRad,
                laps,
                every,
                turnRadiusM,
                cornerRadiusM,
                workMps,
                turnMps,
                lapMps,
                backUpAfter,
                shiftedPass,
                shiftM);
    }

    /** The same, backing up 4 m after these passes (from 0). */
    public PassPlan backingUpAfter(Integer... passes) {
        return new PassPlan(
                corners,
                headingRad,
                laps,
                skip,
                turnRadiusM,
                cornerRadiusM,
                workMps,
                turnMps,
                lapMps,
                List.of(passes),
                shiftedPass,
                shiftM);
    }

    /** The same with one pass (from 0) driven off its line. */
    public PassPlan shifting(int pass, double byM) {
        return new PassPlan(
                corners,
                headingRad,
                laps,
                skip,
                turnRadiusM,
                cornerRadiusM,
                workMps,
                turnMps,
                lapMps,
                backUpAfter,
                pass,
                byM);
    }

    @Override
    public FieldPlan lay(SimRig rig) {
        ConvexField field = new ConvexField(corners);
        Frame frame = centred(field);
        PathBuilder path = null;
        for (int lap = 0; lap < laps; lap++) {
            path = lap(path, field, frame, rig, lap);
        }
        double bar = rig.widthM();
        List<double[]> lines = lines(field, bar);
        int driven = 0;
        for (int first = 0; first < skip; first++) {
            for (int j = first; j < lines.size(); j += skip) {
                path = pass(path, lines.get(j), driven, frame, rig);
                if (backUpAfter.contains(driven)) {
                    path.backUp(4);
                }
                driven++;
            }
        }
        path.speed(1).line(4);
        return new FieldPlan(path.build(0.5), frame.ring(corners), headingRad);
    }

    private Frame centred(ConvexField field) {
        double u = 0;
        double w = 0;
        for (double[] c : field.corners()) {
            u += c[0] / field.size();
            w += c[1] / field.size();
        }
        Frame at = new Frame(0, 0, headingRad);
        return new Frame(-at.x(u, w), -at.y(u, w), headingRad);
    }

    /** Rows of {w, least u, greatest u}: each pass long enough for the whole bar to reach the last lap. */
    private List<double[]> lines(ConvexField field, double bar) {
        double margin = laps * bar;
        double[][] inner = field.inset(margin);
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double[] c : inner) {
            low = Math.min(low, c[1]);
            high = Math.max(high, c[1]);
        }
        int passes = (int) Math.ceil((high - low) / bar - 0.02);
        List<double[]> lines = new ArrayList<>();
        for (int j = 0; j < passes; j++) {
            double w = low + (j + 0.5) * bar;
            double least = Double.POSITIVE_INFINITY;
            double most = Double.NEGATIVE_INFINITY;
            for (double part = -0.5; part <= 0.5; part += 0.125) {
                double[] span = field.span(w + part * bar, margin);
                if (span[0] < span[1]) {
                    least = Math.min(least, span[0]);
                    most = Math.max(most, span[1]);
                }
            }
            lines.add(new double[] {w + (j == shiftedPass ? shiftM : 0), least, most});
        }
        return lines;
    }

    private PathBuilder pass(PathBuilder before, double[] line, int driven, Frame frame, SimRig rig) {
        boolean up = driven % 2 == 0;
        double dir = up ? 1 : -1;
        double heading = headingRad + (up ? 0 : Math.PI);
        double start = (up ? line[1] : line[2]) - dir * RUN_IN_M;
        double x = frame.x(start, line[0]);
        double y = frame.y(start, line[0]);
        PathBuilder path = before;
        if (path == null) {
            path = new PathBuilder(x, y, heading);
        } else {
            path.speed(turnMps).turnTo(x, y, heading, turnRadiusM);
        }
        double length = line[2] - line[1];
        path.speed(workMps).line(RUN_IN_M);
        path.work(path.lengthM(), path.lengthM() + length);
        return path.line(length).speed(workMps).line(rig.dropBehindAxleM() + CLEAR_M);
    }

    private PathBuilder lap(PathBuilder before, ConvexField field, Frame frame, SimRig rig, int lap) {
        double[][] ring = field.inset((lap + 0.5) * rig.widthM());
        int n = ring.length;
        double[] heading = new double[n];
        for (int i = 0; i < n; i++) {
            double[] p = ring[i];
            double[] q = ring[(i + 1) % n];
            heading[i] = headingRad + Math.atan2(q[1] - p[1], q[0] - p[0]);
        }
        // Each lap begins a little farther along the first side, so that the tractor can change over.
        double begin = distance(ring[0], ring[1]) * 0.4 + lap * 35;
        double[] at = between(ring[0], ring[1], begin - RUN_IN_M);
        double x = frame.x(at[0], at[1]);
        double y = frame.y(at[0], at[1]);
        PathBuilder path = before == null
                ? new PathBuilder(x, y, heading[0])
                : before.speed(turnMps).turnTo(x, y, heading[0], turnRadiusM);
        path.speed(lapMps).line(RUN_IN_M);
        double s0 = path.lengthM();
        double from = begin;
        for (int i = 0; i < n; i++) {
            double turn = heading[(i + 1) % n] - heading[i];
            turn -= 2 * Math.PI * Math.rint(turn / (2 * Math.PI));
            double tangent = cornerRadiusM * Math.tan(Math.abs(turn) / 2);
            path.line(distance(ring[i], ring[(i + 1) % n]) - from - tangent);
            path.arc(Math.signum(turn) / cornerRadiusM, cornerRadiusM * Math.abs(turn));
            from = tangent;
        }
        path.line(begin - from + LAP_CLOSE_M);
        path.work(s0, path.lengthM());
        return path.line(rig.dropBehindAxleM() + CLEAR_M);
    }

    private static double distance(double[] p, double[] q) {
        return Math.hypot(q[0] - p[0], q[1] - p[1]);
    }

    private static double[] between(double[] p, double[] q, double m) {
        double f = m / distance(p, q);
        return new double[] {p[0] + f * (q[0] - p[0]), p[1] + f * (q[1] - p[1])};
    }
}
