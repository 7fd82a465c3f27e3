package io.rowledger.coverage.strips;

import io.rowledger.coverage.strips.Visit.Kind;
import io.rowledger.rate.Delivery;
import io.rowledger.strip.Strips;
import io.rowledger.track.Pass;
import io.rowledger.track.Poses;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Runs of one pass: stretches of steps in which a row does one thing. */
public final class RowRuns {
    /**
     * Distance a row must go backward to count as inside the pivot, m; less is noise of a bar that hardly moves, and
     * vanishes in the simplified edge.
     */
    private static final double MIN_PIVOT_M = 0.005;

    /** Steps [start, end) in which a row does one thing. */
    record Run(int start, int end, Kind kind) {}

    private final Pass pass;
    private final Strips strips;
    private final Delivery delivery;
    /**
     * Steps in which some part of the bar doesn't move forward, counted from the pass's first step; pivots lie in these
     * only.
     */
    private final BitSet partlyBackward;

    RowRuns(Pass pass, Strips strips, Delivery delivery) {
        this.pass = pass;
        this.strips = strips;
        this.delivery = delivery;
        this.partlyBackward = partlyBackward();
    }

    private BitSet partlyBackward() {
        Poses poses = strips.poses();
        double left = leftmost(strips);
        double right = rightmost(strips);
        BitSet out = new BitSet();
        for (int k = pass.firstStep(); k < pass.endStep(); k++) {
            if (forwardM(poses, k, left) <= 0 || forwardM(poses, k, right) <= 0) {
                out.set(k - pass.firstStep());
            }
        }
        return out;
    }

    /** Returns true if the whole bar moves forward in every step of [from, to). */
    boolean allForward(int from, int to) {
        int next = partlyBackward.nextSetBit(from - pass.firstStep());
        return next < 0 || next >= to - pass.firstStep();
    }

    /**
     * Returns the distance that the point yM right of the bar's center moves in step k along the bar's heading at its
     * start, m.
     */
    public static double forwardM(Poses poses, int k, double yM) {
        double sin = Math.sin(poses.barHeadingRad(k));
        double cos = Math.cos(poses.barHeadingRad(k));
        return (poses.eastM(k + 1, yM) - poses.eastM(k, yM)) * sin
                + (poses.northM(k + 1, yM) - poses.northM(k, yM)) * cos;
    }

    /** Returns the left edge of the leftmost band, m right of the bar's center. */
    public static double leftmost(Strips strips) {
        double left = Double.POSITIVE_INFINITY;
        for (int r = 0; r < strips.rows(); r++) {
            left = Math.min(left, strips.leftM(r));
        }
        return left;
    }

    /** Returns the right edge of the rightmost band, m right of the bar's center. */
    public static double rightmost(Strips strips) {
        double right = Double.NEGATIVE_INFINITY;
        for (int r = 0; r < strips.rows(); r++) {
            right = Math.max(right, strips.rightM(r));
        }
        return right;
    }

    /** Returns the runs of outlet r in order; steps inside the pivot without delivery are in none. */
    List<Run> of(int r) {
        BitSet backward = backward(r);
        List<Run> runs = new ArrayList<>();
        int k = pass.firstStep();
        while (k < pass.endStep()) {
            Kind kind = kind(r, k, backward);
            int start = k;
            do {
                k++;
            } while (k < pass.endStep() && kind(r, k, backward) == kind);
            if (kind != null) {
                runs.add(new Run(start, k, kind));
            }
        }
        return runs;
    }

    private @Nullable Kind kind(int r, int k, BitSet backward) {
        boolean back = backward.get(k - pass.firstStep());
        if (delivery.delivering(r, k)) {
            return back ? Kind.PIVOT : Kind.DELIVERING;
        }
        return back ? null : Kind.NOT_DELIVERING;
    }

    /** Returns the steps of row r, counted from the pass's first step, that belong to a stretch going backward. */
    private BitSet backward(int r) {
        BitSet out = new BitSet();
        double minM2 = MIN_PIVOT_M * (strips.rightM(r) - strips.leftM(r));
        int i = partlyBackward.nextSetBit(0);
        while (i >= 0) {
            int start = i;
            double sumM2 = 0;
            while (partlyBackward.get(i)) {
                double areaM2 = strips.signedAreaM2(pass.firstStep() + i, r);
                if (areaM2 > 0) {
                    break;
                }
                sumM2 += areaM2;
                i++;
            }
            if (sumM2 < -minM2) {
                out.set(start, i);
            }
            i = partlyBackward.nextSetBit(Math.max(i, start + 1));
        }
        return out;
    }
}
