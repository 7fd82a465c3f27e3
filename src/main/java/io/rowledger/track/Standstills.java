package io.rowledger.track;

import io.rowledger.log.LogTable;
import java.util.Arrays;

/**
 * Finds stretches in which the machine stands, so that position noise is not read as motion.
 *
 * <p>A stretch is a run of records that are slow by the smoothed path or by the logged speed. The machine stands in it if
 * the smoothed path stays within the reach of noise and drift around its first position: d ≤ {@value #MARGIN_M} m + 5 σ, or
 * d ≤ {@value #MAX_DRIFT_MPS} m/s · duration, with σ the position noise of a fix per axis (P(r &gt; 5 σ) = 4e-6 for a normal
 * distribution in two dimensions). So neither creeping nor a logged speed that is stuck at zero counts as standing.
 *
 * <p>Headings are also held beside a stretch, as long as the path is within {@value #MARGIN_M} m + 3 σ of the position at
 * its end: so short a displacement has no direction.
 */
final class Standstills {
    /** Shortest stretch, s; a change of direction while backing is shorter. */
    private static final double MIN_DURATION_S = 1;
    /** Distance beyond the noise of a fix, m: sway of the antenna and braking below the slowest speed. */
    private static final double MARGIN_M = 0.05;
    /** Noise of a fix in standard deviations. */
    private static final double SIGMAS = 5;
    /** The same for the displacement from which its direction counts. */
    private static final double DIRECTION_SIGMAS = 3;
    /** Drift of the positions of a receiver at rest, m/s; uncorrected fixes drift by a meter in a minute or two. */
    private static final double MAX_DRIFT_MPS = 0.02;

    private final LogTable log;
    private final SmoothPath path;
    private final boolean[] segment;
    private final FixNoise noise;
    private final double minSpeedMps;
    private final boolean[] standing;

    private Standstills(LogTable log, SmoothPath path, boolean[] segment, FixNoise noise, double minSpeedMps) {
        this.log = log;
        this.path = path;
        this.segment = segment;
        this.noise = noise;
        this.minSpeedMps = minSpeedMps;
        this.standing = new boolean[segment.length];
    }

    /**
     * Returns true for each record at which headings are held, and holds the path where the machine stands.
     *
     * @param segment true for each record after a break of the path; no stretch spans one
     * @param minSpeedMps speed below which a record is slow, m/s
     */
    static boolean[] hold(LogTable log, SmoothPath path, boolean[] segment, FixNoise noise, double minSpeedMps) {
        Standstills search = new Standstills(log, path, segment, noise, minSpeedMps);
        search.mark(true);
        search.mark(false);
        search.extend();
        search.hold();
        return search.headingHeld();
    }

    /** Marks the stretches; records count as slow by the logged speed too, or by the path alone. */
    private void mark(boolean byLoggedSpeed) {
        int from = 0;
        for (int i = 0; i <= standing.length; i++) {
            boolean slow = i < standing.length && !standing[i] && slow(i, byLoggedSpeed);
            if (i == standing.length || !slow || segment[i]) {
                markIfStanding(from, i);
                from = slow ? i : i + 1;
            }
        }
    }

    private boolean slow(int i, boolean byLoggedSpeed) {
        return path.speedMps(i) < minSpeedMps || (byLoggedSpeed && log.speedMps(i) < minSpeedMps);
    }

    /** Marks records [from, to) if the path stays near its first position. */
    private void markIfStanding(int from, int to) {
        if (to - from < 2 || path.timeS(to - 1) - path.timeS(from) < MIN_DURATION_S) {
            return;
        }
        double durationS = path.timeS(to - 1) - path.timeS(from);
        for (int i = from; i < to; i++) {
            double awayM = Math.hypot(path.pe[i] - path.pe[from], path.pn[i] - path.pn[from]);
            if (awayM > Math.max(MARGIN_M + SIGMAS * noise.sigmaM(log.fix(i)), MAX_DRIFT_MPS * durationS)) {
                return;
            }
        }
        Arrays.fill(standing, from, to, true);
    }

    /** Adds to every stretch the records beside it up to the last slow one, as long as all are near its end. */
    private void extend() {
        boolean[] marked = standing.clone();
        for (int i = 1; i < marked.length; i++) {
            if (marked[i - 1] && !marked[i]) {
                int last = nearAfter(i - 1) - 1;
                while (last >= i && !slow(last, true)) {
                    last--;
                }
                Arrays.fill(standing, i, last + 1, true);
            } else if (marked[i] && !marked[i - 1]) {
                int first = nearBefore(i);
                while (first < i && !slow(first, true)) {
                    first++;
                }
                Arrays.fill(standing, first, i, true);
            }
        }
    }

    /** Replaces the path in every stretch by the uniform drift from its first to its last position. */
    private void hold() {
        int from = 0;
        for (int i = 1; i <= standing.length; i++) {
            boolean ends = i == standing.length || segment[i] || standing[i] != standing[from];
            if (ends) {
                if (standing[from]) {
                    path.drift(from, i - 1);
                }
                from = i;
            }
        }
    }

    private boolean[] headingHeld() {
        boolean[] held = standing.clone();
        for (int i = 1; i < standing.length; i++) {
            if (standing[i - 1] && !standing[i]) {
                Arrays.fill(held, i, nearAfter(i - 1), true);
            } else if (standing[i] && !standing[i - 1]) {
                Arrays.fill(held, nearBefore(i), i, true);
            }
        }
        return held;
    }

    /** Returns one past the last of the records after i that are near its position. */
    private int nearAfter(int i) {
        int j = i + 1;
        while (j < standing.length && !segment[j] && near(i, j)) {
            j++;
        }
        return j;
    }

    /** Returns the first of the records before i that are near its position. */
    private int nearBefore(int i) {
        int j = i;
        while (j > 0 && !segment[j] && near(i, j - 1)) {
            j--;
        }
        return j;
    }

    private boolean near(int i, int j) {
        double awayM = Math.hypot(path.pe[j] - path.pe[i], path.pn[j] - path.pn[i]);
        return awayM <= MARGIN_M + DIRECTION_SIGMAS * noise.sigmaM(log.fix(j));
    }
}
