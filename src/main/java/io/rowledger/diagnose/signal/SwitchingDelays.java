package io.rowledger.diagnose.signal;

import io.rowledger.stats.MaxSumRange;
import io.rowledger.stats.RobustStatistics;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Rows, or the bar, that are late on or early off pass after pass: what the two detectors of bare ends share. */
public final class SwitchingDelays {
    /** At such intervals edges fall on a few whole values, and the mean tells more than the median, s. */
    private static final double COARSE_INTERVAL_S = 0.4;

    private static final int MIN_PASSES = 3;

    /** Share of the passes that must be late where the log shows it in each (1): a valve errs in all, a row that comes and goes in some. */
    private static final double MIN_LATE = 0.75;

    /** Record intervals from which a delay shows in each pass. */
    private static final double SHOWN_INTERVALS = 2;

    private static final double MAX_ROWS = 0.6;

    /** Passes in which half of the rows must show the bar, for fewer rows to show it in others; and how many rows then, at least. */
    private static final int MIN_WHOLE = 2;

    private static final int MIN_ROWS = 3;

    /** Rows next to each other whose delays differ by less, in the mean over the passes, are late together, s. */
    private static final double IN_TURN_S = 0.25;

    /** Weight of one pass is limited to this delay, s. */
    private static final double MAX_S = 2;

    /**
     * What is usual at one end of a pass.
     *
     * @param promptS what valves and controllers usually take, s
     * @param minMedianS a median delay from which ends are bare, s
     * @param logged share of a record by which a log of means makes the delay seem longer, where that is not measured
     */
    record Usual(double promptS, double minMedianS, double logged) {}

    /** A valve and its controller take up to 0.5 s to open; a log of interval means adds half a record. */
    public static final Usual ON = new Usual(0.6, 0.75, 0.2);

    /**
     * A valve begins to close when the bar is lifted, so liquid usually goes on after the lift and any lead is too much; a
     * log of means makes it seem shorter, not longer.
     */
    public static final Usual OFF = new Usual(0.3, 0.5, 0);

    /**
     * Rows with bare ends.
     *
     * @param rows from 0; empty for the whole bar
     * @param passes the passes, from 0
     * @param delayS median delay
     * @param seen passes seen
     * @param usual what is usual at this end
     * @param commanded true if measured against logged commands
     */
    public record Ends(
            List<Integer> rows, MaxSumRange passes, double delayS, int seen, Usual usual, boolean commanded) {}

    /**
     * How well a log shows a delay.
     *
     * @param edgeS time to which an edge is known in a pass, s
     * @param edgeErrorS two standard deviations of a delay in a pass, s; the mean over n passes keeps 1/√n of it
     * @param lagErrorS standard error of what means over a part of the interval delay all rows by, s: a row against the bar is free of it
     */
    public record Resolved(double edgeS, double edgeErrorS, double lagErrorS) {
        public static Resolved of(LogLimits limits) {
            return new Resolved(limits.edgeS(), limits.edgeErrorS(), limits.sparseLagErrorS());
        }

        /** Delay of a row, or of the bar, over the usual that n passes may show without being late, s. */
        double errorS(int n, Usual usual, boolean bar) {
            double logged = edgeS > LogRamps.SPARSE_S ? 0 : usual.logged * edgeS;
            return logged + edgeErrorS / Math.sqrt(n) + (bar ? 2 * lagErrorS : 0);
        }
    }

    private SwitchingDelays() {}

    /**
     * Finds them in delays by row and pass, s.
     *
     * @param barToo true if the bar as a whole can be told: from a logged work state or commands
     * @param commanded true if delays are against logged commands
     */
    public static List<Ends> find(double[][] delayS, boolean barToo, boolean commanded, Resolved log, Usual usual) {
        return findAll(delayS, barToo, log, usual).stream()
                .map(x -> new Ends(x.rows, x.passes, x.delayS, x.seen, x.usual, commanded))
                .toList();
    }

    private static List<Ends> findAll(double[][] delayS, boolean barToo, Resolved log, Usual usual) {
        int rows = delayS.length;
        int passes = rows == 0 ? 0 : delayS[0].length;
        double[] bar = bar(delayS, passes);
        List<Ends> ends = new ArrayList<>();
        Ends whole = barToo ? ends(List.of(), bar, log, usual) : null;
        if (whole != null) {
            ends.add(whole);
        }
        List<Ends> single = singleRows(delayS, bar, whole, log, usual);
        Ends most = barToo && whole == null ? mostRows(single, delayS) : null;
        if (most != null) {
            ends.add(most);
        } else {
            ends.addAll(joined(single));
        }
        return ends;
    }

