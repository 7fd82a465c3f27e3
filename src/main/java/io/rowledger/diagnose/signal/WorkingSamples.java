package io.rowledger.diagnose.signal;

import io.rowledger.stats.RobustStatistics;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import java.util.Arrays;

/**
 * The working records of a job as columns: one entry j a record in which the bar worked, in time order. Motion of the
 * bar comes from its two outermost bands: a rigid bar's rows all lie between them.
 */
public final class WorkingSamples {
    /** Curvature is the mean over this long on either side of a record, s: less than a corner takes, more than a fix. */
    private static final double HALF_WINDOW_S = 0.6;

    /** The same where fixes scatter by more than {@link #COARSE_M}: a coarse track tells turns only slowly, s. */
    private static final double COARSE_HALF_WINDOW_S = 2.0;

    private static final double COARSE_M = 0.025;

    /** Rows' speeds that change by this share of the bar's within {@link #SWING_S} leave flows behind. */
    private static final double SWING = 0.06;

    private static final double SWING_S = 2.5;
    private static final double NOISE_SIGMAS = 5;

    /** Below this speed the bar stands, m/s. */
    private static final double STANDING_MPS = 0.3;

    /** Distance in which a towed bar swings back behind the hitch after position noise turned it, m: three bar lengths. */
    private static final double RESTART_M = 15;

    /** Below this speed position noise passes for a turn; no curvature is read from it, m/s. */
    private static final double MIN_TURNING_MPS = 0.5;

    public final int n;
    /** First step of the record, and one past its last. */
    public final int[] step;

    final int[] endStep;
    public final int[] pass;
    public final double[] timeS;
    public final double[] durationS;
    /** Forward speed at the bar's center, m/s. */
    public final float[] speedMps;
    /** Curvature of the bar's way, 1/m, positive clockwise: a row at y runs at speed · (1 − κ·y). */
    public final float[] curvaturePerM;
    /** True while the bar swings into or out of a turn: flows lag, and outside rows show it most. */
    final boolean[] swinging;
    /** True within {@link #RESTART_M} of driving after the bar stood: position noise has turned the bar's heading. */
    final boolean[] restarting;
    /** First entry of pass q (from 0), and of the one after the last: length passes + 1. */
    public final int[] passFrom;
    /** Curvature that is only noise, 1/m (1 sigma). */
    final double curvatureNoisePerM;

    /** True where fixes scatter so much that speeds from positions are noisy. */
    public final boolean coarse;

    public final double[] bandM;
    public final double[] atM;
    public final double halfWidthM;
    /** Usual time between working records, s. */
    public final double intervalS;

    private WorkingSamples(Columns c, Strips strips, int passes, boolean coarse, double smearS) {
        this.coarse = coarse;
        n = c.n;
        step = Arrays.copyOf(c.step, n);
        endStep = Arrays.copyOf(c.endStep, n);
        pass = Arrays.copyOf(c.pass, n);
        timeS = Arrays.copyOf(c.timeS, n);
        durationS = Arrays.copyOf(c.durationS, n);
        passFrom = new int[passes + 1];
        Arrays.fill(passFrom, n);
        for (int j = n - 1; j >= 0; j--) {
            passFrom[pass[j] - 1] = j;
        }
        for (int q = passes - 1; q >= 0; q--) {
            passFrom[q] = Math.min(passFrom[q], passFrom[q + 1]);
        }
        speedMps = new float[n];
        curvaturePerM = new float[n];
        intervalS = n == 0 ? 1 : RobustStatistics.median(durationS.clone(), n);
        smooth(c, coarse ? COARSE_HALF_WINDOW_S : HALF_WINDOW_S, smearS);
        curvatureNoisePerM = curvatureNoise();
        int rows = strips.rows();
        bandM = new double[rows];
        atM = new double[rows];
        for (int r = 0; r < rows; r++) {
            bandM[r] = strips.rightM(r) - strips.leftM(r);
            atM[r] = (strips.rightM(r) + strips.leftM(r)) / 2;
        }
        swinging = new boolean[n];
        halfWidthM = Math.max(Math.abs(strips.leftM(0)), Math.abs(strips.rightM(rows - 1)));
        restarting = new boolean[n];
        markSwinging();
        markRestarting();
    }

    /** Working records of a log that is not averaged. */
    public static WorkingSamples of(Track track, Strips strips) {
        return of(track, strips, 0);
    }

    /**
     * Working records of a log.
     *
     * @param smearS time over which flows are averaged or held, s: curvature is averaged over the same time, so that both
     *     show a turn alike
     */
    public static WorkingSamples of(Track track, Strips strips, double smearS) {
        double worst = 0;
        for (double noise : track.quality().noiseM()) {
            worst = Double.isNaN(noise) ? worst : Math.max(worst, noise);
        }
        Columns columns = new Columns(track.poses(), strips);
        return new WorkingSamples(columns, strips, track.passes().size(), worst > COARSE_M, smearS);
    }

    public int rows() {
        return bandM.length;
    }

    public int passes() {
        return passFrom.length - 1;
    }

