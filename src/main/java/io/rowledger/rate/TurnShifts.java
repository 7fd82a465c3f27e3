package io.rowledger.rate;

import io.rowledger.log.Metering;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Finds for every product what turn compensation would have changed. */
public final class TurnShifts {
    /**
     * Smallest relative deviation of the outside rows' speeds from their mean in a turn (1): less is within the noise of the
     * track's heading and the meters' accuracy.
     */
    static final double MIN_TURN = 0.03;

    /** Largest such deviation: in tighter corners the flow's lag hides what the machine did. */
    static final double MAX_TURN = 0.6;

    /** Shortest time in turns that an estimate needs, s. */
    static final double MIN_TURNING_S = 20;

    private static final int MIN_ROWS = 2;

    /** At most about this many straight steps are sampled for the rows' levels: their mean is then far better than a meter. */
    private static final int STRAIGHT_STEPS = 20_000;

    private final Strips strips;
    private final Poses poses;
    private final Delivery delivery;
    private final int p;
    private final double[] own;
    private final double[] even;
    private final double[] levels;
    private double volumeL;
    private double groundM2;

    private TurnShifts(Strips strips, Delivery delivery, int p) {
        this.strips = strips;
        this.poses = strips.poses();
        this.delivery = delivery;
        this.p = p;
        own = new double[strips.rows()];
        even = new double[strips.rows()];
        levels = new double[strips.rows()];
    }

    /** Per product in rig order. */
    public static List<TurnShift> of(Strips strips, Delivery delivery) {
        List<TurnShift> out = new ArrayList<>();
        for (int p = 0; p < delivery.products(); p++) {
            out.add(new TurnShifts(strips, delivery, p).shift());
        }
        return out;
    }

    /** A new one for every loop over the steps: it needs ascending steps. */
    private SteadyRuns steadyRuns() {
        return new SteadyRuns(poses, delivery, RatesBuilder.VALVE_S);
    }

    private TurnShift shift() {
        levels(steadyRuns());
        SteadyRuns steady = steadyRuns();
        double[] sums = new double[3];
        for (int k = 0; k < poses.steps(); k++) {
            if (poses.working(k)) {
                learn(k, steady, sums);
            }
        }
        boolean known = sums[2] >= MIN_TURNING_S && delivery.metering() == Metering.PER_ROW;
        double takenOut = known ? Math.max(0, Math.min(1, sums[0] / sums[1])) : Double.NaN;
        double[] change = new double[own.length];
        double[] totals = new double[3];
        for (int k = 0; known && k < poses.steps(); k++) {
            if (poses.working(k) && turn(strips, k) >= MIN_TURN && shares(k, null)) {
                move(1 - takenOut, change, totals);
            }
        }
        return new TurnShift(sums[2], takenOut, change, totals[0], totals[1], totals[2]);
    }

    /**
     * Returns the relative deviation of the outside rows' speeds from their mean in step k (1); infinite if the mean is not
     * forward.
     */
    static double turn(Strips strips, int k) {
        int last = strips.rows() - 1;
        double left = strips.signedAreaM2(k, 0) / (strips.rightM(0) - strips.leftM(0));
        double right = strips.signedAreaM2(k, last) / (strips.rightM(last) - strips.leftM(last));
        return left + right > 0 ? Math.abs(left - right) / (left + right) : Double.POSITIVE_INFINITY;
    }

    /**
     * The rows' shares of ground and of band in step k, 0 for rows that take no part; false where too few do.
     *
     * @param steady takes only rows away from their switching; null for all that deliver
     */
    private boolean shares(int k, @Nullable SteadyRuns steady) {
        int rows = 0;
        double bandM = 0;
        volumeL = 0;
        groundM2 = 0;
        for (int r = 0; r < own.length; r++) {
            boolean in =
                    delivery.known(p, r, k) && (steady == null ? delivery.delivering(r, k) : steady.contains(r, k));
            own[r] = in ? Math.max(0, strips.signedAreaM2(k, r)) : 0;
            even[r] = in ? strips.rightM(r) - strips.leftM(r) : 0;
            rows += in ? 1 : 0;
            groundM2 += own[r];
            bandM += even[r];
            volumeL += in ? delivery.flowLPerS(p, r, k) * poses.durationS(k) : 0;
        }
        if (rows < MIN_ROWS || !(groundM2 > 0) || !(volumeL > 0)) {
            return false;
        }
        for (int r = 0; r < own.length; r++) {
            own[r] /= groundM2;
            even[r] /= bandM;
        }
        return true;
    }

    /** Computes each row's typical share of the bar's liquid on straight ground, so that a row that always runs low is not taken for a turn. */
    private void levels(SteadyRuns steady) {
        double[] gave = new double[levels.length];
        double[] due = new double[levels.length];
        int stride = Math.max(1, poses.steps() / STRAIGHT_STEPS);
        for (int k = 0; k < poses.steps(); k += stride) {
            if (poses.working(k) && turn(strips, k) < MIN_TURN && shares(k, steady)) {
                for (int r = 0; r < levels.length; r++) {
                    if (even[r] > 0) {
                        gave[r] += delivery.flowLPerS(p, r, k) * poses.durationS(k);
                        due[r] += even[r] * volumeL;
                    }
                }
            }
        }
        Arrays.setAll(levels, r -> gave[r] > 0 && due[r] > 0 ? gave[r] / due[r] : 1);
    }

    /** Adds a step to the regression of the rows' shares of liquid on their shares of ground, both against even ones. */
    private void learn(int k, SteadyRuns steady, double[] sums) {
        double turning = turn(strips, k);
        if (turning < MIN_TURN || turning > MAX_TURN || !shares(k, steady)) {
            return;
        }
        double levelled = 0;
        for (int r = 0; r < own.length; r++) {
            levelled += even[r] > 0 ? delivery.flowLPerS(p, r, k) / levels[r] : 0;
        }
        double seconds = poses.durationS(k);
        for (int r = 0; r < own.length; r++) {
            if (even[r] > 0) {
                double turn = own[r] / even[r] - 1;
                double gave = delivery.flowLPerS(p, r, k) / levels[r] / levelled / even[r] - 1;
                sums[0] += seconds * even[r] * turn * gave;
                sums[1] += seconds * even[r] * turn * turn;
            }
        }
        sums[2] += seconds;
    }

    private void move(double left, double[] change, double[] totals) {
        for (int r = 0; r < own.length; r++) {
            if (even[r] > 0) {
                double liters = volumeL * left * (own[r] - even[r]);
                change[r] += liters;
                totals[0] += Math.abs(liters) / 2;
                double error = own[r] > 0 ? left * Math.abs(even[r] / own[r] - 1) : 0;
                totals[1] += error > DeviationLimits.WATCH ? own[r] * groundM2 : 0;
                totals[2] += error > DeviationLimits.ACT ? own[r] * groundM2 : 0;
            }
        }
    }
}