    /** Rows that are late beside the bar, each for itself. */
    private static List<Ends> singleRows(
            double[][] delayS, double[] bar, @Nullable Ends whole, Resolved log, Usual usual) {
        MaxSumRange late = whole == null ? new MaxSumRange(0, 0, 0) : whole.passes;
        double lateS = whole == null ? 0 : whole.delayS;
        List<Ends> single = new ArrayList<>();
        for (int r = 0; r < delayS.length; r++) {
            double[] own = new double[bar.length];
            for (int q = 0; q < own.length; q++) {
                double unseenS = q >= late.from() && q < late.end() ? lateS : 0;
                double ofBarS = Double.isNaN(bar[q]) ? unseenS : bar[q];
                own[q] = delayS[r][q] - Math.max(0, ofBarS - usual.promptS / 2);
            }
            Ends of = ends(List.of(r), own, log, usual);
            if (of != null) {
                single.add(of);
            }
        }
        boolean dropped = whole != null;
        while (dropped) {
            dropped = single.removeIf(of -> likeNeighbor(delayS, of.rows.get(0), late, single));
        }
        return single;
    }

    /**
     * The rows' median by pass, s: where half of them show it, and where that is so in {@value #MIN_WHOLE} passes, in the others from a
     * quarter of the rows on; NaN elsewhere. Over covered ground rows tell nothing, and along laps that is most of them in most passes.
     */
    private static double[] bar(double[][] delayS, int passes) {
        int rows = delayS.length;
        double[] bar = new double[passes];
        double[] some = new double[rows];
        int[] known = new int[passes];
        int whole = 0;
        for (int q = 0; q < passes; q++) {
            for (double[] ofRow : delayS) {
                if (!Double.isNaN(ofRow[q])) {
                    some[known[q]++] = ofRow[q];
                }
            }
            whole += 2 * known[q] >= rows ? 1 : 0;
            bar[q] = RobustStatistics.median(some, known[q]);
        }
        for (int q = 0; q < passes; q++) {
            boolean part = whole >= MIN_WHOLE && known[q] >= MIN_ROWS && 4 * known[q] >= rows;
            bar[q] = 2 * known[q] >= rows || part ? bar[q] : Double.NaN;
        }
        return bar;
    }

    /** True for a row about as late as one next to it that is late with the bar: so are the rows of a slope whose bar stops at once. */
    private static boolean likeNeighbor(double[][] delayS, int r, MaxSumRange passes, List<Ends> single) {
        for (int other = r - 1; other <= r + 1; other += 2) {
            int neighbor = other;
            if (single.stream().anyMatch(of -> of.rows.get(0) == neighbor)) {
                continue;
            }
            double sumS = 0;
            int n = 0;
            for (int q = passes.from(); q < passes.end() && other >= 0 && other < delayS.length; q++) {
                double apartS = Math.abs(delayS[r][q] - delayS[other][q]);
                sumS += Double.isNaN(apartS) ? 0 : apartS;
                n += Double.isNaN(apartS) ? 0 : 1;
            }
            if (n > 0 && sumS / n < IN_TURN_S) {
                return true;
            }
        }
        return false;
    }

    private static @Nullable Ends ends(List<Integer> rows, double[] delay, Resolved log, Usual usual) {
        double[] gains = new double[delay.length];
        for (int q = 0; q < gains.length; q++) {
            gains[q] = Double.isNaN(delay[q]) ? 0 : Math.max(-MAX_S, Math.min(MAX_S, delay[q] - usual.promptS));
        }
        MaxSumRange range = MaxSumRange.of(gains);
        double[] in = new double[delay.length];
        int n = 0;
        for (int q = range.from(); q < range.end(); q++) {
            if (!Double.isNaN(delay[q])) {
                in[n++] = delay[q];
            }
        }
        double median = log.edgeS > COARSE_INTERVAL_S ? mean(in, n, log.edgeS) : RobustStatistics.median(in, n);
        double least = usual.minMedianS + log.errorS(n, usual, rows.isEmpty());
        int late = (int) Arrays.stream(in, 0, n).filter(x -> x > usual.promptS).count();
        boolean regular = median < SHOWN_INTERVALS * log.edgeS || late >= MIN_LATE * n;
        return n >= MIN_PASSES && median >= least && regular ? new Ends(rows, range, median, n, usual, false) : null;
    }

