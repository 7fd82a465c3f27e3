package io.rowledger.diagnose.setup;

import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Distances of each pass from its neighbors to the left and right. */
final class PassGaps {
    /** Distance between the samples of a pass, m: guidance wanders over tens of meters. */
    private static final double EVERY_M = 6;

    /** Distance between the points of a pass in the search grid, m. */
    private static final double POINT_M = 3;

    /** Smallest number of samples of a pass with the same two neighbors. */
    private static final int MIN_SAMPLES = 4;

    private final Poses poses;
    private final double barM;
    private final Map<Long, int[]> cells = new HashMap<>();
    private final List<Contrast> contrasts = new ArrayList<>();

    private PassGaps(Track track, double barM) {
        this.poses = track.poses();
        this.barM = barM;
    }

    /** Returns contrasts between passes, indexed from 0, positive to the right. */
    static List<Contrast> contrasts(Track track, double barM) {
        PassGaps gaps = new PassGaps(track, barM);
        for (Pass pass : track.passes()) {
            gaps.points(pass);
        }
        for (Pass pass : track.passes()) {
            gaps.pass(pass);
        }
        return gaps.contrasts;
    }

    /** Returns the middle of each pass in time, s. */
    static double[] times(Track track) {
        return track.passes().stream()
                .mapToDouble(p -> (p.startS() + p.endS()) / 2)
                .toArray();
    }

    /** Returns the duration of each pass, s. */
    static double[] spans(Track track) {
        return track.passes().stream().mapToDouble(p -> p.endS() - p.startS()).toArray();
    }

    private long cell(double eastM, double northM, int de, int dn) {
        long x = (long) Math.floor(eastM / barM) + de;
        long y = (long) Math.floor(northM / barM) + dn;
        return (x << 32) ^ (y & 0xffffffffL);
    }

    /** Adds the points of a pass to the search grid: a cell holds their number, then their poses. */
    private void points(Pass pass) {
        int last = -1;
        for (int i = pass.firstStep(); i <= pass.endStep(); i++) {
            if (last >= 0 && apart(last, i) < POINT_M) {
                continue;
            }
            last = i;
            long key = cell(poses.dropEastM(i), poses.dropNorthM(i), 0, 0);
            int[] held = cells.getOrDefault(key, new int[8]);
            if (held[0] + 1 == held.length) {
                held = Arrays.copyOf(held, 2 * held.length);
            }
            held[++held[0]] = i;
            cells.put(key, held);
        }
    }

    private double apart(int a, int b) {
        return Math.hypot(poses.dropEastM(b) - poses.dropEastM(a), poses.dropNorthM(b) - poses.dropNorthM(a));
    }

    /** Sums over the samples of a pass that have the same neighbors. */
    private static final class Sums {
        private int n;
        private double leftM;
        private double rightM;
        private double leftSign;
        private double rightSign;
        private double headingRad;
    }

    private void pass(Pass pass) {
        Map<Long, Sums> byNeighbors = new HashMap<>();
        int last = -1;
        for (int i = pass.firstStep() + 1; i < pass.endStep(); i++) {
            if ((last >= 0 && apart(last, i) < EVERY_M) || poses.unsettled(i)) {
                continue;
            }
            last = i;
            Near left = nearest(pass.number(), i, -1);
            Near right = nearest(pass.number(), i, 1);
            if (left == null || right == null) {
                continue;
            }
            Sums sums = byNeighbors.computeIfAbsent(((long) left.pass << 32) | right.pass, k -> new Sums());
            sums.n++;
            sums.leftM += left.asideM;
            sums.rightM += right.asideM;
            sums.leftSign += left.sign;
            sums.rightSign += right.sign;
            sums.headingRad = poses.barHeadingRad(i);
        }
        long best = -1;
        for (Map.Entry<Long, Sums> entry : byNeighbors.entrySet()) {
            Sums held = byNeighbors.get(best);
            int n = entry.getValue().n;
            if (held == null || n > held.n || (n == held.n && entry.getKey() < best)) {
                best = entry.getKey();
            }
        }
        Sums sums = byNeighbors.get(best);
        if (sums != null && sums.n >= MIN_SAMPLES) {
            add(pass.number(), (int) (best >>> 32), (int) best, sums);
        }
    }

    private void add(int pass, int left, int right, Sums s) {
        double signs = Math.signum(s.leftSign) + Math.signum(s.rightSign);
        double effect = 1 - signs / 2;
        if (effect >= PassEnds.MIN_EFFECT) {
            double value = -(s.leftM + s.rightM) / (2 * s.n);
            contrasts.add(
                    new Contrast(pass - 1, left - 1, right - 1, 0.5, s.headingRad + Math.PI / 2, value, effect, 0, 0));
        }
    }

    /** A neighboring pass beside a sample. */
    private record Near(int pass, double asideM, int sign) {}

    private @Nullable Near nearest(int pass, int i, int side) {
        double heading = poses.barHeadingRad(i);
        double sin = Math.sin(heading);
        double cos = Math.cos(heading);
        double east = poses.dropEastM(i);
        double north = poses.dropNorthM(i);
        Near best = null;
        double nearestM = POINT_M;
        // One bar width to the side, and the cells around it.
        double ce = east + side * barM * cos;
        double cn = north - side * barM * sin;
        for (int x = -1; x <= 1; x++) {
            for (int y = -1; y <= 1; y++) {
                int[] held = cells.get(cell(ce, cn, x, y));
                for (int k = 1; held != null && k <= held[0]; k++) {
                    int j = held[k];
                    double de = poses.dropEastM(j) - east;
                    double dn = poses.dropNorthM(j) - north;
                    double ahead = de * sin + dn * cos;
                    if (Math.abs(ahead) >= nearestM || passAt(j) == pass) {
                        continue;
                    }
                    double turn = poses.barHeadingRad(j) - heading;
                    // Straight on from that point to beside the sample.
                    double aside = side * (de * cos - dn * sin - ahead * Math.tan(turn));
                    if (Math.abs(Math.sin(turn)) < PassEnds.PARALLEL_SIN
                            && aside > PassEnds.NEAREST_SHARE * barM
                            && aside < PassEnds.MAX_SHARE * barM) {
                        nearestM = Math.abs(ahead);
                        best = new Near(passAt(j), side * aside, Math.cos(turn) > 0 ? 1 : -1);
                    }
                }
            }
        }
        return best;
    }

    /** The pass a pose belongs to; the last pose of a pass ends its last step. */
    private int passAt(int pose) {
        int own = pose < poses.steps() ? poses.pass(pose) : 0;
        return own > 0 || pose == 0 ? own : poses.pass(pose - 1);
    }
}
