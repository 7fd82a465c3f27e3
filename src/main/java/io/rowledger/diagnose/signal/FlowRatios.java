package io.rowledger.diagnose.signal;

import io.rowledger.parallel.ParallelTasks;
import io.rowledger.rate.Delivery;
import io.rowledger.rig.Rig;
import io.rowledger.stats.RobustStatistics;
import java.util.Arrays;
import java.util.BitSet;

/**
 * What all detectors read, for one product: a matrix of flows and one of ratios to the other rows, computed once. Row r
 * from 0 at the left, entry j of {@link WorkingSamples}.
 *
 * <p>Hot kernel: a few passes over records × rows; the median of other rows is a selection on at most as many values as the
 * bar has rows. {@code FlowRatiosBenchmark} measures it.
 */
public final class FlowRatios {
    /** Below this many delivering other rows there is no telling which row is wrong. */
    public static final int MIN_PEERS = 3;

    /** A bar slower than this stands or creeps; flows then follow its minimum and not the speed, m/s. */
    private static final double MIN_SPEED_MPS = 0.4;

    /** Flow ratio to the other rows below which a row counts as not delivering (1). */
    public static final double PLUGGED = 0.12;

    /** Rows that differ more than this in speed are in a tight corner, where the lag of the flow hides the rest. */
    private static final double MAX_TURN = 0.35;

    /** The same for rows that follow each other's place: by much more than the lag hides. */
    private static final double MAX_TIGHT_TURN = 0.6;

    /** Rows slower than this share of the bar's middle are inside the turn. */
    private static final double NOT_INSIDE = 0.6;

    /** Quanta below this share of the flow are finer than meters are good (1). */
    static final double FINE = 0.01;

    /** Readings this near the median are averaged (1). */
    private static final double NEAR_MEDIAN = 0.2;

    /** One rounding step, with what turns and the lag's shift change of it (1). */
    private static final double ONE_STEP = 1.2;

    public final int product;
    /** What the log can resolve. */
    public final LogLimits limits;

    final WorkingSamples work;
    final Rig rig;
    public final EvaluationMask evaluated;
    private final BitSet[] records;
    /** Metered flow, lag taken out, L/s. */
    public final float[][] flowLPerS;
    /** Row flow over what the other rows' median implies; NaN where not evaluated. */
    public final float[][] ratio;
    /** Median flux of the delivering rows at the bar's center, L/s a meter of band; NaN where too few delivered. */
    public final float[] peerFlux;
    /** Mean of the rows, L/m²; NaN without a target. */
    public final float[] targetLPerM2;
    /** Entries in which the rows have different targets: they can't be held against each other. */
    private final BitSet mixed;
    /** Entries in which no level can be evaluated, see {@link #unsteady}. */
    private final BitSet unsteady;

    final int threads;

    /** Median of the rows' rounding steps, L/s a meter of band; 0 if readings are not rounded. */
    private final double stepPerM;

    private final Delivery delivery;
    /** Share of the turn the machine takes out, per entry. */
    final float[] turnShare;

    /** The ratios of a product; {@link #computeRatios} fills them. */
    public FlowRatios(
            int product, WorkingSamples work, Rig rig, EvaluationMask evaluated, Delivery delivery, LogLimits limits) {
        this(product, work, rig, evaluated, delivery, limits, 1);
    }

    /** The same on so many threads; the result is the same for any number. */
    public FlowRatios(
            int product,
            WorkingSamples work,
            Rig rig,
            EvaluationMask evaluated,
            Delivery delivery,
            LogLimits limits,
            int threads) {
        this.threads = threads;
        this.limits = limits;
        this.product = product;
        this.work = work;
        this.rig = rig;
        this.evaluated = evaluated;
        this.records = new BitSet[work.rows()];
        Arrays.setAll(records, r -> (BitSet) evaluated.records(r).clone());
        int rows = work.rows();
        flowLPerS = ParallelTasks.map(rows, threads, r -> flow(delivery, r)).toArray(float[][]::new);
        double[] steps = new double[rows];
        Arrays.setAll(steps, r -> limits.quantumLPerS(r) / work.bandM[r]);
        stepPerM = RobustStatistics.median(steps);
        this.delivery = delivery;
        targetLPerM2 = new float[work.n];
        mixed = new BitSet(work.n);
        for (int j = 0; j < work.n; j++) {
            targetLPerM2[j] = (float) delivery.meanTargetLPerM2(product, 0, rows, work.step[j]);
            mixed.set(j, delivery.targetsDiffer(product, work.step[j]));
        }
        unsteady = new BitSet(work.n);
        for (int j = 0; j < work.n; j++) {
            unsteady.set(
                    j,
                    mixed.get(j)
                            || work.swinging[j]
                            || work.restarting[j]
                            || Math.abs(work.curvaturePerM[j]) * work.halfWidthM > MAX_TURN
                            || work.speedMps[j] < MIN_SPEED_MPS);
        }
        turnShare = new float[work.n];
        peerFlux = new float[work.n];
        ratio = new float[rows][work.n];
        Arrays.fill(turnShare, 1);
    }

