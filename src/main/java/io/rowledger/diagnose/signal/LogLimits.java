package io.rowledger.diagnose.signal;

import io.rowledger.log.LogTable;
import io.rowledger.parallel.ParallelTasks;
import io.rowledger.stats.RobustStatistics;
import io.rowledger.stats.WeightedMoments;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What the log of one product can resolve, measured from its own flow columns: the step to which figures are rounded, the time
 * over which they are averaged, the time for which they are held, and the record interval. Detectors accuse nobody of less.
 *
 * <p>Quantum: the smallest difference between distinct readings, where nearly all readings are multiples of it; 0 for a
 * column that is not rounded. Averaging and skew between rows: {@link LogRamps}. Hold: the time between changes of any row's
 * reading that nine of ten reach, where nearly all are multiples of it.
 */
public final class LogLimits {
    /** Readings whose quotient by the quantum is farther from a whole number are no multiples of it (1). */
    private static final double MULTIPLE = 0.05;

    /** Share of the distinct readings that must be multiples of the quantum (1). */
    private static final double MIN_MULTIPLES = 0.98;

    /** Quanta finer than this share of the usual flow limit nothing (1). */
    private static final double MIN_QUANTUM = 1e-9;

    /** A row's own quantum is measured from at least this many distinct readings. */
    private static final int MIN_DISTINCT = 4;

    /** Share of the usual flow above which a row is taken to work (1). */
    private static final double WORKING = 0.8;

    /** With fewer gaps between changes nothing is said about a hold. */
    private static final int MIN_GAPS = 20;

    /** Number of quanta from which a flow can't read zero (1): half a quantum is then a third of it. */
    private static final double MIN_QUANTA = 1.5;

    /** Share of the gaps between changes that must be multiples of the hold (1). */
    private static final double MIN_ON_BEAT = 0.85;

    /** Readings this near the usual flow, as a share of it, tell how it varies (1). */
    private static final double NEAR_USUAL = 0.3;

    /** Rounding coarser than this share of the usual flow is told (1). */
    private static final double MIN_TOLD = 0.005;

    /** Share of the averaging time to which an edge is known in a ramp (1). */
    private static final double AVERAGED_EDGE = 0.25;

    private final double[] quantumLPerS;
    private final double[] usualLPerS;
    /** Standard deviation of the flow near its usual value, without the rounding's own. */
    private final double[] spreadLPerS;

    /** How much later than the middle row each row is written, s. */
    private final double[] skewS;

    private final double averagingS;
    private final double holdS;
    private final double intervalS;
    private final LogRamps.Sparse sparse;
    private final boolean commanded;

    private LogLimits(
            double[] quantumLPerS,
            double[] usualLPerS,
            double[] spreadLPerS,
            double[] skewS,
            double averagingS,
            double holdS,
            double intervalS,
            LogRamps.Sparse sparse,
            boolean commanded) {
        this.quantumLPerS = quantumLPerS;
        this.usualLPerS = usualLPerS;
        this.spreadLPerS = spreadLPerS;
        this.skewS = skewS;
        this.averagingS = averagingS;
        this.holdS = holdS;
        this.intervalS = intervalS;
        this.sparse = sparse;
        this.commanded = commanded;
    }

    /** Measures the flow columns of product p in the first rows outlets. */
    public static LogLimits of(LogTable log, int p, int rows) {
        return of(log, p, rows, 1);
    }

    /** The same on so many threads; the result is the same for any number. */
    public static LogLimits of(LogTable log, int p, int rows, int threads) {
        double[] quantum = new double[rows];
        double[] usual = new double[rows];
        double[][] columns = new double[rows][];
        double[][] distinct = new double[rows][];
        boolean few = false;
        List<Readings> readings = ParallelTasks.map(rows, threads, r -> Readings.of(log.flowColumn(p, r)));
        for (int r = 0; r < rows; r++) {
            columns[r] = log.flowColumn(p, r);
            distinct[r] = readings.get(r).distinct;
            usual[r] = readings.get(r).usualLPerS;
            few |= distinct[r].length < MIN_DISTINCT;
        }
        double pooled = few ? quantum(pooled(distinct), RobustStatistics.median(usual)) : 0;
        for (int r = 0; r < rows; r++) {
            quantum[r] = distinct[r].length < MIN_DISTINCT ? pooled : quantum(distinct[r], usual[r]);
        }
        double interval = interval(log);
        boolean commanded = false;
        for (int r = 0; r < rows && log.records() > 0; r++) {
            commanded |= log.on(r, 0) >= 0;
        }
        double hold = hold(columns, usual, interval);
        LogRamps ramps = new LogRamps(log, columns, usual, interval, hold, threads);
        double[] spread = ParallelTasks.map(rows, threads, r -> spread(columns[r], usual[r], quantum[r])).stream()
                .mapToDouble(x -> x)
                .toArray();
        return new LogLimits(
                quantum, usual, spread, ramps.skewS(), ramps.averagingS(), hold, interval, ramps.sparse(), commanded);
    }

    /** Step to which the readings of row r are rounded, L/s; 0 if they are not. */
    public double quantumLPerS(int r) {
        return quantumLPerS[r];
    }

