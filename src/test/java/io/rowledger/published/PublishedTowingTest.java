package io.rowledger.published;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.geo.Heading;
import io.rowledger.log.LogTable;
import io.rowledger.rig.Rig;
import io.rowledger.track.DragLaw;
import io.rowledger.track.Poses;
import io.rowledger.track.TestLogs;
import io.rowledger.track.Track;
import io.rowledger.track.TrackBuilder;
import io.rowledger.track.TrackOptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What is drawn follows the classical curves of trailing vehicles: the tractrix on a straight pull, off-tracking on a
 * steady turn, the trailer equation on any way.
 *
 * <p>Sources: tractrix x = L(t − tanh t), y = L sech t, MacTutor "Tractrix" and MathWorld (seen). One trailer
 * θ' = (v/L)·sin(φ − θ), S. M. LaValle, Planning Algorithms, 2006, eq. 13.19 (seen). Steady turn R² = R_hitch² − L²,
 * reviewed by M. W. Sayers, Transportation Research Record 1052, 1986, 53-62 (formula from memory, title seen); units
 * in a row R² = R₀² − ΣL² + a² for a hitch a behind its axle (from memory, equivalent form seen). No printed numerical
 * example was found; the figures are derived from the formulas in double precision.
 */
class PublishedTowingTest {
    /** The drop line must follow its closed form this closely, m. */
    private static final double MILLIMETRE = 0.001;

    /** Poses left out at the end, 30 s: there the two-sided smoother has one side only and errs by millimeters. */
    private static final int ENDS = 300;

    @ParameterizedTest
    @CsvSource({
        // t, x, y of the tractrix with L = 1: derived
        "0.5, 0.037883, 0.886819",
        "1,   0.238406, 0.648054",
        "2,   1.035972, 0.265802",
        "3,   2.004945, 0.099328"
    })
    void a_drawn_point_runs_on_the_tractrix(double t, double x, double y) {
        // The hitch goes east from the origin, the point starts 1 m north of it and so heads south.
        double heading = DragLaw.after(Math.PI, Math.PI / 2, t, 1);
        assertEquals(x, t - Math.sin(heading), 5.1e-7);
        assertEquals(y, -Math.cos(heading), 5.1e-7);
    }

    @ParameterizedTest
    @CsvSource({
        // start deg, travel m, angle deg, offset m, drawbar 5 m: derived
        "90, 2.5, 62.476192, 4.434094",
        "90, 5,   40.395063, 3.240271",
        "90, 10,  15.414627, 1.329011",
        "90, 15,   5.700471, 0.496640",
        "30, 5,   11.259260, 0.976244",
        "30, 10,   4.153611, 0.362154"
    })
    void on_a_straight_pull_angle_and_offset_fade(double startDeg, double travel, double deg, double offset) {
        double heading = DragLaw.after(Math.toRadians(startDeg), 0, travel, 5);
        assertEquals(deg, Math.toDegrees(heading), 5.1e-7);
        assertEquals(offset, 5 * Math.sin(heading), 5.1e-7);
    }

    @ParameterizedTest
    @CsvSource({
        // hitch travel m, way of the axle m: L ln cosh(s/L) with L = 5, derived
        "2.5, 0.600573",
        "5,   2.168904",
        "10,  6.625014",
        "15,  11.546643"
    })
    void on_a_straight_pull_the_axle_goes_a_shorter_way(double travel, double way) {
        int pulls = 20_000;
        double heading = Math.PI / 2;
        double east = -5 * Math.sin(heading);
        double north = -5 * Math.cos(heading);
        double sum = 0;
        for (int i = 1; i <= pulls; i++) {
            heading = DragLaw.after(heading, 0, travel / pulls, 5);
            double e = -5 * Math.sin(heading);
            double n = travel * i / pulls - 5 * Math.cos(heading);
            sum += Math.hypot(e - east, n - north);
            east = e;
            north = n;
        }
        assertEquals(way, sum, 1e-6);
    }

    @Test
    void on_a_winding_way_the_polyline_law_is_the_trailer_equation() {
        // Oracle: the trailer equation by Runge and Kutta's fourth-order rule with the hitch winding as
        // φ(s) = 0.9 sin(s/6) + 0.02 s; the law goes along chords of 5 mm.
        double drawbar = 4.4;
        double oracle = 0.3;
        double ours = 0.3;
        double ds = 0.005;
        double largest = 0;
        for (int i = 0; i < 12_000; i++) {
            double s = i * ds;
            double k1 = turning(s, oracle, drawbar);
            double k2 = turning(s + ds / 2, oracle + ds / 2 * k1, drawbar);
            double k3 = turning(s + ds / 2, oracle + ds / 2 * k2, drawbar);
            double k4 = turning(s + ds, oracle + ds * k3, drawbar);
            oracle += ds / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
            ours = DragLaw.after(ours, course(s + ds / 2), ds, drawbar);
            largest = Math.max(largest, Math.abs(Heading.wrap(oracle - ours)));
        }
        assertEquals(0, largest, 1e-6, "largest difference, rad");
    }