    /** How much later than usual the whole bar may come on in each of so many passes without such a log showing it, s. */
    public static double hiddenS(LogLimits limits, int passes) {
        return Resolved.of(limits).errorS(Math.max(1, passes), ON, true);
    }

    /** Mean of delays that are known to so many seconds: one and the same delay shows as two values at most, so far apart. */
    private static double mean(double[] values, int n, double edgeS) {
        double most = RobustStatistics.median(values.clone(), n) + edgeS;
        return n == 0
                ? Double.NaN
                : Arrays.stream(values, 0, n).map(s -> Math.min(s, most)).sum() / n;
    }

    /** Where most rows that could be seen are late each for itself, the bar is. */
    private static @Nullable Ends mostRows(List<Ends> single, double[][] delayS) {
        int seen = 0;
        for (double[] ofRow : delayS) {
            seen += Arrays.stream(ofRow).filter(x -> !Double.isNaN(x)).count() >= MIN_PASSES ? 1 : 0;
        }
        if (single.size() < 3 || single.size() < MAX_ROWS * seen) {
            return null;
        }
        Ends typical = single.get(single.size() / 2);
        return new Ends(List.of(), typical.passes, typical.delayS, typical.seen, typical.usual, typical.commanded);
    }

    /** Neighbors whose delay hardly differs from one to the next, from the same pass on, are one. */
    private static List<Ends> joined(List<Ends> single) {
        List<Ends> joined = new ArrayList<>();
        // At a sloped end each further row of a bar that stops early is earlier by a little.
        Ends before = null;
        for (Ends next : single) {
            Ends last = joined.isEmpty() ? null : joined.get(joined.size() - 1);
            if (last != null
                    && before != null
                    && last.rows.get(last.rows.size() - 1) + 1 == next.rows.get(0)
                    && Math.abs(last.passes.from() - next.passes.from()) <= 1
                    && Math.abs(before.delayS - next.delayS) < 0.3 + 0.2 * before.delayS) {
                List<Integer> rows = new ArrayList<>(last.rows);
                rows.addAll(next.rows);
                joined.set(
                        joined.size() - 1,
                        new Ends(rows, last.passes, last.delayS, last.seen, last.usual, last.commanded));
            } else {
                joined.add(next);
            }
            before = next;
        }
        return joined;
    }

    public static double confidence(Ends ends) {
        double clear = ends.delayS - ends.usual.promptS;
        return ends.seen >= 5 && clear > 0.4 ? 0.96 : clear > 0.4 ? 0.92 : 0.75;
    }

    /** Speed at the ends of the passes, m/s. */
    public static double speedMps(Evidence e, Ends ends, boolean atStart) {
        double sum = 0;
        int n = 0;
        for (int q = ends.passes.from(); q < ends.passes.end(); q++) {
            int from = e.work.passFrom[q];
            int end = e.work.passFrom[q + 1];
            if (end > from) {
                sum += e.work.speedMps[atStart ? from : end - 1];
                n++;
            }
        }
        return n == 0 ? Double.NaN : sum / n;
    }

    /** Bare ground and the liquid it lacks. */
    public static Case.Cost cost(Evidence e, Ends ends, double[][] delayS, boolean atStart) {
        double speed = speedMps(e, ends, atStart);
        double area = 0;
        double volume = 0;
        for (int q = ends.passes.from(); q < ends.passes.end(); q++) {
            for (int r = 0; r < e.rows(); r++) {
                boolean meant = ends.rows.isEmpty() || ends.rows.contains(r);
                if (meant && !Double.isNaN(delayS[r][q]) && e.work.passFrom[q] < e.work.n) {
                    double bare = Math.max(0, delayS[r][q]) * speed * e.work.bandM[r];
                    double target = e.ratios.targetLPerM2[e.work.passFrom[q]];
                    area += bare;
                    volume -= Double.isNaN(target) ? 0 : bare * target;
                }
            }
        }
        return new Case.Cost(area, volume);
    }
}
