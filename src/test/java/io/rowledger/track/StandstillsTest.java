package io.rowledger.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.geo.Heading;
import io.rowledger.geo.LocalPlane;
import io.rowledger.log.LogColumns;
import io.rowledger.log.LogTable;
import io.rowledger.rig.Rig;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Position noise of a machine that stands is neither heading nor motion. */
class StandstillsTest {
    private static final int STOPS = 7;
    private static final double SPEED_MPS = 2;
    /** Time of driving between two stops, of braking and of starting, and of standing, s. */
    private static final double DRIVE_S = 20;

    private static final double RAMP_S = 2;
    private static final double STAND_S = 20;
    private static final double CYCLE_S = DRIVE_S + STAND_S + 2 * RAMP_S;

    /** Distance driven straight north with a stop at the end of every cycle, m; v(t) is a trapezoid in each cycle. */
    private static double northM(double t) {
        double cycleM = SPEED_MPS * (DRIVE_S + RAMP_S);
        double u = t % CYCLE_S;
        double m;
        if (u < RAMP_S) {
            m = SPEED_MPS * u * u / (2 * RAMP_S);
        } else if (u < RAMP_S + DRIVE_S) {
            m = SPEED_MPS * (u - RAMP_S / 2);
        } else if (u < 2 * RAMP_S + DRIVE_S) {
            double left = 2 * RAMP_S + DRIVE_S - u;
            m = cycleM - SPEED_MPS * left * left / (2 * RAMP_S);
        } else {
            m = cycleM;
        }
        return Math.floor(t / CYCLE_S) * cycleM + m;
    }

    private static boolean stands(double t) {
        return t % CYCLE_S > 2 * RAMP_S + DRIVE_S;
    }

    private static LogTable log(double sigmaM, int fix, double hz, boolean loggedSpeed, long seed) {
        Random random = new Random(seed);
        int n = (int) (STOPS * CYCLE_S * hz);
        LogColumns c = new LogColumns();
        c.products = List.of("uan");
        c.timeS = new double[n];
        c.latDeg = new double[n];
        c.lonDeg = new double[n];
        c.breakBefore = new boolean[n];
        c.breakBefore[0] = true;
        c.fix = new byte[n];
        Arrays.fill(c.fix, (byte) fix);
        c.down = new byte[n];
        Arrays.fill(c.down, (byte) 1);
        c.speedMps = new double[loggedSpeed ? n : 0];
        c.flowLPerS = new double[1][12][n];
        c.targetLPerM2 = new double[1][0];
        c.totalLPerS = new double[1][0];
        LocalPlane plane = new LocalPlane(42, -93);
        double[] out = new double[2];
        for (int i = 0; i < n; i++) {
            double t = i / hz;
            c.timeS[i] = 1_750_000_000 + t;
            plane.inverse(sigmaM * random.nextGaussian(), northM(t) + sigmaM * random.nextGaussian(), out);
            c.latDeg[i] = out[0];
            c.lonDeg[i] = out[1];
            if (loggedSpeed) {
                c.speedMps[i] = stands(t) ? 0 : (northM(t + 0.01) - northM(t)) / 0.01;
            }
        }
        return new LogTable(c, List.of());
    }

    /**
     * A straight field with seven stops, by noise of a fix, its NMEA digit, records a second, whether speed is logged, and
     * the largest deviation from north that the noise of a fix leaves while driving, degrees.
     */
    @ParameterizedTest
    @CsvSource({"0.012, 4, 5, false, 1", "0.012, 4, 1, false, 2", "0.06, 5, 5, false, 4", "0.06, 5, 1, true, 4"})
    void seven_stops_on_a_straight_line_show_no_turn(
            double sigmaM, int fix, double hz, boolean loggedSpeed, double toleranceDeg) {
        for (double drawbarM : new double[] {Double.NaN, 4.4}) {
            Rig rig = TestLogs.rig(1.755, 1.0, drawbarM, 5.9, 12);
            LogTable log = log(sigmaM, fix, hz, loggedSpeed, 5);
            Poses poses = TrackBuilder.build(log, rig, TrackOptions.defaults()).poses();
            double start = log.timeS(0);
            for (int k = 0; k < poses.steps(); k++) {
                double t = poses.timeS(k) - start;
                if (t < CYCLE_S / 2) {
                    continue;
                }
                double off = Math.toDegrees(Heading.wrap(poses.headingRad(k)));
                assertEquals(0, off, toleranceDeg, "tractor's heading at " + t + " s");
                assertEquals(
                        0, Math.toDegrees(Heading.wrap(poses.barHeadingRad(k))), toleranceDeg, "bar at " + t + " s");
                assertFalse(poses.backing(k), "backing at " + t + " s");
                if (stands(t - 1 / hz) && stands(t) && stands(poses.timeS(k + 1) - start + 1 / hz)) {
                    assertFalse(poses.working(k), "working at " + t + " s");
                    assertEquals(poses.barHeadingRad(k), poses.barHeadingRad(k + 1), "turn at " + t + " s");
                }
            }
        }
    }