    /** The quantum of row r over its usual flow (1); 0 if readings are not rounded or the row never flowed. */
    public double resolution(int r) {
        return usualLPerS[r] > 0 ? quantumLPerS[r] / usualLPerS[r] : 0;
    }

    /** The coarsest resolution of any row (1). */
    public double resolution() {
        double max = 0;
        for (int r = 0; r < quantumLPerS.length; r++) {
            max = Math.max(max, resolution(r));
        }
        return max;
    }

    /**
     * How far rounding can move the mean of row r's readings over the job, over its usual flow (1). Flows that vary by σ dither:
     * the mean of normal values rounded to q is off by less than q/2 · exp(−2π²σ²/q²): the bound q/2 of values that stand, times
     * the decay of the first term of the error's Fourier series (A. Sripad, D. Snyder, IEEE Transactions on Acoustics, Speech,
     * and Signal Processing 25, 1977, 442-448; from memory).
     */
    public double resolutionOfMean(int r) {
        return resolutionOfMean(r, spreadLPerS[r]);
    }

    /** The same over a stretch in which the flow varies by a standard deviation of so much, L/s. */
    double resolutionOfMean(int r, double sigmaLPerS) {
        double q = quantumLPerS[r];
        if (!(q > 0) || !(usualLPerS[r] > 0)) {
            return 0;
        }
        double ratio = sigmaLPerS / q;
        return q / 2 * Math.exp(-2 * Math.PI * Math.PI * ratio * ratio) / usualLPerS[r];
    }

    /** The same for the row that it moves most (1). */
    public double resolutionOfMean() {
        double max = 0;
        for (int r = 0; r < quantumLPerS.length; r++) {
            max = Math.max(max, resolutionOfMean(r));
        }
        return max;
    }

    /** The quantum of row r over this flow (1). */
    public double resolutionAt(int r, double flowLPerS) {
        return flowLPerS > 0 ? quantumLPerS[r] / flowLPerS : 0;
    }

    /** True if row r is shut where it should give this much and reads zero: a third of this flow would already read one quantum. */
    public boolean zeroIsNothing(int r, double flowLPerS) {
        return flowLPerS >= MIN_QUANTA * quantumLPerS[r];
    }

    /** True if {@link #zeroIsNothing} holds for the usual flow of at least half of the rows. */
    public boolean usualShowsZero() {
        int shows = 0;
        for (int r = 0; r < usualLPerS.length; r++) {
            shows += zeroIsNothing(r, usualLPerS[r]) ? 1 : 0;
        }
        return 2 * shows >= usualLPerS.length;
    }

    /** How much later (positive) or earlier than the middle row row r is written, s: consoles read rows one after another. */
    public double skewS(int r) {
        return skewS[r];
    }

    /** The largest difference between two rows, s. */
    public double skewS() {
        double min = 0;
        double max = 0;
        for (double ofRow : skewS) {
            min = Math.min(min, ofRow);
            max = Math.max(max, ofRow);
        }
        return max - min;
    }

    /** Time over which readings are averaged, s; 0 if they are not. */
    public double averagingS() {
        return averagingS;
    }

    /** Time for which readings are held, s; the record interval if they are not. */
    public double holdS() {
        return holdS;
    }

    /** Median time between records, s. */
    public double intervalS() {
        return intervalS;
    }

    /** Time within which a change of the flow shows in the log, s: averaging plus hold. */
    public double smearS() {
        return averagingS + Math.max(0, holdS - intervalS);
    }

    /** Uncertainty of the time of an edge, s: the record interval, or the hold if longer, and a share of the averaging. */
    public double edgeS() {
        return Math.max(intervalS, holdS) + AVERAGED_EDGE * averagingS;
    }

    /** Two standard deviations of a delay between two columns in one pass, s. */
    public double edgeErrorS() {
        // A delay between two columns is a whole number of intervals T: its deviation is T/2 at most (a binomial's).
        // A hold or a ramp blurs the flow alone: T/√12.
        double held = holdS > 1.5 * intervalS ? holdS : 0;
        return Math.max(intervalS, 2 / Math.sqrt(12) * (held + AVERAGED_EDGE * averagingS));
    }

    /** By how much later a change shows in readings that are means over a part of a sparse log's interval, s. */
    double sparseLagS() {
        return sparse.meanS() / 2;
    }

    /** Standard error of {@link #sparseLagS}, s; 0 in a log that is not sparse. */
    public double sparseLagErrorS() {
        return sparse.errorS() / 2;
    }

    /** True if the log has the rows' on commands. */
    public boolean commandLogged() {
        return commanded;
    }

