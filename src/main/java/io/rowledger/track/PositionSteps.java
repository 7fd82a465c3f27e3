package io.rowledger.track;

import io.rowledger.log.LogTable;

/**
 * Finds steps no machine makes: the position leaves at once the way that the fixes before and after agree on, as when a
 * receiver loses its corrections under trees or takes up satellites again with an offset. To smooth across would bend the
 * path and swing the bar.
 *
 * <p>With v₀ the velocity over the two steps before and v₁ over the two after, the step between should be (v₀ + v₁)/2 · dt.
 * In a steady turn that is exact to dt³; a brake or a swerve of a m/s² leaves at most a·dt²/2. What is left over beyond
 * that, beyond 8 sigma of noise and beyond 0.25 m, is a shift.
 */
final class PositionSteps {
    /** Smaller shifts are smoothed over: a third of a row. */
    private static final double MIN_M = 0.25;
    /** In white noise the left-over has 2 sigma an axis (1 + 1 + 2·(1/4)² + ...), so this is never noise. */
    private static final double SIGMAS = 8;
    /** No field tractor brakes or swerves harder, m/s². */
    private static final double HARDEST_MPS2 = 4;
    /** Longer steps show nothing: in a second and a half a machine may do anything. */
    private static final double MAX_STEP_S = 1.2;

    /** A shift leaves half of itself over in the steps beside it, through their velocities; a stray fix all of it in two. */
    private static final double OF_THE_LARGEST = 0.75;

    private PositionSteps() {}

    /** True before each record at which the position shifted. */
    static boolean[] of(
            LogTable log, double[] timeS, double[] eastM, double[] northM, boolean[] segment, FixNoise noise) {
        int n = timeS.length;
        boolean[] shift = new boolean[n];
        double[] left = new double[n + 1];
        double[] limit = new double[n + 1];
        for (int i = 2; i + 1 < n; i++) {
            double dtS = timeS[i] - timeS[i - 1];
            double beforeS = timeS[i - 1] - timeS[i - 2];
            double afterS = timeS[i + 1] - timeS[i];
            double longestS = Math.max(dtS, Math.max(beforeS, afterS));
            if (longestS <= MAX_STEP_S && !segment[i - 1] && !segment[i] && !segment[i + 1]) {
                left[i] = Math.hypot(left(eastM, i, dtS, beforeS, afterS), left(northM, i, dtS, beforeS, afterS));
                double sigmaM = Math.max(noise.sigmaM(log.fix(i)), noise.sigmaM(log.fix(i - 1)));
                limit[i] = MIN_M + SIGMAS * sigmaM + HARDEST_MPS2 * longestS * longestS / 2;
            }
        }
        for (int i = 1; i < n; i++) {
            shift[i] = left[i] > limit[i] && left[i] >= OF_THE_LARGEST * Math.max(left[i - 1], left[i + 1]);
        }
        return shift;
    }

    private static double left(double[] x, int i, double dtS, double beforeS, double afterS) {
        double before = (x[i - 1] - x[i - 2]) / beforeS;
        double after = (x[i + 1] - x[i]) / afterS;
        return x[i] - x[i - 1] - (before + after) / 2 * dtS;
    }
}