    /** Standing changes no distance: the path from before the first stop to after the last is that of the machine. */
    @Test
    void the_distance_driven_stays() {
        LogTable log = log(0.012, 4, 5, false, 8);
        Track track = TrackBuilder.build(log, TestLogs.rig(0, 1.0, Double.NaN, 0.8, 12), TrackOptions.defaults());
        Poses poses = track.poses();
        double drivenM = 0;
        for (int k = 0; k < poses.steps(); k++) {
            drivenM += Math.hypot(
                    poses.antennaEastM(k + 1) - poses.antennaEastM(k),
                    poses.antennaNorthM(k + 1) - poses.antennaNorthM(k));
        }
        assertEquals(STOPS * SPEED_MPS * (DRIVE_S + RAMP_S), drivenM, 0.02 * STOPS);
        assertEquals(STOPS, track.passes().size());
    }

    /** Creeping at 5 cm/s for two minutes is motion, not noise: 6 m. */
    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.09})
    void creeping_is_not_standing(double speedMps) {
        double s = 120;
        LogTable log = TestLogs.along(
                t -> new double[] {t < 20 ? 0 : 0.5 * Math.sin((t - 20) / 40), t < 20 ? 2 * t : 40 + speedMps * (t - 20)
                },
                (int) (5 * (s + 20)),
                5,
                1,
                0);
        Poses poses = TrackBuilder.build(log, TestLogs.rig(1, 1, Double.NaN, 0.8, 1), TrackOptions.defaults())
                .poses();
        int last = poses.poses() - 1;
        assertEquals(speedMps * s, poses.antennaNorthM(last) - poses.antennaNorthM(pose(poses, 20)), 0.1);
        assertTrue(Math.abs(poses.headingRad(last)) > 0.05, "the tractor turned while it crept");
    }

    private static int pose(Poses poses, double afterS) {
        int i = 0;
        while (poses.timeS(i) < poses.timeS(0) + afterS) {
            i++;
        }
        return i;
    }

    /** A logged speed that is stuck at zero does not stop a machine that the fixes show driving. */
    @Test
    void a_logged_speed_of_zero_does_not_hold_a_moving_machine() {
        LogTable moving = TestLogs.along(t -> new double[] {0, 2 * t}, 500, 5, 1, 0);
        LogColumns c = new LogColumns();
        c.products = List.of("uan");
        c.timeS = new double[500];
        c.latDeg = new double[500];
        c.lonDeg = new double[500];
        c.breakBefore = new boolean[500];
        c.breakBefore[0] = true;
        c.fix = new byte[500];
        c.down = new byte[500];
        c.speedMps = new double[500];
        c.flowLPerS = new double[1][1][500];
        c.targetLPerM2 = new double[1][0];
        c.totalLPerS = new double[1][0];
        for (int i = 0; i < 500; i++) {
            c.timeS[i] = moving.timeS(i);
            c.latDeg[i] = moving.latDeg(i);
            c.lonDeg[i] = moving.lonDeg(i);
            c.fix[i] = 4;
            c.down[i] = 1;
        }
        Track track = TrackBuilder.build(
                new LogTable(c, List.of()), TestLogs.rig(1, 1, Double.NaN, 0.8, 1), TrackOptions.defaults());
        assertEquals(1, track.passes().size());
        assertEquals(2 * 499 / 5.0, track.passes().get(0).lengthM(), 0.2);
    }
}
