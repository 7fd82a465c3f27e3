package io.rowledger.coverage.strips;

import io.rowledger.track.Poses;
import java.util.BitSet;

/**
 * Selects the poses of a pass that become vertices of the strip polygons. They are the same for all rows, so that
 * neighboring rows share an edge.
 *
 * <p>A pose is left out if both ends of the bar stay within the tolerance of the chord between the poses that are kept
 * around it. At a given fraction of the chord the deviation is linear in the position on the bar, so its magnitude is
 * convex and largest at an end. (Douglas-Peucker: D. Douglas, T. Peucker, "Algorithms for the reduction of the number
 * of points required to represent a digitized line", The Canadian Cartographer 10 (1973) 112-122.)
 */
final class Decimation {
    private final Poses poses;
    private final double leftM;
    private final double rightM;
    private final double toleranceM;

    Decimation(Poses poses, double leftM, double rightM, double toleranceM) {
        this.poses = poses;
        this.leftM = leftM;
        this.rightM = rightM;
        this.toleranceM = toleranceM;
    }

    /** Adds the poses that the tolerance requires to {@code kept}, which holds the poses that are fixed. */
    void addTo(BitSet kept) {
        BitSet forced = (BitSet) kept.clone();
        int from = forced.nextSetBit(0);
        while (from >= 0) {
            int to = forced.nextSetBit(from + 1);
            if (to > from + 1) {
                divide(from, to, kept);
            }
            from = to;
        }
    }

    private void divide(int from, int to, BitSet kept) {
        int first = from;
        while (to > first + 1) {
            int worst = worst(first, to);
            if (worst < 0) {
                return;
            }
            kept.set(worst);
            divide(first, worst, kept);
            first = worst;
        }
    }

    /** Returns the pose between with the largest deviation from the chord, or −1 if none exceeds the tolerance. */
    private int worst(int from, int to) {
        double max2 = toleranceM * toleranceM;
        int worst = -1;
        for (int i = from + 1; i < to; i++) {
            double d = Math.max(distance2(from, to, i, leftM), distance2(from, to, i, rightM));
            if (d > max2) {
                max2 = d;
                worst = i;
            }
        }
        return worst;
    }

    private double distance2(int from, int to, int i, double yM) {
        double e0 = poses.eastM(from, yM);
        double n0 = poses.northM(from, yM);
        double de = poses.eastM(to, yM) - e0;
        double dn = poses.northM(to, yM) - n0;
        double pe = poses.eastM(i, yM) - e0;
        double pn = poses.northM(i, yM) - n0;
        double length2 = de * de + dn * dn;
        double t = length2 == 0 ? 0 : Math.max(0, Math.min(1, (pe * de + pn * dn) / length2));
        double re = pe - t * de;
        double rn = pn - t * dn;
        return re * re + rn * rn;
    }
}
