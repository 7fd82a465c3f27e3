package io.rowledger.strip;

import io.rowledger.rig.Band;
import io.rowledger.track.Poses;
import java.util.List;

/**
 * The quadrangles left₀, left₁, right₁, right₀ that the outlets' bands sweep in each step.
 *
 * <p>Corners are computed on access, not stored: a corner is the drop line's center plus y times the bar's right vector,
 * and the corners of 3 million strips would take 200 MB.
 */
public final class Strips {
    private final Poses poses;
    private final double[] leftM;
    private final double[] rightM;

    /** Strips that these bands sweep between these poses. */
    public Strips(Poses poses, List<Band> bands) {
        this.poses = poses;
        this.leftM = bands.stream().mapToDouble(Band::leftM).toArray();
        this.rightM = bands.stream().mapToDouble(Band::rightM).toArray();
    }

    /** Returns the poses. */
    public Poses poses() {
        return poses;
    }

    /** Returns the number of outlets. */
    public int rows() {
        return leftM.length;
    }

    /** Returns the left edge of the band of outlet r (from 0), m right of the bar's center. */
    public double leftM(int r) {
        return leftM[r];
    }

    /** Returns the right edge of the band of outlet r (from 0), m right of the bar's center. */
    public double rightM(int r) {
        return rightM[r];
    }

    /**
     * Returns the signed swept area of outlet r in step k, m²: positive forward, negative where a row inside the pivot of a
     * tight turn goes backward. Shoelace formula over the four corners.
     */
    public double signedAreaM2(int k, int r) {
        return signedAreaM2(k, leftM[r], rightM[r]);
    }

    /** Returns the signed area that the interval [left, right] of the drop line sweeps in step k, m². */
    public double signedAreaM2(int k, double left, double right) {
        double l0e = poses.eastM(k, left);
        double l0n = poses.northM(k, left);
        double l1e = poses.eastM(k + 1, left);
        double l1n = poses.northM(k + 1, left);
        double r1e = poses.eastM(k + 1, right);
        double r1n = poses.northM(k + 1, right);
        double r0e = poses.eastM(k, right);
        double r0n = poses.northM(k, right);
        // Half the cross product of the diagonals; clockwise (left, forward, right, back) is positive.
        return 0.5 * ((r1e - l0e) * (l1n - r0n) - (r1n - l0n) * (l1e - r0e));
    }
}
