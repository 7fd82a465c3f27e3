package io.rowledger.rig;

/**
 * The measured lengths of tractor and bar, m. {@code README.md} shows where each is taken.
 *
 * @param antennaAheadM rear axle forward to the antenna
 * @param antennaRightM tractor's centerline right to the antenna
 * @param axleToHitchM rear axle back to the hitch pin
 * @param hitch pull-type or mounted
 * @param hitchToWheelsM hitch pin back to the wheel line; NaN for a mounted bar
 * @param hitchToDropM hitch pin back to the drop line
 * @param barRightM side offset of the bar's center, positive right
 * @param toleranceM how far each length may be off; NaN if the rig file gives no tolerance
 */
public record BarLengths(
        double antennaAheadM,
        double antennaRightM,
        double axleToHitchM,
        Hitch hitch,
        double hitchToWheelsM,
        double hitchToDropM,
        double barRightM,
        double toleranceM) {
    /**
     * A mounted bar whose antenna stands on the centerline.
     *
     * @param hitchToDropM hitch pin back to the drop line, m
     */
    public static BarLengths mounted(double antennaAheadM, double axleToHitchM, double hitchToDropM) {
        return new BarLengths(antennaAheadM, 0, axleToHitchM, Hitch.MOUNTED, Double.NaN, hitchToDropM, 0, Double.NaN);
    }

    /** A pull-type bar whose antenna stands on the centerline. */
    public static BarLengths pullType(
            double antennaAheadM, double axleToHitchM, double hitchToWheelsM, double hitchToDropM) {
        return new BarLengths(
                antennaAheadM, 0, axleToHitchM, Hitch.PULL_TYPE, hitchToWheelsM, hitchToDropM, 0, Double.NaN);
    }
}
