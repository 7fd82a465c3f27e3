package io.rowledger.rate;

import io.rowledger.track.Poses;
import java.util.Arrays;
import java.util.BitSet;

/** Tests whether an outlet is well inside a delivering run. With ascending steps each run is looked up once. */
final class SteadyRuns {
    private final Poses poses;
    private final Delivery delivery;
    private final double marginS;
    private final int[] runEnd;
    private final double[] fromS;
    private final double[] toS;

    SteadyRuns(Poses poses, Delivery delivery, double marginS) {
        this.poses = poses;
        this.delivery = delivery;
        this.marginS = marginS;
        int rows = delivery.rows();
        this.runEnd = new int[rows];
        this.fromS = new double[rows];
        this.toS = new double[rows];
        Arrays.fill(runEnd, -1);
    }

    /** Returns true if outlet r delivers in step k and for the margin before and after it. */
    boolean contains(int r, int k) {
        if (!delivery.delivering(r, k)) {
            return false;
        }
        if (k >= runEnd[r]) {
            BitSet steps = delivery.deliveringSteps(r);
            runEnd[r] = steps.nextClearBit(k);
            fromS[r] = poses.timeS(steps.previousClearBit(k) + 1) + marginS;
            toS[r] = poses.timeS(runEnd[r]) - marginS;
        }
        return poses.timeS(k) >= fromS[r] && poses.timeS(k + 1) <= toS[r];
    }
}