    /** The entry at or after a time; n after the last. */
    public int entryAt(double whenS) {
        int found = Arrays.binarySearch(timeS, whenS);
        return found >= 0 ? found : -found - 1;
    }

    /** Median speed while working, m/s. */
    public double usualSpeedMps() {
        double[] speed = new double[n];
        for (int j = 0; j < n; j++) {
            speed[j] = speedMps[j];
        }
        return n == 0 ? 0 : RobustStatistics.median(speed, n);
    }

    /** Running means of speed and turn rate, never across the end of a pass. */
    private void smooth(Columns c, double halfWindowS, double smearS) {
        for (int q = 0; q < passFrom.length - 1; q++) {
            int low = passFrom[q];
            int high = passFrom[q];
            double way = 0;
            double turn = 0;
            for (int j = passFrom[q]; j < passFrom[q + 1]; j++) {
                while (high < passFrom[q + 1] && timeS[high] <= timeS[j] + halfWindowS) {
                    way += c.distanceM[high];
                    turn += c.turnRad[high];
                    high++;
                }
                while (timeS[low] < timeS[j] - halfWindowS - smearS) {
                    way -= c.distanceM[low];
                    turn -= c.turnRad[low];
                    low++;
                }
                speedMps[j] = (float) (c.distanceM[j] / durationS[j]);
                double seconds = timeS[high - 1] - timeS[low] + intervalS;
                curvaturePerM[j] = way > MIN_TURNING_MPS * seconds ? (float) (turn / way) : 0;
            }
        }
    }

    private void markSwinging() {
        double most = Math.max(SWING, NOISE_SIGMAS * curvatureNoisePerM * halfWidthM);
        int back = (int) Math.max(1, Math.round(SWING_S / intervalS));
        for (int j = 0; j < n; j++) {
            int before = Math.max(passFrom[pass[j] - 1], j - back);
            swinging[j] = Math.abs(curvaturePerM[j] - curvaturePerM[before]) * halfWidthM > most;
        }
    }

    private void markRestarting() {
        double driven = Double.POSITIVE_INFINITY;
        for (int j = 0; j < n; j++) {
            boolean begins = j == passFrom[pass[j] - 1];
            driven = speedMps[j] < STANDING_MPS ? 0 : driven + speedMps[j] * durationS[j];
            driven = begins && speedMps[j] < MIN_TURNING_MPS ? 0 : driven;
            restarting[j] = driven < RESTART_M;
        }
    }

    private double curvatureNoise() {
        double[] change = new double[n];
        int lag = (int) Math.max(1, Math.round(2 * HALF_WINDOW_S / intervalS));
        int count = 0;
        for (int j = lag; j < n; j++) {
            if (pass[j] == pass[j - lag]) {
                change[count++] = Math.abs(curvaturePerM[j] - curvaturePerM[j - lag]);
            }
        }
        return count == 0 ? 0 : RobustStatistics.MAD_TO_SIGMA * RobustStatistics.median(change, count) / Math.sqrt(2);
    }

    /** The columns while they grow. */
    private static final class Columns {
        private final int[] step;
        private final int[] endStep;
        private final int[] pass;
        private final double[] timeS;
        private final double[] durationS;
        private final double[] distanceM;
        private final double[] turnRad;
        private int n;

        Columns(Poses poses, Strips strips) {
            int most = countRecords(poses);
            step = new int[most];
            endStep = new int[most];
            pass = new int[most];
            timeS = new double[most];
            durationS = new double[most];
            distanceM = new double[most];
            turnRad = new double[most];
            int last = strips.rows() - 1;
            double leftAt = (strips.leftM(0) + strips.rightM(0)) / 2;
            double rightAt = (strips.leftM(last) + strips.rightM(last)) / 2;
            double leftBand = strips.rightM(0) - strips.leftM(0);
            double rightBand = strips.rightM(last) - strips.leftM(last);
            for (int k = 0; k < poses.steps(); k++) {
                if (!poses.working(k)) {
                    continue;
                }
                if (n == 0 || poses.record(k) != poses.record(k - 1) || endStep[n - 1] != k) {
                    step[n] = k;
                    pass[n] = poses.pass(k);
                    timeS[n] = poses.timeS(k);
                    n++;
                }
                int j = n - 1;
                endStep[j] = k + 1;
                durationS[j] += poses.durationS(k);
                timeS[j] = (poses.timeS(step[j]) + poses.timeS(k + 1)) / 2;
                double left = strips.signedAreaM2(k, 0) / leftBand;
                double right = strips.signedAreaM2(k, last) / rightBand;
                double turn = last == 0 ? 0 : (left - right) / (rightAt - leftAt);
                turnRad[j] += turn;
                distanceM[j] += left + turn * leftAt;
            }
        }

        private static int countRecords(Poses poses) {
            int count = 0;
            for (int k = 0; k < poses.steps(); k++) {
                count += poses.working(k) && (k == 0 || poses.record(k) != poses.record(k - 1) || !poses.working(k - 1))
                        ? 1
                        : 0;
            }
            return count;
        }
    }
}
