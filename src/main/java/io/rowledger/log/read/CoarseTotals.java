package io.rowledger.log.read;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Evens out a running total that is written in coarse steps, so that its differences over time are flows and not the steps.
 *
 * <p>A total written in steps of q stays the same for several records and then jumps. Half way through a jump the liquid out is the mean of the
 * totals on either side plus q/2, whatever the size of the jump: these places are the knots of a line that rises evenly between
 * them. Knots nearer to each other than {@value #MIN_INTERVALS} records are left out, because a jump is only known to a record.
 *
 * <p>Before the first jump and after the last one, liquid ran that the total does not show: the total is rounded down, at either end by
 * anything up to q. It ran at the rate of the jumps nearby, for as long as that makes no more than the q that the total can hide;
 * over a longer wait it is q/2, the mean of what is possible. For example, with q = 1 gal, 1 gal/min and a last jump 36 s before the
 * last record, 0.6 gal more are out than the total says. So the volume differs from the total's by less than q.
 *
 * <p>Time in which the work state, every section or the width says that nothing flows does not count, unless the total rises in
 * it by two steps or more. A wait that stands out among its neighbors is a pause: half of its step came just after the jump before
 * it and half just before the jump after it, at the rates of the neighbors.
 */
final class CoarseTotals {
    /** Fewest jumps from which the step can be told. */
    private static final int MIN_JUMPS = 20;
    /** Fewest jumps where each stands alone among records at which the total stays. */
    private static final int MIN_LONE_JUMPS = 3;
    /** Jumps stand alone if half of them are at least so many records after the one before. */
    private static final int MIN_LONE_RECORDS = 4;
    /** From this many steps a record on, the rounding error of a flow is below 0.41/8 = 5 % (one sigma): nothing to even out. */
    private static final double MIN_FINE_STEPS = 8;
    /** Shortest distance between knots in record intervals: each end is known to 0.29 of one, so a flow to 3.4 % (one sigma). */
    static final int MIN_INTERVALS = 12;
    /** Share of neighboring rises that differ by a step or more in a rounded total; those of a steady flow are alike. */
    private static final double MIN_UNEVEN_SHARE = 0.1;
    /** Share of the jumps that must be a whole number of steps. */
    private static final double MIN_WHOLE_SHARE = 0.99;
    /** Largest distance from a whole number of steps, in steps. */
    private static final double MAX_REST = 0.02;
    /** The smallest jump seen may be up to so many steps. */
    private static final int MAX_STEPS_OF_SMALLEST = 5;
    /** A wait is a pause if it is longer than the waits beside it by this ratio. */
    private static final double MIN_PAUSE_RATIO = 3;
    /** The waits beside a pause count at most this many usual waits: they may be pauses themselves. */
    private static final double MAX_WAIT_RATIO = 5;
    /** Longest wait at an end that counts as flowing all the time, in waits for a step: a jump is known to a record. */
    private static final double MAX_END_STEPS = 1.25;
    /** A pause is longer than the waits beside it by more record intervals than this. */
    private static final double MIN_PAUSE_INTERVALS = 2;

    private final double[] total;
    private final RawLog log;
    private final boolean @Nullable [] working;
    private final double stepL;
    private final double intervalS;
    /** Waits between the jumps of all runs, s; how many are known. */
    private final double[] waitsS;

    private int waits;

    private CoarseTotals(double[] total, RawLog log, boolean @Nullable [] working, double stepL) {
        this.total = total;
        this.log = log;
        this.working = working;
        this.stepL = stepL;
        this.intervalS = log.intervalS();
        this.waitsS = new double[log.records];
    }

    /**
     * Evens out a total in place if it is written in coarse steps.
     *
     * @param total by record, L; NaN where unknown
     * @param working whether liquid may flow, by record; null if the log does not tell
     * @return what was evened out; null if the total is not coarse and stays as it is
     */
    static @Nullable Evened even(double[] total, RawLog log, boolean @Nullable [] working) {
        double stepL = stepL(total, log);
        if (Double.isNaN(stepL)) {
            return null;
        }
        CoarseTotals coarse = new CoarseTotals(total, log, working, stepL);
        int from = 0;
        for (int i = 1; i <= log.records; i++) {
            if (i == log.records || !(riseL(total, log, i - 1) >= 0)) {
                coarse.evenRun(from, i);
                from = i;
            }
        }
        return new Evened(stepL, coarse.overS());
    }

    /**
     * How a total was evened out.
     *
     * @param stepL its step, L
     * @param overS time over which half of its flow or more is a mean, s
     */
    record Evened(double stepL, double overS) {}

    private double overS() {
        Arrays.sort(waitsS, 0, waits);
        return Math.max(MIN_INTERVALS * intervalS, waits == 0 ? 0 : waitsS[waits / 2]);
    }

    /** Returns the rise of the total from record i to the next, L; NaN across a gap or an unknown total, negative at a fall. */
    private static double riseL(double[] total, RawLog log, int i) {
        return log.gapBefore[i + 1] ? Double.NaN : total[i + 1] - total[i];
    }

    /** Returns the step of a coarse total, L; NaN if it is not coarse. */
    private static double stepL(double[] total, RawLog log) {
        double[] jumps = new double[Math.max(0, log.records - 1)];
        int[] distances = new int[jumps.length];
        int n = 0;
        int before = 0;
        for (int i = 0; i + 1 < log.records; i++) {
            double rise = riseL(total, log, i);
            if (rise > 0) {
                distances[n] = i - before;
                before = i;
                jumps[n++] = rise;
            }
        }
        if (n < MIN_JUMPS && !isLone(distances, n)) {
            return Double.NaN;
        }
        double[] sorted = Arrays.copyOf(jumps, n);
        Arrays.sort(sorted);
        for (int k = 1; k <= MAX_STEPS_OF_SMALLEST; k++) {
            double stepL = sorted[0] / k;
            if (sorted[n / 2] >= MIN_FINE_STEPS * stepL) {
                return Double.NaN;
            }
            long whole = Arrays.stream(sorted)
                    .filter(jump -> Math.abs(jump / stepL - Math.rint(jump / stepL)) <= MAX_REST)
                    .count();
            if (whole >= MIN_WHOLE_SHARE * n) {
                return isUneven(total, log, stepL) ? stepL : Double.NaN;
            }
        }
        return Double.NaN;
    }

    /** Returns true if most of n jumps are several records from the one before: no flow comes in single records. */
    private static boolean isLone(int[] distances, int n) {
        if (n < MIN_LONE_JUMPS) {
            return false;
        }
        int[] sorted = Arrays.copyOfRange(distances, 1, n);
        Arrays.sort(sorted);
        return sorted[sorted.length / 2] >= MIN_LONE_RECORDS;
    }

    private static boolean isUneven(double[] total, RawLog log, double stepL) {
        int pairs = 0;
        int uneven = 0;
        for (int i = 0; i + 2 < log.records; i++) {
            double here = riseL(total, log, i);
            double next = riseL(total, log, i + 1);
            if (here >= 0 && next >= 0 && here + next > 0) {
                pairs++;
                uneven += Math.abs(here - next) > stepL / 2 ? 1 : 0;
            }
        }
        return uneven > MIN_UNEVEN_SHARE * pairs;
    }

    /** Times (s, without those in which nothing flows) and volumes (L) of the knots of one run. */
    private static final class Knots {
        final double[] timeS;
        final double[] volumeL;
        int count;

        Knots(int capacity) {
            timeS = new double[capacity];
            volumeL = new double[capacity];
        }

        void add(double atS, double volume) {
            timeS[count] = count == 0 ? atS : Math.max(atS, timeS[count - 1]);
            volumeL[count++] = volume;
        }

        double waitS(int k) {
            return timeS[k + 1] - timeS[k];
        }
    }

    /** Evens out records {@code from} to {@code to} − 1, among which the total is known and does not fall. */
    private void evenRun(int from, int to) {
        if (to - from < 2 || total[to - 1] <= total[from]) {
            return;
        }
        double[] flowingS = flowingS(from, to);
        Knots jumps = new Knots(to - from + 2);
        jumps.add(flowingS[0], total[from] + stepL / 2);
        for (int i = from; i + 1 < to; i++) {
            if (total[i + 1] > total[i]) {
                double midS = (flowingS[i - from] + flowingS[i + 1 - from]) / 2;
                jumps.add(midS, (total[i] + total[i + 1]) / 2 + stepL / 2);
            }
        }
        jumps.add(flowingS[flowingS.length - 1], total[to - 1] + stepL / 2);
        for (int k = 1; k + 2 < jumps.count; k++) {
            waitsS[waits++] = jumps.waitS(k);
        }
        setEnds(jumps, total[from], total[to - 1]);
        Knots line = line(jumps);
        int k = 0;
        for (int i = from; i < to; i++) {
            double atS = flowingS[i - from];
            while (k + 2 < line.count && line.timeS[k + 1] < atS) {
                k++;
            }
            double waitS = line.waitS(k);
            double share = waitS > 0 ? Math.min(1, (atS - line.timeS[k]) / waitS) : 1;
            total[i] = line.volumeL[k] + share * (line.volumeL[k + 1] - line.volumeL[k]);
        }
    }

    /** Gives the first and the last knot what ran before the first jump and after the last, where the jumps nearby tell a rate. */
    private void setEnds(Knots jumps, double firstL, double lastL) {
        int end = jumps.count - 1;
        int from = 1;
        int to = end - 1;
        while (to > 1 && jumps.timeS[end - 1] - jumps.timeS[to] < MIN_INTERVALS * intervalS) {
            to--;
        }
        while (from < end - 1 && jumps.timeS[from] - jumps.timeS[1] < MIN_INTERVALS * intervalS) {
            from++;
        }
        double ranBeforeL = jumps.waitS(0) * rateLPerS(jumps, 1, from);
        double ranAfterL = jumps.waitS(end - 1) * rateLPerS(jumps, to, end - 1);
        if (ranBeforeL <= MAX_END_STEPS * stepL) {
            jumps.volumeL[0] = Math.max(firstL, Math.min(firstL + stepL, jumps.volumeL[1] - ranBeforeL));
        }
        if (ranAfterL <= MAX_END_STEPS * stepL) {
            jumps.volumeL[end] = Math.max(lastL, Math.min(lastL + stepL, jumps.volumeL[end - 1] + ranAfterL));
        }
    }

    /** Returns the rate between two jumps, L/s; NaN if they are one. */
    private static double rateLPerS(Knots jumps, int from, int to) {
        double seconds = jumps.timeS[to] - jumps.timeS[from];
        return seconds > 0 ? (jumps.volumeL[to] - jumps.volumeL[from]) / seconds : Double.NaN;
    }

    /** Returns the time since the first record of a run by record, s, without that in which nothing flows. */
    private double[] flowingS(int from, int to) {
        double[] weight = new double[to - from - 1];
        for (int i = 0; i < weight.length; i++) {
            weight[i] = working == null ? 1 : ((working[from + i] ? 0.5 : 0) + (working[from + i + 1] ? 0.5 : 0));
        }
        for (int i = 0; i < weight.length; i++) {
            int end = i;
            while (end < weight.length && weight[end] == 0) {
                end++;
            }
            if (end > i && total[from + end] - total[from + i] > 1.5 * stepL) {
                Arrays.fill(weight, i, end, 1);
            }
            i = Math.max(i, end);
        }
        double[] flowingS = new double[to - from];
        for (int i = 0; i < weight.length; i++) {
            flowingS[i + 1] = flowingS[i] + weight[i] * (log.timeS[from + i + 1] - log.timeS[from + i]);
        }
        return flowingS;
    }

    /** Returns the knots that are far enough from each other, with two more at each pause. */
    private Knots line(Knots jumps) {
        double[] secondsPerL = new double[jumps.count - 1];
        double[] waits = new double[jumps.count - 1];
        for (int k = 0; k < secondsPerL.length; k++) {
            double volumeL = jumps.volumeL[k + 1] - jumps.volumeL[k];
            // Nothing can be told of a rate before the first jump and after the last.
            boolean end = k == 0 || k == secondsPerL.length - 1;
            secondsPerL[k] = end || volumeL <= 0 ? Double.NaN : jumps.waitS(k) / volumeL;
            waits[k] = secondsPerL[k];
        }
        Arrays.sort(waits);
        int known =
                (int) Arrays.stream(waits).filter(wait -> !Double.isNaN(wait)).count();
        double usualSPerL = known == 0 ? Double.NaN : waits[known / 2];
        Knots line = new Knots(3 * jumps.count);
        line.add(jumps.timeS[0], jumps.volumeL[0]);
        for (int k = 0; k + 1 < jumps.count; k++) {
            double beforeSPerL = k > 0 ? secondsPerL[k - 1] : Double.NaN;
            double afterSPerL = k + 2 < jumps.count ? secondsPerL[k + 1] : Double.NaN;
            boolean last = k + 2 == jumps.count;
            if (isPause(jumps, k, beforeSPerL, afterSPerL, usualSPerL)) {
                addPause(
                        line,
                        jumps,
                        k,
                        Math.min(orElse(beforeSPerL, afterSPerL), MAX_WAIT_RATIO * usualSPerL),
                        Math.min(orElse(afterSPerL, beforeSPerL), MAX_WAIT_RATIO * usualSPerL));
                line.add(jumps.timeS[k + 1], jumps.volumeL[k + 1]);
            } else if (last || jumps.timeS[k + 1] - line.timeS[line.count - 1] >= MIN_INTERVALS * intervalS) {
                line.add(jumps.timeS[k + 1], jumps.volumeL[k + 1]);
            }
        }
        return line;
    }

    private static double orElse(double value, double other) {
        return Double.isNaN(value) ? other : value;
    }

    private boolean isPause(Knots jumps, int k, double beforeSPerL, double afterSPerL, double usualSPerL) {
        double besideSPerL = Double.isNaN(beforeSPerL)
                ? afterSPerL
                : Double.isNaN(afterSPerL) ? beforeSPerL : Math.max(beforeSPerL, afterSPerL);
        double expectedS =
                Math.min(besideSPerL, MAX_WAIT_RATIO * usualSPerL) * (jumps.volumeL[k + 1] - jumps.volumeL[k]);
        double waitS = jumps.waitS(k);
        return waitS > MIN_PAUSE_RATIO * expectedS && waitS > expectedS + MIN_PAUSE_INTERVALS * intervalS;
    }

    /** Adds the end of the flow before a pause and the start of the flow after it. */
    private static void addPause(Knots line, Knots jumps, int k, double beforeSPerL, double afterSPerL) {
        boolean first = k == 0;
        boolean last = k + 2 == jumps.count;
        double volumeL = jumps.volumeL[k + 1] - jumps.volumeL[k];
        double beforeL = first ? 0 : last ? volumeL : volumeL / 2;
        double waitS = jumps.waitS(k);
        double scale = Math.min(1, waitS / (beforeL * beforeSPerL + (volumeL - beforeL) * afterSPerL));
        // The last knot before the pause may have been left out: the flow before it ends there.
        line.add(jumps.timeS[k], jumps.volumeL[k]);
        line.add(jumps.timeS[k] + scale * beforeL * beforeSPerL, jumps.volumeL[k] + beforeL);
        line.add(jumps.timeS[k + 1] - scale * (volumeL - beforeL) * afterSPerL, jumps.volumeL[k] + beforeL);
    }
}
