package io.rowledger.track;

import io.rowledger.log.LogTable;

/**
 * Finds steps of the position that no machine can make: shifts by which a receiver's position changes when it loses or
 * regains its corrections. Smoothing across them would bend the path and swing the bar.
 *
 * <p>With v₀ the velocity over the step before and v₁ that over the step after, the step between is expected to be
 * (v₀ + v₁)/2 · dt. In a steady turn that is exact to dt³; an acceleration a leaves a residual of at most a·dt²/2. A
 * residual above the sum of that, 8 σ of noise and 0.25 m is a shift.
 */
final class PositionSteps {
    /** Shifts below this are smoothed over, m: a third of a row. */
    private static final double MIN_STEP_M = 0.25;
    /** Limit in σ of the noise; of white noise the residual has the standard deviation √5 σ = 2.24 σ per axis. */
    private static final double SIGMAS = 8;
    /** Largest acceleration of a field tractor, m/s². */
    private static final double MAX_ACCELERATION_MPS2 = 4;
    /** Longest step between records that is tested, s; over a longer one the velocities say too little. */
    private static final double MAX_STEP_S = 1.2;

    /** Smallest ratio to the residuals beside it: a shift leaves half its residual there, a single outlier all of it in two. */
    private static final double MIN_OF_NEIGHBORS = 0.75;

    private PositionSteps() {}

    /** Returns true for each record whose position is shifted against the one before. */
    static boolean[] of(
            LogTable log, double[] timeS, double[] eastM, double[] northM, boolean[] segment, FixNoise noise) {
        int n = timeS.length;
        boolean[] shift = new boolean[n];
        double[] residualM = new double[n + 1];
        double[] limit = new double[n + 1];
        for (int i = 2; i + 1 < n; i++) {
            double dtS = timeS[i] - timeS[i - 1];
            double beforeS = timeS[i - 1] - timeS[i - 2];
            double afterS = timeS[i + 1] - timeS[i];
            double maxS = Math.max(dtS, Math.max(beforeS, afterS));
            if (maxS <= MAX_STEP_S && !segment[i - 1] && !segment[i] && !segment[i + 1]) {
                residualM[i] = Math.hypot(
                        residualM(eastM, i, dtS, beforeS, afterS), residualM(northM, i, dtS, beforeS, afterS));
                double sigmaM = Math.max(noise.sigmaM(log.fix(i)), noise.sigmaM(log.fix(i - 1)));
                limit[i] = MIN_STEP_M + SIGMAS * sigmaM + MAX_ACCELERATION_MPS2 * maxS * maxS / 2;
            }
        }
        for (int i = 1; i < n; i++) {
            shift[i] = residualM[i] > limit[i]
                    && residualM[i] >= MIN_OF_NEIGHBORS * Math.max(residualM[i - 1], residualM[i + 1]);
        }
        return shift;
    }

    private static double residualM(double[] x, int i, double dtS, double beforeS, double afterS) {
        double before = (x[i - 1] - x[i - 2]) / beforeS;
        double after = (x[i + 1] - x[i]) / afterS;
        return x[i] - x[i - 1] - (before + after) / 2 * dtS;
    }
}
