package io.rowledger.track;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.Heading;
import io.rowledger.rig.Rig;
import java.util.Arrays;
import java.util.Locale;

/**
 * Moves the {@link TowingChain} along the smoothed antenna path and records the poses.
 *
 * <p>Record i covers the half intervals on either side of it, divided into equal steps of at most
 * {@link TrackOptions#maxStepM}. Within a step the chain moves in chords whose sagitta is at most
 * {@link TrackOptions#sagittaM}.
 */
final class PoseTracer {
    /** After a longer gap, s, or a larger change of direction in it, rad, tractor and bar start in line again. */
    private static final double MAX_TOWED_GAP_S = 10.0;

    private static final double MAX_TOWED_GAP_TURN_RAD = Math.toRadians(45);

    /** Distance from which the direction of a displacement counts as a course, m. */
    private static final double MIN_COURSE_M = 1.5;

    /** A record per minute at 3 m/s has 360 steps; more means wrong positions or times. */
    private static final int MAX_POSES_PER_RECORD = 400;

    /** Number of poses that any log may have, however few its records; 50 MB. */
    private static final int MIN_POSES_LIMIT = 500_000;

    private final SmoothPath path;
    private final boolean[] gap;
    private final boolean[] lowered;
    private final boolean[] headingHeld;
    private final TrackOptions options;
    private final TowingChain chain;
    private final PoseColumns c = new PoseColumns();
    private int poses;

    PoseTracer(
            SmoothPath path, boolean[] gap, boolean[] lowered, boolean[] headingHeld, Rig rig, TrackOptions options) {
        this.path = path;
        this.gap = gap;
        this.lowered = lowered;
        this.headingHeld = headingHeld;
        this.options = options;
        this.chain = new TowingChain(rig);
    }

    PoseColumns trace() {
        int n = gap.length;
        long size = 0;
        double distanceM = 0;
        for (int i = 0; i < n; i++) {
            size += parts(i, startS(i), endS(i)) + (gap[i] ? 1 : 0);
            distanceM += path.speedMps(i) * (endS(i) - startS(i));
        }
        if (size > MIN_POSES_LIMIT + (long) n * MAX_POSES_PER_RECORD) {
            throw UnusableInputException.found(
                            String.format(Locale.ROOT, "a path of %.0f km in %d records", distanceM / 1000, n))
                    .expected("records a few seconds apart, all of one field")
                    .hint("look for wrong positions and times in the log; inspect shows its place and its interval");
        }
        allocate((int) size);
        for (int[] stretch : TrackBuilder.stretches(gap)) {
            if (stretch[1] - stretch[0] > 1) {
                traceStretch(stretch[0], stretch[1]);
            }
        }
        trim();
        return c;
    }

    private double startS(int i) {
        return gap[i] ? path.timeS(i) : (path.timeS(i - 1) + path.timeS(i)) / 2;
    }

    private double endS(int i) {
        return i + 1 == gap.length || gap[i + 1] ? path.timeS(i) : (path.timeS(i) + path.timeS(i + 1)) / 2;
    }

    private int parts(int i, double startS, double endS) {
        return Math.max(1, (int) Math.ceil(path.speedMps(i) * (endS - startS) / options.maxStepM()));
    }

    private void traceStretch(int from, int to) {
        double east = path.pe[from];
        double north = path.pn[from];
        if (poses == 0 || !towAcrossGap(from, east, north)) {
            chain.place(east, north, firstCourse(from, to));
        }
        if (poses > 0) {
            c.record[poses - 1] = -1;
            c.unsettled[poses - 1] = true;
        }
        addPose(path.timeS(from), east, north);
        for (int i = from; i < to; i++) {
            double start = startS(i);
            double end = endS(i);
            if (end <= start) {
                continue;
            }
            int parts = parts(i, start, end);
            for (int part = 1; part <= parts; part++) {
                c.record[poses - 1] = i;
                c.unsettled[poses - 1] = chain.unsettled();
                double a = start + (end - start) * (part - 1) / parts;
                double b = part == parts ? end : start + (end - start) * part / parts;
                moveAlong(i, from, to, a, b);
                c.backing[poses - 1] = chain.backing();
                addPose(b, east(i, from, to, b), north(i, from, to, b));
            }
        }
    }

