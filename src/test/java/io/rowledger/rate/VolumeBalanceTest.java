package io.rowledger.rate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.geo.LocalPlane;
import io.rowledger.log.LogColumns;
import io.rowledger.log.LogTable;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.track.TestLogs;
import io.rowledger.track.Track;
import io.rowledger.track.TrackBuilder;
import io.rowledger.track.TrackOptions;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Every metered liter is in one part of the balance. */
class VolumeBalanceTest {
    private static final int ROWS = 3;

    /** Records of a machine that works, lifts, turns, stands, creeps and backs at random, and a log with gaps and shifts. */
    private static final class RandomLog {
        private final Random random;
        private final List<double[]> records = new ArrayList<>();
        private double timeS;
        private double eastM;
        private double northM;
        private double headingRad;

        RandomLog(long seed) {
            random = new Random(seed);
            int legs = 20 + random.nextInt(20);
            for (int leg = 0; leg < legs; leg++) {
                leg();
            }
        }

        private void leg() {
            double[] speeds = {2, 2, 1, 0.05, 0, -0.5, 3};
            double speedMps = speeds[random.nextInt(speeds.length)];
            double turnRadPerS = random.nextInt(3) == 0 ? 0.3 * random.nextGaussian() : 0;
            boolean down = random.nextInt(4) > 0;
            double flow = random.nextInt(5) == 0 ? 0 : 0.05 * random.nextDouble();
            double intervalS = random.nextInt(6) == 0 ? 3 : 0.5;
            int n = 2 + random.nextInt(40);
            for (int i = 0; i < n; i++) {
                double dt = random.nextInt(60) == 0 ? 2 + 100 * random.nextDouble() : intervalS;
                timeS += dt;
                headingRad += turnRadPerS * Math.min(dt, 2);
                eastM += speedMps * Math.min(dt, 5) * Math.sin(headingRad);
                northM += speedMps * Math.min(dt, 5) * Math.cos(headingRad);
                double shiftM = random.nextInt(200) == 0 ? 3 : 0;
                eastM += shiftM;
                records.add(new double[] {
                    timeS,
                    eastM + 0.01 * random.nextGaussian(),
                    northM + 0.01 * random.nextGaussian(),
                    down ? 1 : 0,
                    flow * (0.9 + 0.2 * random.nextDouble()),
                    flow,
                    flow / 2
                });
            }
        }

        LogTable table() {
            int n = records.size();
            LocalPlane plane = new LocalPlane(42, -93);
            LogColumns c = new LogColumns();
            c.products = List.of("uan");
            c.timeS = new double[n];
            c.latDeg = new double[n];
            c.lonDeg = new double[n];
            c.breakBefore = new boolean[n];
            c.breakBefore[0] = true;
            c.fix = new byte[n];
            c.down = new byte[n];
            c.flowLPerS = new double[1][ROWS][n];
            c.targetLPerM2 = new double[1][0];
            c.totalLPerS = new double[1][0];
            double[] out = new double[2];
            for (int i = 0; i < n; i++) {
                double[] one = records.get(i);
                plane.inverse(one[1], one[2], out);
                c.timeS[i] = 1_750_000_000 + one[0];
                c.latDeg[i] = out[0];
                c.lonDeg[i] = out[1];
                c.fix[i] = 4;
                c.down[i] = (byte) one[3];
                for (int r = 0; r < ROWS; r++) {
                    c.flowLPerS[0][r][i] = one[4 + r];
                }
            }
            return new LogTable(c, List.of());
        }
    }

    /** Flow integrated over the log by the trapezoidal rule, L, without silences. */
    private static double trapezoidL(LogTable log) {
        double sum = 0;
        for (int i = 1; i < log.records(); i++) {
            double dt = log.timeS(i) - log.timeS(i - 1);
            for (int r = 0; r < ROWS && dt <= VolumeBalance.MAX_GAP_S; r++) {
                sum += (log.flowLPerS(0, r, i - 1) + log.flowLPerS(0, r, i)) / 2 * dt;
            }
        }
        return sum;
    }

    @Test
    void the_parts_add_up_to_flow_times_time_on_random_logs() {
        VolumeBalance seen = new VolumeBalance(0, 0, 0, 0, 0, 0);
        for (long seed = 1; seed <= 60; seed++) {
            LogTable log = new RandomLog(seed).table();
            Rig rig = TestLogs.rig(1, 1, seed % 2 == 0 ? 4 : Double.NaN, 5, ROWS);
            Track track = TrackBuilder.build(log, rig, TrackOptions.defaults());
            Strips strips = new Strips(track.poses(), rig.bands());
            Delivery delivery = DeliveryBuilder.build(log, rig, strips);
            VolumeBalance balance = VolumeBalance.of(log, track, delivery, 0);
            double expectedL = trapezoidL(log);
            assertEquals(expectedL, balance.totalL(), 1e-6 * expectedL, "seed " + seed);
            assertEquals(RatesBuilder.build(track, strips, delivery).volumeL(0), balance.workingL(), 1e-6 * expectedL);
            seen = new VolumeBalance(
                    seen.workingL() + balance.workingL(),
                    seen.liftedL() + balance.liftedL(),
                    seen.standingL() + balance.standingL(),
                    seen.creepingL() + balance.creepingL(),
                    seen.backingL() + balance.backingL(),
                    seen.gapL() + balance.gapL());
        }
        assertTrue(
                seen.workingL() > 0
                        && seen.liftedL() > 0
                        && seen.standingL() > 0
                        && seen.creepingL() > 0
                        && seen.backingL() > 0
                        && seen.gapL() > 0,
                "every part occurs: " + seen);
    }

    /** One record alone between two gaps has no step: its liter are in the gaps. 0.03 L/s for 2 × 10 s are 0.6 L. */
    @Test
    void a_record_between_two_gaps_is_in_the_gaps() {
        LogColumns c = new LogColumns();
        c.products = List.of("uan");
        c.timeS = new double[] {0, 0.5, 1, 11, 21, 21.5, 22};
        int n = c.timeS.length;
        c.latDeg = new double[n];
        c.lonDeg = new double[n];
        LocalPlane plane = new LocalPlane(42, -93);
        double[] out = new double[2];
        for (int i = 0; i < n; i++) {
            plane.inverse(0, 2 * c.timeS[i], out);
            c.latDeg[i] = out[0];
            c.lonDeg[i] = out[1];
            c.timeS[i] += 1_750_000_000;
        }
        c.breakBefore = new boolean[n];
        c.fix = new byte[] {4, 4, 4, 4, 4, 4, 4};
        c.down = new byte[] {1, 1, 1, 1, 1, 1, 1};
        c.flowLPerS = new double[][][] {{{0.03, 0.03, 0.03, 0.03, 0.03, 0.03, 0.03}}};
        c.targetLPerM2 = new double[1][0];
        c.totalLPerS = new double[1][0];
        LogTable log = new LogTable(c, List.of());
        Rig rig = TestLogs.rig(1, 1, Double.NaN, 5, 1);
        Track track = TrackBuilder.build(log, rig, TrackOptions.defaults());
        Delivery delivery = DeliveryBuilder.build(log, rig, new Strips(track.poses(), rig.bands()));
        VolumeBalance balance = VolumeBalance.of(log, track, delivery, 0);
        assertEquals(0.6, balance.gapL(), 1e-9);
        assertEquals(0.66, balance.totalL(), 1e-9);
    }
}
