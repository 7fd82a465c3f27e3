package io.rowledger.zones;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * The change of one row's rate near one zone line: from its level before to its level behind.
 *
 * @param changeS when the rate was half-way, s since the epoch
 * @param settledS when it began to stay within a tenth of the step of its new level; NaN where that was not seen
 * @param followed false where the rate went less than half as far as the plan; then the times are NaN
 */
record RateStep(double changeS, double settledS, boolean followed) {
    /** How far a level may be taken from before a line, s. A controller that looks ahead does so by less. */
    static final double MAX_BEFORE_S = 10;
    /** The same behind it: the slowest supply that still follows has settled. */
    static final double MAX_AFTER_S = 15;
    /** With less time than this on either side no level can be read, s. */
    static final double MIN_BEFORE_S = 4;

    static final double MIN_AFTER_S = 5;

    /** The levels are read from the outer parts of the window, as shares of it: the change lies between them. */
    private static final double BEFORE_PART = 0.4;

    private static final double AFTER_PART = 0.3;
    /** A step of fewer standard deviations of a record than this can't be placed to a record. */
    private static final double MIN_SIGMAS = 4;
    /** Settled is this near the new level, as a share of the step. */
    private static final double MAX_SETTLED_ERROR = 0.1;
    /** A rate that went less than this share of the plan's step did not follow. */
    private static final double MIN_FOLLOWED = 0.5;

    private static final double MAD_TO_SIGMA = 1.4826;
    private static final int MIN_RECORDS = 3;

    /** Where a row stood between two zones: the line, how long it had been in the one and would be in the other. */
    record Line(double timeS, double fromS, double toS, double planBefore, double planAfter) {}

    /** The step at a line, or null where it can't be judged: too little time, too much noise, the row shut deviation. */
    static @Nullable RateStep at(RowTrail trail, Line line) {
        double from = Math.max(line.timeS - MAX_BEFORE_S, line.fromS);
        double to = Math.min(line.timeS + MAX_AFTER_S, line.toS);
        if (line.timeS - from < MIN_BEFORE_S || to - line.timeS < MIN_AFTER_S) {
            return null;
        }
        int first = trail.from(from);
        int end = trail.from(to);
        int before = trail.from(from + BEFORE_PART * (line.timeS - from));
        int after = trail.from(to - AFTER_PART * (to - line.timeS));
        boolean plansZero = line.planBefore == 0 || line.planAfter == 0;
        for (int i = first; i < end; i++) {
            if (Double.isNaN(trail.rateLPerM2[i]) || (!plansZero && !trail.delivering[i])) {
                return null;
            }
        }
        if (before - first < MIN_RECORDS || end - after < MIN_RECORDS || before >= after) {
            return null;
        }
        double low = median(trail.rateLPerM2, first, before);
        double high = median(trail.rateLPerM2, after, end);
        double step = high - low;
        double planned = line.planAfter - line.planBefore;
        double scale = (low + high) / (line.planBefore + line.planAfter);
        if (step / planned < MIN_FOLLOWED * scale) {
            return new RateStep(Double.NaN, Double.NaN, false);
        }
        double sigma =
                Math.max(spread(trail.rateLPerM2, first, before, low), spread(trail.rateLPerM2, after, end, high));
        if (Math.abs(step) < MIN_SIGMAS * sigma) {
            return null;
        }
        return place(trail, first, end, low, step, sigma / Math.abs(step));
    }

    private static RateStep place(RowTrail trail, int first, int end, double low, double step, double noise) {
        // The split that leaves the least error of "not yet" before and "done" behind is where half the step is made.
        int split = first;
        double gain = 0;
        double maxGain = Double.NEGATIVE_INFINITY;
        for (int i = first; i < end; i++) {
            double done = (trail.rateLPerM2[i] - low) / step;
            gain += 0.5 - done;
            if (gain > maxGain) {
                maxGain = gain;
                split = i;
            }
        }
        double change = trail.timeS[split];
        if (split + 1 < end) {
            double a = (trail.rateLPerM2[split] - low) / step;
            double b = (trail.rateLPerM2[split + 1] - low) / step;
            double u = a < 0.5 && b > 0.5 ? (0.5 - a) / (b - a) : 0.5;
            change += u * (trail.timeS[split + 1] - trail.timeS[split]);
        }
        double near = Math.max(MAX_SETTLED_ERROR, 3 * noise);
        int last = split;
        for (int i = split + 1; i < end; i++) {
            last = Math.abs((trail.rateLPerM2[i] - low) / step - 1) > near ? i : last;
        }
        double settled = last + 1 < end ? (trail.timeS[last] + trail.timeS[last + 1]) / 2 : Double.NaN;
        return new RateStep(change, settled, true);
    }

    private static double spread(double[] values, int from, int end, double middle) {
        double[] deviation = new double[end - from];
        for (int i = from; i < end; i++) {
            deviation[i - from] = Math.abs(values[i] - middle);
        }
        return MAD_TO_SIGMA * median(deviation, 0, deviation.length);
    }

    static double median(double[] values, int from, int end) {
        double[] sorted = Arrays.copyOfRange(values, from, end);
        Arrays.sort(sorted);
        int n = sorted.length;
        return n == 0 ? Double.NaN : (sorted[(n - 1) / 2] + sorted[n / 2]) / 2;
    }
}