    /** Flow of row r, lag taken out; what the log does not tell is left out of the evaluation. */
    private float[] flow(Delivery delivery, int r) {
        float[] flow = new float[work.n];
        for (int j = 0; j < work.n; j++) {
            flow[j] = (float) delivery.flowLPerS(product, r, work.step[j]);
            if (!delivery.known(product, r, work.step[j])) {
                // A blank reading is not a row that gives nothing.
                records[r].clear(j);
            }
        }
        return flow;
    }

    int rows() {
        return flowLPerS.length;
    }

    /** Speed of row r over that of the bar's center. */
    public double rowSpeedShare(int r, int j) {
        return 1 - work.curvaturePerM[j] * work.atM[r];
    }

    /** What a row's flow is to the bar's flux: band times what the machine takes out of the turn. */
    public double rowFactor(int r, int j) {
        return work.bandM[r] * (1 - turnShare[j] * work.curvaturePerM[j] * work.atM[r]);
    }

    /** What the other rows imply for row r, L/s; NaN where too few delivered. */
    public double impliedLPerS(int r, int j) {
        return peerFlux[j] * rowFactor(r, j);
    }

    /** What the target asks of row r at its own speed, L/s; NaN without a target. */
    public double targetLPerS(int r, int j) {
        double target = mixed.get(j) ? delivery.targetLPerM2(product, r, work.step[j]) : targetLPerM2[j];
        return target * work.bandM[r] * work.speedMps[j] * rowSpeedShare(r, j);
    }

    /** True in a corner too tight, at a speed too low, or on a line between two targets: no place to evaluate levels by. */
    public boolean unsteady(int j) {
        return unsteady.get(j);
    }

    /**
     * Row r's flow over its band and the other rows' flux, also in corners too tight to evaluate levels in (1); NaN while the
     * bar swings, restarts or is slow, or if the row is not evaluated.
     */
    public double relativeFlux(int r, int j) {
        boolean known = records[r].get(j)
                && !mixed.get(j)
                && !work.swinging[j]
                && !work.restarting[j]
                && Math.abs(work.curvaturePerM[j]) * work.halfWidthM <= MAX_TIGHT_TURN
                && work.speedMps[j] >= MIN_SPEED_MPS;
        return known && peerFlux[j] > 0 ? flowLPerS[r][j] / (work.bandM[r] * peerFlux[j]) : Double.NaN;
    }

    /** Fills ratios and other-row fluxes with the present turn shares. */
    public void computeRatios() {
        ParallelTasks.inBlocks(work.n, threads, this::computeRatios);
    }

    private void computeRatios(int from, int end) {
        int rows = rows();
        double[] flux = new double[rows];
        double[] some = new double[rows];
        for (int j = from; j < end; j++) {
            double turn = turnShare[j] * work.curvaturePerM[j];
            int count = 0;
            for (int r = 0; r < rows; r++) {
                flux[r] = Double.NaN;
                if (records[r].get(j)) {
                    flux[r] = flowLPerS[r][j] / (work.bandM[r] * (1 - turn * work.atM[r]));
                    some[count++] = flux[r];
                }
            }
            double middle = count < MIN_PEERS ? Double.NaN : middle(some, count);
            peerFlux[j] = (float) middle;
            boolean unsteady = unsteady(j);
            double perFlux = middle > 0 ? 1 / middle : Double.NaN;
            for (int r = 0; r < rows; r++) {
                boolean known = !unsteady || nothing(r, j, flux[r] * perFlux);
                ratio[r][j] = known ? (float) (flux[r] * perFlux) : Float.NaN;
            }
        }
    }

    /**
     * The peers' flux: their median; of rounded readings the mean of those near it, which dithers where a median jumps from
     * one rounded value to the next.
     */
    private double middle(double[] flux, int count) {
        double median = RobustStatistics.median(flux, count);
        if (limits.resolution() < FINE) {
            return median;
        }
        // Rows that read one step more or less than the median dither with it, however coarse the step.
        double within = Math.max(NEAR_MEDIAN * median, ONE_STEP * stepPerM);
        double sum = 0;
        int near = 0;
        for (int i = 0; i < count; i++) {
            if (Math.abs(flux[i] - median) <= within) {
                sum += flux[i];
                near++;
            }
        }
        return near == 0 ? median : sum / near;
    }

    /** Nothing where there should be much is nothing even in a tight corner. */
    private boolean nothing(int r, int j, double ratioNow) {
        return ratioNow < PLUGGED && rowSpeedShare(r, j) > NOT_INSIDE;
    }

    /** Entries in which row r is evaluated. Shared, read only. */
    BitSet records(int r) {
        return records[r];
    }

    /** Leaves a row out for a while: its other rows are then evaluated without it, once ratios are computed again. */
    public void excludeFromPeers(int r, double fromS, double toS) {
        records[r].clear(work.entryAt(fromS), Math.max(work.entryAt(fromS), work.entryAt(toS + 1e-3)));
    }

    /** Takes a row's entries out of the evaluation where a finding has claimed them. */
    void exclude(int r, BitSet entries) {
        for (int j = entries.nextSetBit(0); j >= 0; j = entries.nextSetBit(j + 1)) {
            ratio[r][j] = Float.NaN;
        }
    }
}
