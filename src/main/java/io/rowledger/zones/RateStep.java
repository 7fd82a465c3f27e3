package io.rowledger.zones;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Change of one row's rate near a zone line, from its level before the line to its level behind it.
 *
 * @param changeS time at which the rate was halfway, s since the epoch
 * @param settledS time from which it stayed within a tenth of the step of its new level, s since the epoch; NaN if not
 *     seen
 * @param followed false if the rate changed by less than half of the planned step; the times are NaN then
 */
record RateStep(double changeS, double settledS, boolean followed) {
    /** Longest time before a line that its level is read from, s; a controller that looks ahead does so by less. */
    static final double MAX_BEFORE_S = 10;
    /** Longest time behind a line, s; the slowest supply that still follows has settled by then. */
    static final double MAX_AFTER_S = 15;
    /** Shortest times on either side from which a level can be read, s. */
    static final double MIN_BEFORE_S = 4;

    static final double MIN_AFTER_S = 5;

    /** Outer fractions of the window that the levels are read from; the change lies between them. */
    private static final double BEFORE_PART = 0.4;

    private static final double AFTER_PART = 0.3;
    /** Smallest step in standard deviations of a record, below which it can't be located to a record. */
    private static final double MIN_SIGMAS = 4;
    /** Largest deviation from the new level that counts as settled, as a fraction of the step. */
    private static final double MAX_SETTLED_ERROR = 0.1;
    /** Smallest step, as a fraction of the planned one, that counts as following it. */
    private static final double MIN_FOLLOWED = 0.5;

    private static final double MAD_TO_SIGMA = 1.4826;
    private static final int MIN_RECORDS = 3;

    /**
     * A row's crossing of a line between two zones: time of the crossing, start and end of the time it spent in both
     * zones, planned rates.
     */
    record Line(double timeS, double fromS, double toS, double planBefore, double planAfter) {}

    /** Returns the step at a line, or null if it can't be evaluated: too little time, too much noise, row shut off. */
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
        // Least squares fit of a step function: the split with the smallest error is where half the step is made.
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
