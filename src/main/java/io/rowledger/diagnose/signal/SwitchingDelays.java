package io.rowledger.diagnose.signal;

import io.rowledger.stats.MaxSumRange;
import io.rowledger.stats.RobustStatistics;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Rows, or the bar, that are late on or early off pass after pass: what the two detectors of bare ends share. */
public final class SwitchingDelays {
    /** Uncertainty of an edge, in record intervals; the median over n passes keeps 1/sqrt(n) of it. */
    private static final double INTERVALS = 0.6;

    /**
     * Record intervals by which a sparse log makes the whole bar seem late or early: its readings may be means over the interval, and
     * a mean over less than an interval doesn't show. A row against the bar is free of it.
     */
    private static final double SPARSE_INTERVALS = 1;

    /** Records farther apart than this are sparse, s. */
    private static final double SPARSE_S = 2;

    /** At such intervals edges fall on a few whole values, and the mean tells more than the median, s. */
    private static final double COARSE_INTERVAL_S = 0.4;

    private static final int MIN_PASSES = 3;

    /** Share of the passes that must be late where the log shows it in each (1): a valve errs in all, a row that comes and goes in some. */
    private static final double MIN_LATE = 0.75;

    /** Record intervals from which a delay shows in each pass. */
    private static final double SHOWN_INTERVALS = 2;

    private static final double MAX_ROWS = 0.6;

    /** Weight of one pass is limited to this delay, s. */
    private static final double MAX_S = 2;

    /**
     * What is usual at one end of a pass.
     *
     * @param promptS what valves and controllers usually take, s
     * @param minMedianS a median delay from which ends are bare, s
     * @param logged share of a record by which a log of means makes the delay seem longer
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

    private SwitchingDelays() {}

    /**
     * Finds them in delays by row and pass, s.
     *
     * @param barToo true if the bar as a whole can be told: from a logged work state or commands
     * @param commanded true if delays are against logged commands
     */
    public static List<Ends> find(double[][] delayS, boolean barToo, boolean commanded, double intervalS, Usual usual) {
        return findAll(delayS, barToo, intervalS, usual).stream()
                .map(x -> new Ends(x.rows, x.passes, x.delayS, x.seen, x.usual, commanded))
                .toList();
    }

    private static List<Ends> findAll(double[][] delayS, boolean barToo, double intervalS, Usual usual) {
        int rows = delayS.length;
        int passes = rows == 0 ? 0 : delayS[0].length;
        double[] bar = new double[passes];
        double[] some = new double[rows];
        for (int q = 0; q < passes; q++) {
            int n = 0;
            for (double[] ofRow : delayS) {
                if (!Double.isNaN(ofRow[q])) {
                    some[n++] = ofRow[q];
                }
            }
            bar[q] = 2 * n >= rows ? RobustStatistics.median(some, n) : Double.NaN;
        }
        List<Ends> ends = new ArrayList<>();
        Ends whole = barToo ? ends(List.of(), bar, intervalS, usual) : null;
        if (whole != null) {
            ends.add(whole);
        }
        List<Ends> single = new ArrayList<>();
        for (int r = 0; r < rows; r++) {
            double[] own = new double[passes];
            for (int q = 0; q < passes; q++) {
                own[q] = delayS[r][q] - (Double.isNaN(bar[q]) ? 0 : Math.max(0, bar[q] - usual.promptS / 2));
            }
            Ends of = ends(List.of(r), own, intervalS, usual);
            if (of != null) {
                single.add(of);
            }
        }
        Ends most = barToo && whole == null ? mostRows(single, delayS) : null;
        if (most != null) {
            ends.add(most);
        } else {
            ends.addAll(joined(single));
        }
        return ends;
    }

    private static @Nullable Ends ends(List<Integer> rows, double[] delay, double intervalS, Usual usual) {
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
        double median = intervalS > COARSE_INTERVAL_S ? mean(in, n) : RobustStatistics.median(in, n);
        double sparse = rows.isEmpty() ? sparse(intervalS) : 0;
        double least = usual.minMedianS + (usual.logged + sparse + INTERVALS / Math.sqrt(n)) * intervalS;
        int late = (int) Arrays.stream(in, 0, n).filter(x -> x > usual.promptS).count();
        boolean regular = median < SHOWN_INTERVALS * intervalS || late >= MIN_LATE * n;
        return n >= MIN_PASSES && median >= least && regular ? new Ends(rows, range, median, n, usual, false) : null;
    }

    private static double sparse(double intervalS) {
        return intervalS > SPARSE_S ? SPARSE_INTERVALS : 0;
    }

    /** How much later than usual the whole bar may come on in each of so many passes without a log of such intervals showing it, s. */
    public static double hiddenS(double intervalS, int passes) {
        return (ON.logged + sparse(intervalS) + INTERVALS / Math.sqrt(Math.max(1, passes))) * intervalS;
    }

    private static double mean(double[] values, int n) {
        return n == 0 ? Double.NaN : Arrays.stream(values, 0, n).sum() / n;
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

    /** Neighbours with the same delay from the same pass on are one. */
    private static List<Ends> joined(List<Ends> single) {
        List<Ends> joined = new ArrayList<>();
        for (Ends next : single) {
            Ends last = joined.isEmpty() ? null : joined.get(joined.size() - 1);
            if (last != null
                    && last.rows.get(last.rows.size() - 1) + 1 == next.rows.get(0)
                    && Math.abs(last.passes.from() - next.passes.from()) <= 1
                    && Math.abs(last.delayS - next.delayS) < 0.3 + 0.2 * last.delayS) {
                List<Integer> rows = new ArrayList<>(last.rows);
                rows.addAll(next.rows);
                joined.set(
                        joined.size() - 1,
                        new Ends(rows, last.passes, last.delayS, last.seen, last.usual, last.commanded));
            } else {
                joined.add(next);
            }
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
