package io.rowledger.diagnose.setup;

import io.rowledger.log.LogTable;
import io.rowledger.rig.Rig;
import io.rowledger.stats.RobustStatistics;
import io.rowledger.text.Message;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Distance from the rear axle forward to the antenna, from turns with a logged yaw rate.
 *
 * <p>The rear axle moves where the tractor points; an antenna a ahead of it and r right of the center deviates by
 * φ − ψ = atan(a·ω / (v − r·ω)), with the axle's speed v and the turn rate ω, clockwise. φ is the course of the antenna's path,
 * ψ the logged turn rate added up. In each turn a is fitted beside a start angle, a drift and a scale of the gyro.
 */
final class AntennaAhead {
    static final String KEY = "rig.antenna.ahead_of_axle";

    /** Turn rate from which on the tractor is in a turn, rad/s. */
    private static final double MIN_TURN_RADPS = 0.08;

    /** Straight time before and after a turn that is fitted with it, s. */
    private static final double MARGIN_S = 4;

    /** Longest turn, s. */
    private static final double MAX_TURN_S = 90;

    /** Smallest speed, m/s: slower, the course of the path is noise. */
    private static final double MIN_SPEED_MPS = 0.7;

    /** Longest interval between records, s: coarser logs cut turns short. */
    private static final double MAX_INTERVAL_S = 0.55;

    private static final int MIN_TURNS = 4;

    private static final int MIN_SAMPLES = 12;

    /** Error from a lag between position and turn rate of some hundredths of a second at 2 m/s, 1 sigma, m. */
    private static final double TIMING_SIGMA_M = 0.06;

    /** Smallest difference that counts, m. */
    private static final double MIN_M = 0.3;

    private final LogTable log;
    private final Rig rig;
    private final Poses poses;
    private double[] timeS = new double[0];
    private double[] courseRad = new double[0];
    private double[] speedMps = new double[0];
    private double[] turnRadPerS = new double[0];
    private boolean[] whole = new boolean[0];
    private int n;

    private AntennaAhead(LogTable log, Rig rig, Track track) {
        this.log = log;
        this.rig = rig;
        this.poses = track.poses();
    }

    static SetupMeasurement of(LogTable log, Rig rig, Track track) {
        double givenM = rig.antennaAheadM();
        if (log.records() == 0 || Double.isNaN(log.yawRateRadPerS(log.records() / 2))) {
            return SetupMeasurement.undetermined(
                    SetupParameter.ANTENNA_AHEAD, -1, KEY, givenM, Message.of("findings.setup.antenna.unlogged"));
        }
        double intervalS = track.quality().medianIntervalS();
        double[] turns = intervalS > MAX_INTERVAL_S ? new double[0] : new AntennaAhead(log, rig, track).turns();
        if (turns.length < MIN_TURNS) {
            return SetupMeasurement.undetermined(
                    SetupParameter.ANTENNA_AHEAD,
                    -1,
                    KEY,
                    givenM,
                    Message.of("findings.setup.antenna.few", turns.length, MIN_TURNS));
        }
        double value = RobustStatistics.median(turns);
        // The median of n normal values has a standard error of 1.2533 sigmas over the root of n.
        double error =
                RobustStatistics.MEAN_DEVIATION_TO_SIGMA * RobustStatistics.sigma(turns) / Math.sqrt(turns.length);
        return SetupMeasurement.of(
                SetupParameter.ANTENNA_AHEAD,
                -1,
                KEY,
                givenM,
                new Estimate(value, Math.hypot(error, TIMING_SIGMA_M), MIN_M),
                Message.of("findings.setup.antenna.basis", turns.length),
                Message.of("findings.setup.antenna.alternative"));
    }

    /** Returns the distance that each turn shows, m. */
    private double[] turns() {
        samples();
        List<Double> found = new ArrayList<>();
        int i = 0;
        while (i < n) {
            if (Math.abs(turnRadPerS[i]) < MIN_TURN_RADPS) {
                i++;
                continue;
            }
            int end = i;
            int last = i;
            while (end < n && timeS[end] - timeS[last] < 2 * MARGIN_S) {
                last = Math.abs(turnRadPerS[end]) >= MIN_TURN_RADPS ? end : last;
                end++;
            }
            int from = i;
            while (from > 0 && timeS[i] - timeS[from] < MARGIN_S) {
                from--;
            }
            int to = last;
            while (to + 1 < n && timeS[to] - timeS[last] < MARGIN_S) {
                to++;
            }
            double aheadM = usable(from, to) ? fit(from, to) : Double.NaN;
            if (!Double.isNaN(aheadM)) {
                found.add(aheadM);
            }
            i = Math.max(to, i) + 1;
        }
        return found.stream().mapToDouble(x -> x).toArray();
    }

