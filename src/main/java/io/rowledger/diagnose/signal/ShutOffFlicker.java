package io.rowledger.diagnose.signal;

import io.rowledger.stats.RobustStatistics;

/**
 * Tells a row that its own shut-off switches on and off from one that gives too little. Along the edge of ground done
 * before a row is on and off every second or two, and what flows between looks like half a row; but it swings as no
 * restriction does, and it does so where much of the ground had been covered.
 */
final class ShutOffFlicker {
    /** A restricted row keeps its level to a few percent; one that is switched swings by this (robust σ of the ratio). */
    private static final double SWINGS = 0.1;

    /** Ratios are compared over this time, s: longer than a meter's noise lasts, shorter than a slide takes. */
    private static final double APART_S = 1.0;

    /** Edges of done ground are half done. */
    private static final double COVERED = 0.4;

    private final FlowRatios s;

    ShutOffFlicker(FlowRatios s) {
        this.s = s;
    }

    /** True where the stretch is the work of the row's shut-off. */
    boolean explains(LevelShifts.Episode episode) {
        int r = episode.row();
        int from = s.work.entryAt(episode.fromS());
        int to = s.work.entryAt(episode.toS());
        return episode.level() < 1 && swing(s.ratio[r], from, to) > SWINGS && covered(r, from, to) >= COVERED;
    }

    /** σ of the ratio's own swinging: from its changes over a second, which a slide or a step hardly moves. */
    private double swing(float[] ratio, int from, int to) {
        int lag = (int) Math.max(1, Math.round(APART_S / s.work.intervalS));
        double[] change = new double[Math.max(0, to - from - lag)];
        int n = 0;
        for (int j = from; j + lag < to; j++) {
            float now = ratio[j];
            float next = ratio[j + lag];
            if (!Float.isNaN(now) && !Float.isNaN(next)) {
                change[n++] = Math.abs(next - now);
            }
        }
        return n == 0 ? 0 : RobustStatistics.MAD_TO_SIGMA * RobustStatistics.median(change, n) / Math.sqrt(2);
    }

    private double covered(int r, int from, int to) {
        double share = 0;
        int n = 0;
        for (int j = from; j < to; j++) {
            if (!Float.isNaN(s.ratio[r][j])) {
                share += s.evaluated.covered().share(r, s.work.step[j], s.work.endStep[j]);
                n++;
            }
        }
        return n == 0 ? 0 : share / n;
    }
}
