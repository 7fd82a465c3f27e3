package io.rowledger.coverage;

import io.rowledger.coverage.strips.Visit;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;

/**
 * Position of a point relative to a visit's strip: inside, along a side, at the line where its run began, or where it
 * ended.
 */
final class Contact {
    /**
     * Distance up to which a point touches a strip, m: more than the slivers of good guidance, less than half a 30 in
     * row.
     */
    static final double MAX_DISTANCE_M = 0.3;

    /** Position of a point relative to a strip. */
    enum Side {
        NONE,
        INSIDE,
        FLANK,
        START,
        END
    }

    private final Strips strips;
    private final Poses poses;

    private Side side = Side.NONE;
    private int row;

    Contact(Strips strips) {
        this.strips = strips;
        this.poses = strips.poses();
    }

    Side side() {
        return side;
    }

    /** Returns the outlet, from 1, whose band the point lies in or next to. */
    int row() {
        return row;
    }

    /** Locates the point; {@link #side} and {@link #row} return the result. */
    boolean find(Visit visit, double eastM, double northM) {
        side = Side.NONE;
        double leftM = strips.leftM(visit.strip().firstRow() - 1);
        double rightM = strips.rightM(visit.strip().lastRow() - 1);
        int[] at = visit.poses();
        double ahead0 = ahead(at[0], eastM, northM);
        for (int v = 1; v < at.length; v++) {
            double ahead1 = ahead(at[v], eastM, northM);
            boolean afterFirst = ahead0 >= (v == 1 ? -MAX_DISTANCE_M : 0);
            boolean beforeLast = ahead1 <= (v == at.length - 1 ? MAX_DISTANCE_M : 0);
            if (afterFirst && beforeLast) {
                double span = ahead0 - ahead1;
                double t = span <= 0 ? 0 : Math.max(0, Math.min(1, ahead0 / span));
                double yM = (1 - t) * right(at[v - 1], eastM, northM) + t * right(at[v], eastM, northM);
                if (yM >= leftM - MAX_DISTANCE_M && yM <= rightM + MAX_DISTANCE_M) {
                    boolean start =
                            v == 1 && ahead0 <= MAX_DISTANCE_M && visit.strip().firstStep() == visit.runStart();
                    boolean end = v == at.length - 1
                            && ahead1 >= -MAX_DISTANCE_M
                            && visit.strip().endStep() == visit.runEnd();
                    boolean flank = yM <= leftM + MAX_DISTANCE_M || yM >= rightM - MAX_DISTANCE_M;
                    side = start ? Side.START : end ? Side.END : flank ? Side.FLANK : Side.INSIDE;
                    row = rowAt(visit, yM);
                    return true;
                }
            }
            ahead0 = ahead1;
        }
        return false;
    }

    private int rowAt(Visit visit, double yM) {
        int last = visit.strip().lastRow();
        for (int r = visit.strip().firstRow(); r < last; r++) {
            if (yM < strips.rightM(r - 1)) {
                return r;
            }
        }
        return last;
    }

    private double ahead(int i, double eastM, double northM) {
        return (eastM - poses.dropEastM(i)) * Math.sin(poses.barHeadingRad(i))
                + (northM - poses.dropNorthM(i)) * Math.cos(poses.barHeadingRad(i));
    }

    private double right(int i, double eastM, double northM) {
        return (eastM - poses.dropEastM(i)) * Math.cos(poses.barHeadingRad(i))
                - (northM - poses.dropNorthM(i)) * Math.sin(poses.barHeadingRad(i));
    }
}
