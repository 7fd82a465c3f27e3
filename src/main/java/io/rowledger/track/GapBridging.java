package io.rowledger.track;

import io.rowledger.geo.Heading;
import io.rowledger.log.LogTable;

/**
 * Gaps without usable fixes that are interpolated: with the bar down, straight or in one even bend (tree row, frozen
 * receiver).
 *
 * <p>The logger went on recording and says that the bar stayed down, and the fixes on either side agree: the mean speed
 * across the gap equals the speeds beside it, and the chord leaves both end courses by the same angle. The path across
 * is the cubic through the positions and velocities at both ends. A gap in which the logger wrote nothing is never
 * interpolated, since the bar may have been lifted in it.
 */
final class GapBridging {
    /** Longest gap that is interpolated, s; about 25 m of travel. */
    private static final double MAX_GAP_S = 10;
    /** The velocity on either side is the mean over this time, s. */
    private static final double VELOCITY_WINDOW_S = 1;
    /** Lowest speed at which a course is known well enough, m/s. */
    private static final double MIN_SPEED_MPS = 0.7;
    /** Largest relative difference between the speed across the gap and the mean of the speeds beside it. */
    private static final double MAX_SPEED_DIFFERENCE = 0.15;
    /** Largest angle between chord and course at either end; a contour of 60 m radius over 25 m reaches it. */
    private static final double MAX_BEND_RAD = Math.toRadians(15);
    /** Largest difference of the two angles, which are equal in an even bend; noise of 5 cm in a second's travel. */
    private static final double MAX_BEND_DIFFERENCE_RAD = Math.toRadians(4);

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

    /** Returns true for each record that ends an interpolated gap; {@code segment} is true after any break of the path. */
    static boolean[] of(
            LogTable log, boolean[] lowered, double[] timeS, double[] eastM, double[] northM, boolean[] segment) {
        boolean[] bridged = new boolean[timeS.length];
        GapBridging bridging = new GapBridging(timeS, eastM, northM, segment);
        for (int i = 1; i < timeS.length; i++) {
            bridged[i] = segment[i]
                    && log.downBefore(i)
                    && lowered[i - 1]
                    && lowered[i]
                    && timeS[i] - timeS[i - 1] <= MAX_GAP_S
                    && bridging.agrees(i);
        }
        return bridged;
    }

    private boolean agrees(int i) {
        int before = neighbor(i - 1, -1);
        int after = neighbor(i, 1);
        double beforeS = timeS[i - 1] - timeS[before];
        double afterS = timeS[after] - timeS[i];
        if (beforeS < VELOCITY_WINDOW_S / 2 || afterS < VELOCITY_WINDOW_S / 2) {
            return false;
        }
        double beforeMps = distanceM(before, i - 1) / beforeS;
        double afterMps = distanceM(i, after) / afterS;
        double betweenMps = distanceM(i - 1, i) / (timeS[i] - timeS[i - 1]);
        double meanMps = (beforeMps + afterMps) / 2;
        if (Math.min(beforeMps, afterMps) < MIN_SPEED_MPS
                || Math.abs(betweenMps / meanMps - 1) > MAX_SPEED_DIFFERENCE) {
            return false;
        }
        double chordRad = headingRad(i - 1, i);
        double intoRad = Heading.wrap(chordRad - headingRad(before, i - 1));
        double outOfRad = Heading.wrap(headingRad(i, after) - chordRad);
        return Math.abs(intoRad) < MAX_BEND_RAD
                && Math.abs(outOfRad) < MAX_BEND_RAD
                && Math.abs(intoRad - outOfRad) < MAX_BEND_DIFFERENCE_RAD;
    }

    /** Returns the record a second away from {@code i} in that direction, or the last one before a break. */
    private int neighbor(int i, int direction) {
        int j = i;
        while (j + direction >= 0
                && j + direction < timeS.length
                && !segment[direction > 0 ? j + direction : j]
                && Math.abs(timeS[j] - timeS[i]) < VELOCITY_WINDOW_S) {
            j += direction;
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
