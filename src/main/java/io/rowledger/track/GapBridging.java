package io.rowledger.track;

import io.rowledger.geo.Heading;
import io.rowledger.log.LogTable;

/**
 * Stretches without a fix that were driven straight on, or in one even bend, with the bar down: a tree row, a frozen
 * receiver. The logger wrote on and says that the bar stayed down, and the fixes on either side agree on the way between:
 * as fast as before and after, and the way leaves to the same side at either end. The path is carried across along the
 * cubic through both ends' positions and velocities. A silence of the logger itself is none: nobody knows whether the bar
 * was lifted in it.
 */
final class GapBridging {
    /** Longer ones are left open, s: about 25 m. */
    private static final double MAX_S = 10;
    /** The velocity on either side is taken over so long, s. */
    private static final double SIDE_S = 1;
    /** Slower than this the direction says little, m/s. */
    private static final double SLOWEST_MPS = 0.7;
    /** The way between against the mean of the speeds beside it, as a share. */
    private static final double SAME_SPEED = 0.15;
    /** A bend may leave the straight line by so much at either end; a contour of 60 m radius over 25 m does. */
    private static final double WIDEST_RAD = Math.toRadians(15);
    /** Both ends of an even bend leave it by the same angle; this much may be noise: 5 cm in a second's way. */
    private static final double UNEVEN_RAD = Math.toRadians(4);

    private final double[] timeS;
    private final double[] eastM;
    private final double[] northM;
    private final boolean[] segment;

    private GapBridging(double[] timeS, double[] eastM, double[] northM, boolean[] segment) {
        this.timeS = timeS;
        this.eastM = eastM;
        this.northM = northM;
        this.segment = segment;
    }

    /** True before each record that ends a crossing; {@code segment} is true wherever the path is broken or silent. */
    static boolean[] of(
            LogTable log, boolean[] lowered, double[] timeS, double[] eastM, double[] northM, boolean[] segment) {
        boolean[] crossed = new boolean[timeS.length];
        GapBridging crossings = new GapBridging(timeS, eastM, northM, segment);
        for (int i = 1; i < timeS.length; i++) {
            crossed[i] = segment[i]
                    && log.downBefore(i)
                    && lowered[i - 1]
                    && lowered[i]
                    && timeS[i] - timeS[i - 1] <= MAX_S
                    && crossings.agrees(i);
        }
        return crossed;
    }

    private boolean agrees(int i) {
        int before = side(i - 1, -1);
        int after = side(i, 1);
        double beforeS = timeS[i - 1] - timeS[before];
        double afterS = timeS[after] - timeS[i];
        if (beforeS < SIDE_S / 2 || afterS < SIDE_S / 2) {
            return false;
        }
        double beforeMps = distanceM(before, i - 1) / beforeS;
        double afterMps = distanceM(i, after) / afterS;
        double betweenMps = distanceM(i - 1, i) / (timeS[i] - timeS[i - 1]);
        double meanMps = (beforeMps + afterMps) / 2;
        if (Math.min(beforeMps, afterMps) < SLOWEST_MPS || Math.abs(betweenMps / meanMps - 1) > SAME_SPEED) {
            return false;
        }
        double wayRad = headingRad(i - 1, i);
        double intoRad = Heading.wrap(wayRad - headingRad(before, i - 1));
        double outOfRad = Heading.wrap(headingRad(i, after) - wayRad);
        return Math.abs(intoRad) < WIDEST_RAD
                && Math.abs(outOfRad) < WIDEST_RAD
                && Math.abs(intoRad - outOfRad) < UNEVEN_RAD;
    }

    /** The record a second away from {@code i} on its own side, or the last before a break. */
    private int side(int i, int way) {
        int j = i;
        while (j + way >= 0
                && j + way < timeS.length
                && !segment[way > 0 ? j + way : j]
                && Math.abs(timeS[j] - timeS[i]) < SIDE_S) {
            j += way;
        }
        return j;
    }

    private double distanceM(int from, int to) {
        return Math.hypot(eastM[to] - eastM[from], northM[to] - northM[from]);
    }

    private double headingRad(int from, int to) {
        return Heading.of(eastM[to] - eastM[from], northM[to] - northM[from]);
    }
}
