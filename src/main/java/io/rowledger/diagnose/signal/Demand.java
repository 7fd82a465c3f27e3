package io.rowledger.diagnose.signal;

import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.track.Poses;
import java.util.Arrays;

/**
 * What target and speed ask of a meter of bar, as a first-order controller with one of several time constants would follow
 * it: y' = (target·v − y)/τ, exact for steps. It runs on through turns, where the controller keeps following the speed.
 * Where fixes are coarse the logged speed is taken: a receiver measures speed better than coarse positions tell it.
 */
public final class Demand {
    /** Time constants, s. */
    private static final double[] TAU_S = {0.5, 1, 1.6, 2.2, 2.8, 3.5, 4.5, 6, 8, 11};

    /** Number of candidate time constants. */
    public static int taus() {
        return TAU_S.length;
    }

    /** A candidate time constant, s. */
    public static double tauS(int t) {
        return TAU_S[t];
    }

    /** Index of the candidate nearest to a time constant, s. */
    public static int nearest(double tauS) {
        int nearest = 0;
        for (int t = 1; t < TAU_S.length; t++) {
            nearest = Math.abs(TAU_S[t] - tauS) < Math.abs(TAU_S[nearest] - tauS) ? t : nearest;
        }
        return nearest;
    }

    /** The one a usual machine has: flow needs half a second to a second to follow. */
    public static final int PROMPT = 0;

    /** The slowest a usual machine has. */
    public static final int SLOWEST_PROMPT = 2;

    /** Steps whose lengths differ less share a filter. */
    private static final double SAME_DT = 0.001;

    /** [τ][entry], L/s a meter of band at the bar's center; 0 where not known. */
    public final float[][] demandPerM;

    /** The same run backwards in time: what only smooths fits both alike, what lags only the first. */
    final float[][] reversedDemandPerM;

    private final double smearS;

    /** Last time the target changed before an entry, s since the epoch. */
    public final double[] targetChangedS;

    Demand(FlowRatios s, LogTable log, Poses poses, Delivery delivery) {
        WorkingSamples work = s.work;
        demandPerM = new float[TAU_S.length][work.n];
        reversedDemandPerM = new float[TAU_S.length][work.n];
        targetChangedS = new double[work.n];
        int steps = poses.steps();
        double[] asked = new double[steps];
        int j = 0;
        double lastTarget = Double.NaN;
        double changed = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < steps; k++) {
            if (poses.record(k) < 0) {
                asked[k] = Double.NaN;
                continue;
            }
            double target = delivery.meanTargetLPerM2(s.product, 0, delivery.rows(), k);
            target = Double.isNaN(target) ? unknown(delivery, lastTarget) : target;
            changed = Math.abs(target - lastTarget) > 0.01 * target ? poses.timeS(k) : changed;
            lastTarget = target;
            boolean entry = j < work.n && k >= work.step[j];
            double logged = work.coarse ? log.speedMps(poses.record(k)) : Double.NaN;
            double rebuilt = entry ? work.speedMps[j] : speed(poses, k, poses.durationS(k));
            asked[k] = target * (Double.isNaN(logged) ? rebuilt : logged);
            if (entry && k == work.endStep[j] - 1) {
                targetChangedS[j++] = changed;
            }
        }
        smearS = s.limits.smearS();
        follow(work, poses, asked, 1, demandPerM);
        follow(work, poses, asked, -1, reversedDemandPerM);
    }

    private Demand(FlowRatios s, Poses poses) {
        WorkingSamples work = s.work;
        demandPerM = new float[TAU_S.length][work.n];
        reversedDemandPerM = new float[TAU_S.length][work.n];
        targetChangedS = new double[work.n];
        double[] demand = new double[poses.steps()];
        Arrays.fill(demand, Double.NaN);
        for (int j = 0; j < work.n; j++) {
            int q = work.pass[j] - 1;
            double sinceS = work.timeS[j] - work.timeS[work.passFrom[q]];
            double leftS = work.timeS[work.passFrom[q + 1] - 1] - work.timeS[j];
            // Valves open and close at the ends of a pass.
            boolean settled = Math.min(sinceS, leftS) > EvaluationMask.VALVE_S + s.limits.smearS();
            Arrays.fill(
                    demand, work.step[j], work.endStep[j], settled && s.peerFlux[j] > 0 ? s.peerFlux[j] : Double.NaN);
        }
        // The rows are averaged already.
        smearS = 0;
        follow(work, poses, demand, 1, demandPerM);
        follow(work, poses, demand, -1, reversedDemandPerM);
    }

    /** Returns the demand on a row as the other rows' flow shows it, for a log whose speed is too noisy to tell it. */
    static Demand ofPeers(FlowRatios s, Poses poses) {
        return new Demand(s, poses);
    }

    /** What stands in where nobody gave a target; off the map of a prescription the controller keeps its last one. */
    private static double unknown(Delivery delivery, double lastTarget) {
        return delivery.hasPrescription() && lastTarget > 0 ? lastTarget : 1;
    }

    /** Runs the controllers over the steps, forward or backward in time, and averages them as the log averages flows. */
    private void follow(WorkingSamples work, Poses poses, double[] asked, int direction, float[][] out) {
        double[] y = new double[TAU_S.length];
        double[] gain = new double[TAU_S.length];
        double lastDt = Double.NaN;
        boolean begun = false;
        TrailingMean mean = new TrailingMean(TAU_S.length, smearS);
        int j = direction > 0 ? 0 : work.n - 1;
        for (int k = direction > 0 ? 0 : asked.length - 1; k >= 0 && k < asked.length; k += direction) {
            boolean entry = j >= 0 && j < work.n && k == (direction > 0 ? work.endStep[j] - 1 : work.step[j]);
            if (Double.isNaN(asked[k])) {
                begun = false;
                mean.clear();
                j += entry ? direction : 0;
                continue;
            }
            double dt = poses.durationS(k);
            if (Math.abs(dt - lastDt) > SAME_DT * dt || Double.isNaN(lastDt)) {
                lastDt = dt;
                for (int t = 0; t < gain.length; t++) {
                    gain[t] = 1 - Math.exp(-dt / TAU_S[t]);
                }
            }
            for (int t = 0; t < y.length; t++) {
                y[t] = begun ? y[t] + (asked[k] - y[t]) * gain[t] : asked[k];
            }
            mean.add(y, dt);
            begun = true;
            if (entry) {
                for (int t = 0; t < y.length; t++) {
                    out[t][j] = (float) mean.of(t, y);
                }
                j += direction;
            }
        }
    }

    private static double speed(Poses poses, int k, double dt) {
        if (poses.backing(k) || dt <= 0) {
            return 0;
        }
        return Math.hypot(poses.dropEastM(k + 1) - poses.dropEastM(k), poses.dropNorthM(k + 1) - poses.dropNorthM(k))
                / dt;
    }
}