    /** What a reader should know of the log's limits, one sentence each. */
    public List<Message> sentences() {
        List<Message> sentences = new ArrayList<>();
        sentences.add(Message.of("findings.limits.interval", Message.decimal(intervalS, 1)));
        double coarsest = 0;
        for (double quantum : quantumLPerS) {
            coarsest = Math.max(coarsest, quantum);
        }
        if (resolution() > MIN_TOLD) {
            sentences.add(Message.of(
                    "findings.limits.rounding",
                    Message.value(QuantityKind.FLOW, coarsest),
                    Message.percent(100 * resolution())));
        }
        if (averagingS > 0) {
            sentences.add(Message.of("findings.limits.averaging", Message.decimal(averagingS, 0)));
        }
        if (holdS > 1.5 * intervalS) {
            sentences.add(Message.of("findings.limits.hold", Message.decimal(holdS, 0)));
        }
        if (skewS() > 1.5 * intervalS) {
            sentences.add(Message.of("findings.limits.skew", Message.decimal(skewS(), 1)));
        }
        sentences.add(Message.of(commanded ? "findings.limits.commands" : "findings.limits.noCommands"));
        return sentences;
    }

    /** Of one row: its distinct readings in rising order and its usual flow. */
    private record Readings(double[] distinct, double usualLPerS) {
        static Readings of(double[] column) {
            return new Readings(LogLimits.distinct(DistinctReadings.of(column)), usual(column));
        }
    }

    private static double interval(LogTable log) {
        double[] step = new double[Math.max(0, log.records() - 1)];
        for (int i = 0; i < step.length; i++) {
            step[i] = log.timeS(i + 1) - log.timeS(i);
        }
        return step.length == 0 ? 1 : RobustStatistics.median(step, step.length);
    }

    /** Median of the positive readings, the upper of two, L/s; 0 for none. */
    private static double usual(double[] column) {
        double[] positive = new double[column.length];
        int n = 0;
        for (double x : column) {
            if (x > 0) {
                positive[n++] = x;
            }
        }
        return n == 0 ? 0 : RobustStatistics.select(positive, n, n / 2);
    }

    /** The distinct readings of all rows, each row's in rising order. */
    private static double[] pooled(double[][] ofRows) {
        double[] pooled = new double[0];
        for (double[] row : ofRows) {
            double[] both = Arrays.copyOf(pooled, pooled.length + row.length);
            System.arraycopy(row, 0, both, pooled.length, row.length);
            Arrays.sort(both);
            pooled = distinct(both);
        }
        return pooled;
    }

    /** Values in rising order, equal ones once: equal within a billionth. */
    private static double[] distinct(double[] rising) {
        double[] distinct = new double[rising.length];
        int n = 0;
        for (double x : rising) {
            if (n == 0 || x - distinct[n - 1] > 1e-9 * x) {
                distinct[n++] = x;
            }
        }
        return Arrays.copyOf(distinct, n);
    }

    /** Standard deviation of readings near the usual flow, less that of rounding, q²/12, L/s. */
    private static double spread(double[] column, double usual, double quantum) {
        WeightedMoments moments = new WeightedMoments();
        for (double flow : column) {
            if (Math.abs(flow - usual) < NEAR_USUAL * usual) {
                moments.add(flow, 1);
            }
        }
        double sigma = moments.weight() > 0 ? moments.populationDeviation() : 0;
        return Math.sqrt(Math.max(0, sigma * sigma - quantum * quantum / 12));
    }

    private static double quantum(double[] distinct, double usual) {
        if (distinct.length == 0 || !(usual > 0)) {
            return 0;
        }
        double smallest = distinct[0];
        for (int i = 1; i < distinct.length; i++) {
            smallest = Math.min(smallest, distinct[i] - distinct[i - 1]);
        }
        if (smallest < MIN_QUANTUM * usual) {
            return 0;
        }
        int multiples = 0;
        for (double x : distinct) {
            double quotient = x / smallest;
            multiples += Math.abs(quotient - Math.rint(quotient)) < MULTIPLE ? 1 : 0;
        }
        return multiples >= MIN_MULTIPLES * distinct.length ? smallest : 0;
    }

    /**
     * Time for which readings are held: the gap between changes of any row's reading that nine of ten gaps reach, s. Rounded
     * readings may rest for longer by chance, but not in every gap.
     */
    private static double hold(double[][] columns, double[] usual, double intervalS) {
        int n = columns.length == 0 ? 0 : columns[0].length;
        double[] gaps = new double[n];
        int count = 0;
        int last = -1;
        for (int i = 1; i < n; i++) {
            boolean flows = false;
            boolean changed = false;
            for (int r = 0; r < columns.length && !(flows && changed); r++) {
                flows |= columns[r][i] > WORKING * usual[r] && columns[r][i - 1] > WORKING * usual[r];
                changed |= columns[r][i] != columns[r][i - 1];
            }
            if (!flows) {
                last = -1;
            } else if (changed) {
                if (last >= 0) {
                    gaps[count++] = i - last;
                }
                last = i;
            }
        }
        if (count < MIN_GAPS) {
            return intervalS;
        }
        double[] sorted = Arrays.copyOf(gaps, count);
        Arrays.sort(sorted);
        double held = sorted[count / 10];
        // Held readings change on a beat; readings that rest because they are rounded change at any time.
        int onBeat = 0;
        for (double gap : sorted) {
            onBeat += gap % held == 0 ? 1 : 0;
        }
        return onBeat >= MIN_ON_BEAT * count ? intervalS * held : intervalS;
    }
}
