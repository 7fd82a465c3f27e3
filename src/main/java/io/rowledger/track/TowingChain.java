package io.rowledger.track;

import io.rowledger.geo.Heading;
import io.rowledger.rig.Hitch;
import io.rowledger.rig.Rig;

/**
 * Antenna to rear axle to hitch pin to bar, advanced move by move. The state of one machine at one instant.
 *
 * <p>The rear axle does not slip sideways, so the antenna drags it along as a drawbar drags a cart; this holds for any
 * side offset of the antenna too, because only the move across the tractor turns it. The hitch pin then drags the bar.
 * While backing, the tractor's heading is the course reversed and the bar keeps its last forward angle, unsettled.
 */
final class TowingChain {
    /** Moves shorter than this are saved up, m: at a stand the noise of the fixes must not turn the tractor. */
    private static final double MIN_MOVE_M = 0.02;

    /** Settled once the hitch pin has come this many drawbar lengths forward: e⁻³ leaves 5 % of a wrong angle. */
    private static final double SETTLING_LENGTHS = 3.0;

    /** Nobody backs farther than this with the bar lowered, m: then it was the heading that was wrong. */
    private static final double LOWERED_BACKING_M = 10.0;

    /** Nobody backs farther than this with the bar lifted either, m. */
    private static final double LIFTED_BACKING_M = 60.0;

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

    /** Puts the machine down with tractor and bar in line, bar angle unknown. */
    void place(double antennaEastM, double antennaNorthM, double headingRad) {
        this.headingRad = headingRad;
        this.barHeadingRad = headingRad;
        this.backing = false;
        this.backwardM = 0;
        unsettle();
        apply(antennaEastM, antennaNorthM);
    }

    /** Forgets how well the bar's angle is known. */
    void unsettle() {
        forwardM = 0;
    }

    /** Moves the antenna in a straight line to a new place. */
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

    private void back(double course, double length, boolean lowered) {
        backwardM += length;
        forwardM = 0;
        headingRad = Heading.wrap(course + Math.PI);
        if (backwardM > (lowered ? LOWERED_BACKING_M : LIFTED_BACKING_M)) {
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

    /** Writes the machine's pose, with the antenna at (east, north), into column i. */
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