    /** Moves the chain straight across a gap; returns false, without moving it, if the gap is too long or turns too much. */
    private boolean towAcrossGap(int from, double east, double north) {
        double gapS = path.timeS(from) - c.timeS[poses - 1];
        double de = east - c.antennaEastM[poses - 1];
        double dn = north - c.antennaNorthM[poses - 1];
        double turn = Math.abs(Heading.wrap(Heading.of(de, dn) - chain.headingRad()));
        boolean stood = Math.hypot(de, dn) < MIN_COURSE_M;
        if (gapS > MAX_TOWED_GAP_S || (!stood && turn > MAX_TOWED_GAP_TURN_RAD)) {
            return false;
        }
        if (!stood) {
            chain.moveTo(east, north, false);
        }
        chain.unsettle();
        return true;
    }

    private double firstCourse(int from, int to) {
        for (int i = from + 1; i < to; i++) {
            double de = path.pe[i] - path.pe[from];
            double dn = path.pn[i] - path.pn[from];
            if (Math.hypot(de, dn) > MIN_COURSE_M) {
                return Heading.of(de, dn);
            }
        }
        return 0;
    }

    private void moveAlong(int i, int from, int to, double a, double b) {
        if (headingHeld[i]) {
            chain.drift(east(i, from, to, b), north(i, from, to, b));
            return;
        }
        double length = path.speedMps(i) * (b - a);
        double curvature = Math.abs(path.curvaturePerM(i));
        double chord = Math.sqrt(8 * options.sagittaM() / Math.max(curvature, 1e-6));
        int chords = Math.max(1, Math.min(32, (int) Math.ceil(length / chord)));
        for (int j = 1; j <= chords; j++) {
            double s = j == chords ? b : a + (b - a) * j / chords;
            chain.moveTo(east(i, from, to, s), north(i, from, to, s), lowered[i]);
        }
    }

    private double east(int i, int from, int to, double s) {
        return path.eastM(interval(i, from, to, s), s);
    }

    private double north(int i, int from, int to, double s) {
        return path.northM(interval(i, from, to, s), s);
    }

    private int interval(int i, int from, int to, double s) {
        int left = s < path.timeS(i) ? i - 1 : i;
        return Math.max(from, Math.min(to - 2, left));
    }

    private void addPose(double timeS, double east, double north) {
        c.timeS[poses] = timeS;
        chain.store(c, poses, east, north);
        poses++;
    }

    private void allocate(int size) {
        c.timeS = new double[size];
        c.antennaEastM = new double[size];
        c.antennaNorthM = new double[size];
        c.headingRad = new double[size];
        c.hitchEastM = new double[size];
        c.hitchNorthM = new double[size];
        c.barHeadingRad = new double[size];
        c.barSin = new double[size];
        c.barCos = new double[size];
        c.dropEastM = new double[size];
        c.dropNorthM = new double[size];
        c.record = new int[size];
        c.unsettled = new boolean[size];
        c.backing = new boolean[size];
    }

    private void trim() {
        c.timeS = Arrays.copyOf(c.timeS, poses);
        c.antennaEastM = Arrays.copyOf(c.antennaEastM, poses);
        c.antennaNorthM = Arrays.copyOf(c.antennaNorthM, poses);
        c.headingRad = Arrays.copyOf(c.headingRad, poses);
        c.hitchEastM = Arrays.copyOf(c.hitchEastM, poses);
        c.hitchNorthM = Arrays.copyOf(c.hitchNorthM, poses);
        c.barHeadingRad = Arrays.copyOf(c.barHeadingRad, poses);
        c.barSin = Arrays.copyOf(c.barSin, poses);
        c.barCos = Arrays.copyOf(c.barCos, poses);
        c.dropEastM = Arrays.copyOf(c.dropEastM, poses);
        c.dropNorthM = Arrays.copyOf(c.dropNorthM, poses);
        int steps = Math.max(0, poses - 1);
        c.record = Arrays.copyOf(c.record, steps);
        c.unsettled = Arrays.copyOf(c.unsettled, steps);
        c.backing = Arrays.copyOf(c.backing, steps);
    }
}
