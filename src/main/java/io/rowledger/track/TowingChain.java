package io.rowledger.track;

import io.rowledger.geo.Heading;
import io.rowledger.rig.Hitch;
import io.rowledger.rig.Rig;

/**
 * State of the chain antenna, rear axle, hitch pin, bar at one instant, advanced move by move.
 *
 * <p>The rear axle does not slip sideways, so it follows the antenna as a towed body ({@link DragLaw}), whatever the
 * antenna's side offset; the bar follows the hitch pin in the same way. While backing, the tractor's heading is the reversed
 * course, and the bar keeps its last forward angle and is unsettled.
 */
final class TowingChain {
    /** Shorter moves are accumulated, m, so that rounding of close positions has no direction. */
    private static final double MIN_MOVE_M = 0.02;

    /** The bar is settled after the hitch pin has moved this many drawbar lengths forward: e⁻³ leaves 5 % of a wrong angle. */
    private static final double SETTLING_LENGTHS = 3.0;

    /** Longest plausible backing with the bar lowered, m; beyond it the heading was wrong by half a turn. */
    private static final double MAX_LOWERED_BACKING_M = 10.0;

    /** Longest plausible backing with the bar lifted, m. */
    private static final double MAX_LIFTED_BACKING_M = 60.0;

    private final double aheadM;
    private final double antennaRightM;
    private final double axleToHitchM;
    private final boolean drawn;
    private final double drawbarM;
    private final double hitchToDropM;
    private final double barRightM;
    private final double settlingM;

    private double appliedEastM;
    private double appliedNorthM;
    private double hitchEastM;
    private double hitchNorthM;
    private double headingRad;
    private double barHeadingRad;
    private double forwardM;
    private double backwardM;
    private boolean backing;

    TowingChain(Rig rig) {
        aheadM = rig.antennaAheadM();
        antennaRightM = rig.antennaRightM();
        axleToHitchM = rig.axleToHitchM();
        drawn = rig.hitch() == Hitch.PULL_TYPE;
        drawbarM = drawn ? rig.hitchToWheelsM() : 0;
        hitchToDropM = rig.hitchToDropM();
        barRightM = rig.barRightM();
        settlingM = SETTLING_LENGTHS * Math.max(Math.max(aheadM, 0), drawbarM);
    }

    /** Starts at a position with tractor and bar in line; the bar is unsettled. */
    void place(double antennaEastM, double antennaNorthM, double headingRad) {
        this.headingRad = headingRad;
        this.barHeadingRad = headingRad;
        this.backing = false;
        this.backwardM = 0;
        unsettle();
        apply(antennaEastM, antennaNorthM);
    }

    /** Marks the bar's angle as unknown until the hitch pin has moved far enough. */
    void unsettle() {
        forwardM = 0;
    }

    /** Moves the antenna in a straight line to a new position. */
    void moveTo(double antennaEastM, double antennaNorthM, boolean lowered) {
        double de = antennaEastM - appliedEastM;
        double dn = antennaNorthM - appliedNorthM;
        double length = Math.hypot(de, dn);
        if (length < MIN_MOVE_M) {
            return;
        }
        double course = Heading.of(de, dn);
        backing = Math.abs(Heading.wrap(headingRad - course)) > Math.PI / 2;
        if (backing) {
            back(course, length, lowered);
        } else {
            backwardM = 0;
            headingRad = DragLaw.after(headingRad, course, length, aheadM);
        }
        double hitchEast = hitchEastM;
        double hitchNorth = hitchNorthM;
        apply(antennaEastM, antennaNorthM);
        dragBar(hitchEastM - hitchEast, hitchNorthM - hitchNorth);
    }

    /** Translates the machine to a new antenna position without turning anything: position noise at a standstill. */
    void drift(double antennaEastM, double antennaNorthM) {
        apply(antennaEastM, antennaNorthM);
    }

    private void back(double course, double length, boolean lowered) {
        backwardM += length;
        forwardM = 0;
        headingRad = Heading.wrap(course + Math.PI);
        if (backwardM > (lowered ? MAX_LOWERED_BACKING_M : MAX_LIFTED_BACKING_M)) {
            headingRad = course;
            barHeadingRad = course;
            backing = false;
            backwardM = 0;
        }
    }

    private void dragBar(double de, double dn) {
        double length = Math.hypot(de, dn);
        if (!drawn) {
            barHeadingRad = headingRad;
        } else if (!backing && length > 0) {
            barHeadingRad = DragLaw.after(barHeadingRad, Heading.of(de, dn), length, drawbarM);
        }
        if (!backing) {
            forwardM += length;
        }
    }

    private void apply(double antennaEastM, double antennaNorthM) {
        appliedEastM = antennaEastM;
        appliedNorthM = antennaNorthM;
        double sin = Math.sin(headingRad);
        double cos = Math.cos(headingRad);
        double back = aheadM + axleToHitchM;
        hitchEastM = antennaEastM - back * sin - antennaRightM * cos;
        hitchNorthM = antennaNorthM - back * cos + antennaRightM * sin;
    }

    boolean backing() {
        return backing;
    }

    boolean unsettled() {
        return forwardM < settlingM;
    }

    double headingRad() {
        return headingRad;
    }

    /** Stores the pose, with the antenna at (east, north), at index i. */
    void store(PoseColumns c, int i, double antennaEastM, double antennaNorthM) {
        double sin = Math.sin(headingRad);
        double cos = Math.cos(headingRad);
        double back = aheadM + axleToHitchM;
        double barSin = Math.sin(barHeadingRad);
        double barCos = Math.cos(barHeadingRad);
        c.antennaEastM[i] = antennaEastM;
        c.antennaNorthM[i] = antennaNorthM;
        c.headingRad[i] = headingRad;
        c.hitchEastM[i] = antennaEastM - back * sin - antennaRightM * cos;
        c.hitchNorthM[i] = antennaNorthM - back * cos + antennaRightM * sin;
        c.barHeadingRad[i] = barHeadingRad;
        c.barSin[i] = barSin;
        c.barCos[i] = barCos;
        c.dropEastM[i] = c.hitchEastM[i] - hitchToDropM * barSin + barRightM * barCos;
        c.dropNorthM[i] = c.hitchNorthM[i] - hitchToDropM * barCos - barRightM * barSin;
    }
}