    @ParameterizedTest
    @CsvSource({
        // hitch radius m, drawbar m, axle radius m, off-tracking m, hitch angle deg: derived; the last is 165 and 20 ft
        "20,     5,     19.364917, 0.635083, 14.477512",
        "10,     5,      8.660254, 1.339746, 30.000000",
        "15,     6,     13.747727, 1.252273, 23.578178",
        "12,     4,     11.313708, 0.686292, 19.471221",
        "50.292, 6.096, 49.921178, 0.370822,  6.962063"
    })
    void on_a_steady_circle_the_axle_runs_inside_the_hitch(
            double radius, double drawbar, double axle, double inside, double angleDeg) {
        Track track = circle(TestLogs.rig(0, 0, drawbar, drawbar, 2), radius);
        Poses poses = track.poses();
        double[] centre = centreOf(track);
        for (int i = poses.poses() / 2; i < poses.poses() - ENDS; i += 7) {
            double drop = Math.hypot(poses.dropEastM(i) - centre[0], poses.dropNorthM(i) - centre[1]);
            assertEquals(axle, drop, MILLIMETRE);
            assertEquals(inside, radius - drop, MILLIMETRE);
            double course = Heading.of(poses.hitchEastM(i) - centre[0], poses.hitchNorthM(i) - centre[1]) + Math.PI / 2;
            assertEquals(angleDeg, Math.abs(Math.toDegrees(Heading.wrap(poses.barHeadingRad(i) - course))), 0.01);
        }
    }

    @Test
    void off_tracking_of_165_ft_and_20_ft_is_printed_in_feet() {
        // Derived: 165 - sqrt(165² - 20²) = 1.216607 ft, the last row above; with units of 12 and 40 ft in a row
        // 165 - sqrt(165² - 12² - 40²) = 5.372308 ft (sum of squares). Here 12 ft are antenna to rear axle, 40 ft the
        // drawbar from a pin on the axle.
        double foot = 0.3048;
        Track track = circle(TestLogs.rig(12 * foot, 0, 40 * foot, 40 * foot, 2), 165 * foot);
        Poses poses = track.poses();
        double[] centre = centreOf(track);
        Track other = circle(TestLogs.rig(0, 0, 20 * foot, 20 * foot, 2), 165 * foot);
        Poses one = other.poses();
        double[] centreOne = centreOf(other);
        for (int i = poses.poses() / 2; i < poses.poses() - ENDS; i += 7) {
            assertEquals(5.372308, 165 - dropRadius(poses, centre, i, 0) / foot, MILLIMETRE / foot);
            assertEquals(1.216607, 165 - dropRadius(one, centreOne, i, 0) / foot, MILLIMETRE / foot);
        }
    }

    @Test
    void a_pin_behind_the_axle_swings_out_and_shortens_the_off_tracking() {
        // Derived from the sum of squares: antenna 1.6 m ahead of the axle, pin 0.9 m behind it, drawbar 4.4 m, antenna
        // on
        // 15 m: wheels on sqrt(15² - 1.6² + 0.9² - 4.4²) = 14.279006 m.
        Track track = circle(TestLogs.rig(1.6, 0.9, 4.4, 4.4, 2), 15);
        Poses poses = track.poses();
        double[] centre = centreOf(track);
        for (int i = poses.poses() / 2; i < poses.poses() - ENDS; i += 7) {
            assertEquals(14.279006, dropRadius(poses, centre, i, 0), MILLIMETRE);
        }
    }

    @ParameterizedTest
    @CsvSource({
        // d m behind the axle, y m outward, radius m: sqrt((R_a + y)² + d²) with R_a = 19.364917, derived
        "2,   0,     19.467922",
        "2,   3.048, 22.501974",
        "2,  -3.048, 16.439032",
        "1.5, 0,     19.422925"
    })
    void a_drop_point_behind_the_axle_runs_outside_the_axle_circle(double behind, double outward, double radius) {
        Track track = circle(TestLogs.rig(0, 0, 5, 5 + behind, 2), 20);
        Poses poses = track.poses();
        double[] centre = centreOf(track);
        for (int i = poses.poses() / 2; i < poses.poses() - ENDS; i += 7) {
            // The circle is driven clockwise, so the right side is the inner one.
            assertEquals(radius, dropRadius(poses, centre, i, -outward), MILLIMETRE);
        }
        if (outward == 0 && behind == 2) {
            // So the drop line sits 0.103006 m outside the wheels: derived.
            assertEquals(19.364917 + 0.103006, radius, 1e-6);
        }
    }

    private static double course(double s) {
        return 0.9 * Math.sin(s / 6) + 0.02 * s;
    }

    private static double turning(double s, double heading, double drawbar) {
        return Math.sin(course(s) - heading) / drawbar;
    }

    private static double dropRadius(Poses poses, double[] centre, int i, double rightM) {
        return Math.hypot(poses.eastM(i, rightM) - centre[0], poses.northM(i, rightM) - centre[1]);
    }

    /** The antenna clockwise on a circle at 2 m/s and 10 Hz, five minutes. */
    private static Track circle(Rig rig, double radius) {
        LogTable log = TestLogs.along(
                t -> new double[] {radius * Math.sin(2 * t / radius), radius * Math.cos(2 * t / radius)},
                3000,
                10,
                2,
                0.05);
        return TrackBuilder.build(log, rig, TrackOptions.defaults());
    }

    /** The circle's centre, which the log places at 42 N 93 W, on the track's own plane. */
    private static double[] centreOf(Track track) {
        double[] centre = new double[2];
        track.plane().forward(42, -93, centre);
        return centre;
    }
}
