package io.rowledger.strip;

import io.rowledger.rig.Band;
import io.rowledger.track.Poses;
import java.util.List;

/**
 * The strips of ground: step k and outlet r make the quadrangle left₀, left₁, right₁, right₀.
 *
 * <p>Corners are not stored. A corner is the drop line's centre plus y times the bar's right vector, two multiplications
 * a corner, cheaper to compute than to fetch (3 million strips would fill 200 MB).
 */
public final class Strips {
    private final Poses poses;
    private final double[] leftM;
    private final double[] rightM;

    /** Strips of these poses for these bands. */
    public Strips(Poses poses, List<Band> bands) {
        this.poses = poses;
        this.leftM = bands.stream().mapToDouble(Band::leftM).toArray();
        this.rightM = bands.stream().mapToDouble(Band::rightM).toArray();
    }

    /** The poses the strips lie between. */
    public Poses poses() {
        return poses;
    }

    /** Number of outlets. */
    public int rows() {
        return leftM.length;
    }

    /** Left edge of outlet r's band, m right of the bar's centre. */
    public double leftM(int r) {
        return leftM[r];
    }

    /** Right edge of outlet r's band, m right of the bar's centre. */
    public double rightM(int r) {
        return rightM[r];
    }

    /**
     * Signed swept area of outlet r in step k, m²: positive forward, negative where a row inside the pivot of a tight
     * turn goes backward. Shoelace of the four corners.
     */
    public double signedAreaM2(int k, int r) {
        return signedAreaM2(k, leftM[r], rightM[r]);
    }

    /** Signed area swept in step k by the interval [left, right] of the drop line, m². */
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
