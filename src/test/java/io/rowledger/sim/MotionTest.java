package io.rowledger.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The integrator against closed forms it does not contain. */
class MotionTest {
    private static final double DT_S = 0.02;
    private static final double MILLIMETRE = 1e-3;

    private static SimRig drawn(double axleToHitch, double wheels, double drop) {
        return SimRig.drawn(12).withLengths(axleToHitch, wheels, drop);
    }

    /** Circle about the origin, clockwise, so that the axle starts at (-R, 0) heading north. */
    private static Motion settledOnCircle(SimRig rig, double axleRadiusM) {
        Motion motion = new Motion(rig, -axleRadiusM, 0, 0);
        motion.set(1 / axleRadiusM, 2);
        for (int i = 0; i < 200 / (2 * DT_S); i++) {
            motion.step(DT_S, 0, 0);
        }
        return motion;
    }

    @ParameterizedTest
    // Derived: wheel radius sqrt(Rh^2 - A^2), bar angle asin(A / Rh); formula from Sayers, TRR 1052 (1986), pp. 53-62
    // (review), numbers computed in double precision from it.
    @CsvSource({
        "20, 5, 19.364917, 14.477512",
        "10, 5, 8.660254, 30.0",
        "15, 6, 13.747727, 23.578178",
        "12, 4, 11.313708, 19.471221"
    })
    void wheels_of_a_drawn_bar_settle_on_the_closed_form_circle(
            double hitchRadiusM, double lengthM, double wheelRadiusM, double angleDeg) {
        Motion motion = settledOnCircle(drawn(0, lengthM, lengthM), hitchRadiusM);
        assertEquals(wheelRadiusM, Math.hypot(motion.barX(lengthM, 0), motion.barY(lengthM, 0)), MILLIMETRE);
        assertEquals(angleDeg, Math.toDegrees(motion.psi() - motion.theta()), 1e-4);
    }

    @Test
    void a_hitch_behind_the_axle_and_a_drop_behind_the_wheels_settle_on_their_circles() {
        // Closed form: Rh^2 = R0^2 + h^2, Ra^2 = Rh^2 - A^2, drop radius sqrt(Ra^2 + d^2) with d = B - A.
        Motion motion = settledOnCircle(drawn(0.9, 4.4, 5.9), 15);
        double hitch = Math.sqrt(15 * 15 + 0.9 * 0.9);
        double wheels = Math.sqrt(hitch * hitch - 4.4 * 4.4);
        assertEquals(hitch, Math.hypot(motion.hitchX(), motion.hitchY()), MILLIMETRE);
        assertEquals(wheels, Math.hypot(motion.barX(4.4, 0), motion.barY(4.4, 0)), MILLIMETRE);
        assertEquals(
                Math.sqrt(wheels * wheels + 1.5 * 1.5),
                Math.hypot(motion.barX(5.9, 0), motion.barY(5.9, 0)),
                MILLIMETRE);
        // A point 3 m right of the bar's middle lies inside a clockwise circle: (Ra - 3)^2 + d^2.
        assertEquals(Math.hypot(wheels - 3, 1.5), Math.hypot(motion.barX(5.9, 3), motion.barY(5.9, 3)), MILLIMETRE);
    }

    @Test
    void the_drop_point_two_metres_behind_the_wheels_runs_outside_them() {
        // Derived from the same closed form: R 20 m, A 5 m, d 2 m.
        Motion motion = settledOnCircle(drawn(0, 5, 7), 20);
        assertEquals(19.467922, Math.hypot(motion.barX(7, 0), motion.barY(7, 0)), MILLIMETRE);
    }

    @ParameterizedTest
    // Derived from the classical tractrix tan(phi/2) = tan(phi0/2) exp(-s/L), y = L sin phi (MacTutor, "Tractrix").
    @CsvSource({
        "90, 2.5, 62.476192, 4.434094",
        "90, 5, 40.395063, 3.240271",
        "90, 10, 15.414627, 1.329011",
        "90, 15, 5.700471, 0.496640",
        "30, 5, 11.259260, 0.976244",
        "30, 10, 4.153611, 0.362154"
    })
    void a_straight_pull_follows_the_tractrix(double startDeg, double pulledM, double angleDeg, double offsetM) {
        Motion motion = new Motion(drawn(0, 5, 5), 0, 0, 0);
        motion.barHeading(Math.toRadians(startDeg));
        motion.set(0, 2.5);
        for (int i = 0; i < Math.round(pulledM / (2.5 * DT_S)); i++) {
            motion.step(DT_S, 0, 0);
        }
        assertEquals(pulledM, motion.y(), 1e-9);
        assertEquals(angleDeg, Math.toDegrees(motion.theta()), 1e-4);
        assertEquals(offsetM, -motion.barX(5, 0), MILLIMETRE);
    }

    @Test
    void wheels_never_slip_sideways_on_a_winding_way() {
        // The no-slip condition itself (LaValle, Planning Algorithms, 2006, s. 13.1.2.4), by finite differences.
        SimRig rig = drawn(0.9, 4.4, 5.9);
        Motion motion = new Motion(rig, 0, 0, 0.3);
        motion.set(0, 2);
        double worst = 0;
        for (int i = 0; i < 5000; i++) {
            double x = motion.barX(4.4, 0);
            double y = motion.barY(4.4, 0);
            double theta = motion.theta();
            motion.step(DT_S, 0.08 * Math.cos(i * DT_S), 0);
            double middle = (theta + motion.theta()) / 2;
            double slip = (motion.barX(4.4, 0) - x) * Math.cos(middle) - (motion.barY(4.4, 0) - y) * Math.sin(middle);
            worst = Math.max(worst, Math.abs(slip));
        }
        assertTrue(worst < 1e-6, "slip of a 4 cm step: " + worst + " m");
    }

    @Test
    void a_carried_bar_keeps_the_tractors_heading() {
        Motion motion = settledOnCircle(SimRig.carried(8), 12);
        assertEquals(motion.psi(), motion.theta());
        assertEquals(Math.hypot(12, 0.9 + 2.6), Math.hypot(motion.barX(2.6, 0), motion.barY(2.6, 0)), MILLIMETRE);
    }
}