    /** One sample per record: course, speed and turn rate in the middle of its steps. */
    private void samples() {
        int size = log.records();
        timeS = new double[size];
        courseRad = new double[size];
        speedMps = new double[size];
        turnRadPerS = new double[size];
        whole = new boolean[size];
        int k = 0;
        while (k < poses.steps()) {
            int record = poses.record(k);
            int end = k + 1;
            while (end < poses.steps() && poses.record(end) == record) {
                end++;
            }
            if (record >= 0) {
                double de = poses.antennaEastM(end) - poses.antennaEastM(k);
                double dn = poses.antennaNorthM(end) - poses.antennaNorthM(k);
                timeS[n] = (poses.timeS(k) + poses.timeS(end)) / 2;
                courseRad[n] = Math.atan2(de, dn);
                speedMps[n] = Math.hypot(de, dn) / (poses.timeS(end) - poses.timeS(k));
                turnRadPerS[n] = log.yawRateRadPerS(record);
                whole[n] = !log.breakBefore(record) && !poses.backing(k) && (k == 0 || poses.record(k - 1) >= 0);
                n++;
            }
            k = end;
        }
    }

    private boolean usable(int from, int to) {
        if (to - from < MIN_SAMPLES || timeS[to] - timeS[from] > MAX_TURN_S) {
            return false;
        }
        for (int i = from; i <= to; i++) {
            if (!whole[i] || speedMps[i] < MIN_SPEED_MPS || Double.isNaN(turnRadPerS[i])) {
                return false;
            }
        }
        return true;
    }

    /** Fits course − heading in one turn: start angle, drift, gyro scale and the distance, by Gauss-Newton steps. */
    private double fit(int from, int to) {
        double aheadM = rig.antennaAheadM();
        for (int round = 0; round < 4; round++) {
            double[][] normal = new double[4][5];
            double turned = 0;
            double unwrapped = courseRad[from];
            for (int i = from; i <= to; i++) {
                if (i > from) {
                    turned += (turnRadPerS[i] + turnRadPerS[i - 1]) / 2 * (timeS[i] - timeS[i - 1]);
                    unwrapped += Math.IEEEremainder(courseRad[i] - courseRad[i - 1], 2 * Math.PI);
                }
                double w = turnRadPerS[i];
                double along = Math.sqrt(Math.max(0.01, speedMps[i] * speedMps[i] - aheadM * aheadM * w * w));
                double askew = Math.atan2(aheadM * w, along);
                double slope = w * along / (along * along + aheadM * aheadM * w * w);
                add(normal, new double[] {1, timeS[i] - timeS[from], turned, slope}, unwrapped - turned - askew);
            }
            double step = solveLast(normal);
            aheadM += Math.max(-2, Math.min(2, step));
        }
        return Math.abs(aheadM) < 10 ? aheadM : Double.NaN;
    }

    private static void add(double[][] normal, double[] x, double y) {
        for (int a = 0; a < x.length; a++) {
            for (int b = 0; b < x.length; b++) {
                normal[a][b] += x[a] * x[b];
            }
            normal[a][x.length] += x[a] * y;
        }
    }

    /** Returns the last unknown of normal equations, by elimination; NaN if they are singular. */
    private static double solveLast(double[][] m) {
        int size = m.length;
        for (int c = 0; c < size; c++) {
            if (!(m[c][c] > 1e-9)) {
                return Double.NaN;
            }
            for (int r = c + 1; r < size; r++) {
                double f = m[r][c] / m[c][c];
                double[] pivot = m[c];
                double[] row = m[r];
                Arrays.setAll(row, j -> row[j] - f * pivot[j]);
            }
        }
        return m[size - 1][size] / m[size - 1][size - 1];
    }
}
