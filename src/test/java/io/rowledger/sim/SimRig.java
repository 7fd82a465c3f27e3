package io.rowledger.sim;

import java.util.Arrays;

/**
 * The simulated machine. Lengths in meters; offsets positive to the right.
 *
 * @param name what the rig file says
 * @param antennaAheadM rear axle forward to the antenna
 * @param antennaRightM centre line right to the antenna
 * @param axleToHitchM rear axle back to the hitch pin
 * @param drawn true on own wheels, false rigid
 * @param hitchToWheelsM hitch pin back to the bar's wheels (drawn only)
 * @param hitchToDropM hitch pin back to the drop line
 * @param barRightM side offset of the bar
 * @param spacingM row spacing; NaN for custom bands
 * @param outerShare share of the two outside outlets; NaN for custom bands
 * @param leftM left edge per outlet, right of the bar's centre
 * @param rightM right edge per outlet
 */
public record SimRig(
        String name,
        double antennaAheadM,
        double antennaRightM,
        double axleToHitchM,
        boolean drawn,
        double hitchToWheelsM,
        double hitchToDropM,
        double barRightM,
        double spacingM,
        double outerShare,
        double[] leftM,
        double[] rightM) {
    /** Thirty inches. */
    public static final double THIRTY_INCH_M = 30 * 0.0254;

    /** A pull-type bar with its drop line 1.5 m behind the wheels, 30 in rows. */
    public static SimRig drawn(int rows) {
        return new SimRig(
                        rows + "-row pull-type bar",
                        1.6,
                        0,
                        0.9,
                        true,
                        4.4,
                        5.9,
                        0,
                        THIRTY_INCH_M,
                        1,
                        new double[0],
                        new double[0])
                .withRows(rows, THIRTY_INCH_M, 1);
    }

    /** A mounted bar with its drop line 2.6 m behind the hitch, 30 in rows. */
    public static SimRig carried(int rows) {
        return new SimRig(
                        rows + "-row mounted bar",
                        1.6,
                        0,
                        0.9,
                        false,
                        Double.NaN,
                        2.6,
                        0,
                        THIRTY_INCH_M,
                        1,
                        new double[0],
                        new double[0])
                .withRows(rows, THIRTY_INCH_M, 1);
    }

    /** The same machine with other regular rows. */
    public SimRig withRows(int rows, double spacing, double share) {
        double[] left = new double[rows];
        double[] right = new double[rows];
        double width = (rows - 2 + 2 * share) * spacing;
        double edge = -width / 2;
        for (int i = 0; i < rows; i++) {
            left[i] = edge;
            edge += (i == 0 || i == rows - 1 ? share : 1) * spacing;
            right[i] = edge;
        }
        return withBar(spacing, share, left, right);
    }

    /** The same machine with custom bands. */
    public SimRig withBands(double[] left, double[] right) {
        return withBar(Double.NaN, Double.NaN, left.clone(), right.clone());
    }

    private SimRig withBar(double spacing, double share, double[] left, double[] right) {
        return new SimRig(
                name,
                antennaAheadM,
                antennaRightM,
                axleToHitchM,
                drawn,
                hitchToWheelsM,
                hitchToDropM,
                barRightM,
                spacing,
                share,
                left,
                right);
    }

    /** The same machine with its antenna elsewhere. */
    public SimRig withAntenna(double aheadM, double rightOfCenterM) {
        return new SimRig(
                name,
                aheadM,
                rightOfCenterM,
                axleToHitchM,
                drawn,
                hitchToWheelsM,
                hitchToDropM,
                barRightM,
                spacingM,
                outerShare,
                leftM,
                rightM);
    }

    /** The same machine with other lengths behind the axle. */
    public SimRig withLengths(double axleToHitch, double hitchToWheels, double hitchToDrop) {
        return new SimRig(
                name,
                antennaAheadM,
                antennaRightM,
                axleToHitch,
                drawn,
                drawn ? hitchToWheels : Double.NaN,
                hitchToDrop,
                barRightM,
                spacingM,
                outerShare,
                leftM,
                rightM);
    }

    /** The same machine with its bar shifted sideways. */
    public SimRig withBarRight(double barRight) {
        return new SimRig(
                name,
                antennaAheadM,
                antennaRightM,
                axleToHitchM,
                drawn,
                hitchToWheelsM,
                hitchToDropM,
                barRight,
                spacingM,
                outerShare,
                leftM,
                rightM);
    }

    /** The same machine under another name. */
    public SimRig named(String newName) {
        return new SimRig(
                newName,
                antennaAheadM,
                antennaRightM,
                axleToHitchM,
                drawn,
                hitchToWheelsM,
                hitchToDropM,
                barRightM,
                spacingM,
                outerShare,
                leftM,
                rightM);
    }

    /** Number of outlets. */
    public int rows() {
        return leftM.length;
    }

    /** Width of outlet i's band (0 at the left), m. */
    public double bandM(int i) {
        return rightM[i] - leftM[i];
    }

    /** From the leftmost edge to the rightmost, m. */
    public double widthM() {
        return Arrays.stream(rightM).max().orElseThrow()
                - Arrays.stream(leftM).min().orElseThrow();
    }

    /** Rear axle back to the drop line on a straight, m. */
    public double dropBehindAxleM() {
        return axleToHitchM + hitchToDropM;
    }

    /** True where bands are given one by one. */
    public boolean custom() {
        return Double.isNaN(spacingM);
    }
}
