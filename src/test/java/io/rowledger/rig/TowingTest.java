package io.rowledger.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.geo.Heading;
import io.rowledger.log.LogTable;
import io.rowledger.track.DragLaw;
import io.rowledger.track.Poses;
import io.rowledger.track.TestLogs;
import io.rowledger.track.Track;
import io.rowledger.track.TrackBuilder;
import io.rowledger.track.TrackOptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TowingTest {
    private static final TrackOptions OPTIONS = TrackOptions.defaults();

    /** Antenna over the hitch pin on a circle of radius R: the whole chain against R² − A². */
    @ParameterizedTest
    @CsvSource({
        // R, A, wheel-line radius. Steady-turn off-tracking √(R² − A²); the formula is reviewed in M. W. Sayers,
        // Transportation Research Record 1052 (1986) 53-62; the figures are derived from it.
        "20, 5, 19.364917",
        "10, 5,  8.660254",
        "15, 6, 13.747727",
        "12, 4, 11.313708"
    })
    void on_a_steady_circle_wheel_line_and_drop_line_run_on_the_closed_form(double r, double a, double wheels) {
        double speed = 2;
        // Ahead = −axleToHitch puts the antenna exactly over the hitch pin whatever the tractor's heading.
        Rig rig = TestLogs.rig(0, 0, a, a + 1.5, 8);
        LogTable log = TestLogs.along(
                t -> new double[] {r * Math.sin(speed * t / r), r * Math.cos(speed * t / r)}, 1500, 10, 8, 0.05);
        Track track = TrackBuilder.build(log, rig, OPTIONS);
        Poses poses = track.poses();
        double[] centre = centreOfCircle(poses, 300, 700, 1100);
        double dropRadius = Math.hypot(wheels, 1.5);
        for (int i = 400; i < 1300; i++) {
            double hitch = Math.hypot(poses.hitchEastM(i) - centre[0], poses.hitchNorthM(i) - centre[1]);
            assertEquals(r, hitch, 0.001, "the hitch pin left the circle");
            double wheelEast = poses.hitchEastM(i) - a * Math.sin(poses.barHeadingRad(i));
            double wheelNorth = poses.hitchNorthM(i) - a * Math.cos(poses.barHeadingRad(i));
            assertEquals(wheels, Math.hypot(wheelEast - centre[0], wheelNorth - centre[1]), 0.001);
            // The drop line lies 1.5 m behind the wheel line: radius √(Rw² + 1.5²), swung outward of the wheels.
            assertEquals(
                    dropRadius, Math.hypot(poses.dropEastM(i) - centre[0], poses.dropNorthM(i) - centre[1]), 0.001);
            double angle = Math.abs(Heading.wrap(poses.barHeadingRad(i)
                    - Heading.of(
                            poses.hitchEastM(i + 1) - poses.hitchEastM(i - 1),
                            poses.hitchNorthM(i + 1) - poses.hitchNorthM(i - 1))));
            assertEquals(Math.asin(a / r), angle, 0.0005, "hitch angle asin(A/R)");
        }
    }

    @Test
    void the_rear_axle_runs_inside_the_antenna_by_the_closed_form() {
        // Antenna 1.6 m ahead of the axle on a circle of 10 m: axle radius √(10² − 1.6²), same law as a drawbar.
        double r = 10;
        Rig rig = TestLogs.rig(1.6, 0, Double.NaN, 0, 8);
        LogTable log =
                TestLogs.along(t -> new double[] {r * Math.sin(2 * t / r), r * Math.cos(2 * t / r)}, 1200, 10, 8, 0.05);
        Poses poses = TrackBuilder.build(log, rig, OPTIONS).poses();
        double[] centre = centreOfCircle(poses, 300, 600, 900);
        for (int i = 300; i < 1000; i++) {
            double axle = Math.hypot(poses.hitchEastM(i) - centre[0], poses.hitchNorthM(i) - centre[1]);
            assertEquals(Math.sqrt(100 - 1.6 * 1.6), axle, 0.001);
        }
    }

    @ParameterizedTest
    @CsvSource({
        // start deg, travel m, angle deg, lateral m for a 5 m drawbar; derived from the tractrix
        // (MacTutor "Tractrix"; x = L(t − tanh t), y = L sech t), evaluated in double precision.
        "90, 2.5, 62.476192, 4.434094",
        "90, 5, 40.395063, 3.240271",
        "90, 10, 15.414627, 1.329011",
        "90, 15, 5.700471, 0.496640",
        "30, 5, 11.259260, 0.976244",
        "30, 10, 4.153611, 0.362154"
    })
    void on_a_straight_pull_the_bar_follows_the_tractrix(double startDeg, double travel, double deg, double lateral) {
        double theta = Math.toRadians(startDeg);
        int pulls = 7;
        for (int i = 0; i < pulls; i++) {
            theta = DragLaw.after(theta, 0, travel / pulls, 5);
        }
        assertEquals(deg, Math.toDegrees(theta), 1e-6);
        assertEquals(lateral, 5 * Math.sin(theta), 1e-6);
    }

    @Test
    void the_whole_chain_follows_the_tractrix_after_a_corner() {
        // East for 60 m, then north: from the corner on, a 5 m drawbar starts at 90 degrees to the pull.
        Rig rig = TestLogs.rig(0, 0, 5, 5, 8);
        LogTable log = TestLogs.along(
                t -> t < 30 ? new double[] {2 * t - 60, 0} : new double[] {0, 2 * (t - 30)}, 6001, 100, 8, 0.05);
        Poses poses = TrackBuilder.build(log, rig, OPTIONS).poses();
        double corner = log.timeS(3000);
        for (int i = 0; i < poses.poses(); i++) {
            double s = 2 * (poses.timeS(i) - corner);
            if (s > 2 && s < 30) {
                double angle = 2 * Math.atan(Math.exp(-s / 5));
                assertEquals(angle, poses.barHeadingRad(i), 0.004, "angle at " + s + " m");
            }
        }
    }

    @Test
    void the_start_is_unsettled_until_the_hitch_has_come_three_drawbars_forward() {
        Rig rig = TestLogs.rig(0, 0, 5, 5, 8);
        LogTable log = TestLogs.along(t -> new double[] {0, 2 * t}, 400, 10, 8, 0.05);
        Poses poses = TrackBuilder.build(log, rig, OPTIONS).poses();
        for (int k = 0; k < poses.steps(); k++) {
            double travelled = 2 * (poses.timeS(k) - log.timeS(0));
            if (Math.abs(travelled - 15) > 0.3) {
                assertEquals(travelled < 15, poses.unsettled(k), "after " + travelled + " m");
            }
        }
    }

    @Test
    void backing_is_seen_and_unsettles_the_bar() {
        // 40 m north, 6 m back, 40 m north again; the bar is down all the way, but backing is not working.
        Rig rig = TestLogs.rig(1.6, 0.9, 4.4, 5.9, 8);
        LogTable log = TestLogs.along(t -> new double[] {0, way(t)}, 620, 10, 8, 0.05);
        Track track = TrackBuilder.build(log, rig, OPTIONS);
        Poses poses = track.poses();
        int backing = 0;
        for (int k = 0; k < poses.steps(); k++) {
            double t = poses.timeS(k) - log.timeS(0);
            if (poses.backing(k)) {
                backing++;
                assertTrue(t > 19.5 && t < 27, "backing at " + t);
                assertFalse(poses.working(k));
            }
            if (t > 27.5 && t < 30) {
                assertTrue(poses.unsettled(k), "settled at once after backing");
            }
            assertEquals(0, poses.headingRad(k), 0.01, "a straight line north and back");
        }
        assertTrue(backing > 40, "6 m back took " + backing + " steps");
        assertEquals(2, track.passes().size());
    }

    private static double way(double t) {
        if (t < 20) {
            return 2 * t;
        }
        return t < 26 ? 40 - (t - 20) * 1.0 * 1.0 : 34 + 1.5 * (t - 26);
    }

    /** Centre of the circle through the antenna at three poses. */
    private static double[] centreOfCircle(Poses p, int a, int b, int c) {
        double ax = p.antennaEastM(a);
        double ay = p.antennaNorthM(a);
        double bx = p.antennaEastM(b) - ax;
        double by = p.antennaNorthM(b) - ay;
        double cx = p.antennaEastM(c) - ax;
        double cy = p.antennaNorthM(c) - ay;
        double d = 2 * (bx * cy - by * cx);
        double b2 = bx * bx + by * by;
        double c2 = cx * cx + cy * cy;
        return new double[] {ax + (cy * b2 - by * c2) / d, ay + (bx * c2 - cx * b2) / d};
    }
}
