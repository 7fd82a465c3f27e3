package io.rowledger.diagnose.signal;

import io.rowledger.finding.FindingKind;
import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.stats.RobustStatistics;
import io.rowledger.track.Poses;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * When each row's flow came on at the start of a pass and went off at its end, pass by pass, against what it should have
 * followed: the row's own on command where one is logged, else the lowering and lifting of the bar.
 *
 * <p>The edge is where the flow passes half of what the row gives in the seconds next to it. NaN if the row did not deliver, ran over
 * covered ground there, had a faulty meter, came and went, or if the bar was not lifted there: a bar that stands and drives on has no edge.
 * Without commands, delays that rise evenly from one end of the bar to the other are a sloped headland's; only what the row that
 * enters first, or leaves last, has of them is kept.
 */
public final class Edges {
    private static final double ON = 0.5;

    /** What a row gives near an edge is read so long after (or before) it, and over so long, s. */
    private static final double SETTLED_S = 2;

    private static final double NEAR_S = 6;

    private static final int MIN_NEAR = 3;

    /** Share of prior coverage from which covered ground explains a late start or early stop (1). */
    private static final double COVERED = 0.3;

    /** Delays below this are kept without looking at prior coverage, s. */
    private static final double UNEXPLAINED_S = 0.4;

    /** Without a logged work state, a bar that moved less between two passes was not lifted, m. */
    private static final double NOT_LIFTED_M = 3;

    /** Fewer rows show no slope. */
    private static final int MIN_SLOPED_ROWS = 5;

    /**
     * Difference in delay between the ends of the bar from which the headland is sloped, s; plus one record interval. Half of
     * it is the bar's own lead or delay, and must be less than what {@link SwitchingDelays} tells.
     */
    private static final double MIN_SLOPE_S = 0.4;

    /** Scatter about the slope, as a share of that difference (1); plus a share of the record interval. */
    private static final double MAX_SCATTER = 0.12;

    private static final double MAX_SCATTER_INTERVALS = 0.3;

    private static final Set<FindingKind> METER_AT_FAULT = EnumSet.of(
            FindingKind.METER_STUCK,
            FindingKind.METER_DROPOUT,
            FindingKind.CHANNELS_SWAPPED,
            FindingKind.PLUGGED,
            FindingKind.INTERMITTENT,
            FindingKind.VALVE_STUCK_OPEN,
            FindingKind.RAN_EMPTY);

    /** [row][pass], s; positive late. */
    public final double[][] onDelayS;
    /** [row][pass], s; positive early, negative where flow goes on after the lift or the command. */
    public final double[][] offLeadS;

    private final FlowRatios ratios;
    private final WorkingSamples work;
    private final Delivery delivery;
    private final LogTable log;
    private final Poses poses;
    private final List<Case> cases;
    private final List<LevelShifts.Episode> comeAndGo;
    /** Time by which averaging and holding delay an edge, s. */
    private final double meanLagS;

    /**
     * The edges of a job.
     *
     * @param cases found before; rows whose meters they fault are left out
     * @param comeAndGo stretches in which rows came and went without a known cause; left out as well
     */
    Edges(
            FlowRatios ratios,
            Delivery delivery,
            LogTable log,
            Poses poses,
            List<Case> cases,
            List<LevelShifts.Episode> comeAndGo) {
        this.ratios = ratios;
        this.work = ratios.work;
        this.delivery = delivery;
        this.log = log;
        this.poses = poses;
        this.cases = List.copyOf(cases);
        this.comeAndGo = List.copyOf(comeAndGo);
        meanLagS = ratios.limits.smearS() / 2 + ratios.limits.sparseLagS();
        int rows = ratios.rows();
        onDelayS = new double[rows][work.passes()];
        offLeadS = new double[rows][work.passes()];
        for (int r = 0; r < rows; r++) {
            Arrays.fill(onDelayS[r], Double.NaN);
            Arrays.fill(offLeadS[r], Double.NaN);
        }
        for (int q = 0; q < work.passes(); q++) {
            if (work.passFrom[q + 1] > work.passFrom[q]) {
                for (int r = 0; r < rows; r++) {
                    if (!misleads(r, q)) {
                        edges(r, q);
                    }
                }
                forgetUnlifted(q);
                if (!commanded()) {
                    takeSlopeOut(onDelayS, q);
                    takeSlopeOut(offLeadS, q);
                }
            }
        }
    }

    /** True if edges are measured against logged commands. */
    public boolean commanded() {
        return ratios.limits.commandLogged();
    }

    /** True for a row whose flow in pass q tells nothing about its edges. */
    private boolean misleads(int r, int q) {
        double from = work.timeS[work.passFrom[q]];
        double to = work.timeS[work.passFrom[q + 1] - 1];
        for (Case found : cases) {
            if (METER_AT_FAULT.contains(found.kind())
                    && found.concerns(r)
                    && found.fromS() < to
                    && found.toS() > from) {
                return true;
            }
        }
        return comeAndGo.stream().anyMatch(x -> x.row() == r && x.fromS() < to && x.toS() > from);
    }

    private boolean commandedOn(int r, int j) {
        return log.on(r, poses.record(work.step[j])) != 0;
    }

    private static int on(float[] flow, int from, int end, double usual) {
        int on = from;
        while (on < end && flow[on] < ON * usual) {
            on++;
        }
        return on;
    }

    private static int off(float[] flow, int from, int end, double usual) {
        int off = end;
        while (off > from && flow[off - 1] < ON * usual) {
            off--;
        }
        return off;
    }

    /** The first entry, from min on, of the commands without a break that entry j belongs to. */
    private int commandBegan(int r, int j, int min) {
        int first = j;
        while (first > min && commandedOn(r, first - 1)) {
            first--;
        }
        return first;
    }

    /** The end (exclusive), up to max, of the commands without a break that the entry before j belongs to, or that ended before it. */
    private int commandEnded(int r, int j, int max) {
        int end = Math.min(j, max);
        while (end > 1 && !commandedOn(r, end - 1)) {
            end--;
        }
        while (end < max && commandedOn(r, end)) {
            end++;
        }
        return end;
    }

    private void edges(int r, int q) {
        int from = work.passFrom[q];
        int end = work.passFrom[q + 1];
        double usual = usual(r, from, end);
        if (!(usual > 0)) {
            return;
        }
        int first = from;
        int last = end;
        if (commanded()) {
            while (first < end && !commandedOn(r, first)) {
                first++;
            }
            while (last > first && !commandedOn(r, last - 1)) {
                last--;
            }
            if (first >= last) {
                return;
            }
        }
        float[] flow = ratios.flowLPerS[r];
        int on = on(flow, from, end, usual);
        int off = off(flow, from, end, usual);
        if (on >= off) {
            return;
        }
        // The target may differ along the pass.
        double atStart = usualNear(flow, on, end, true, usual);
        double atEnd = usualNear(flow, off - 1, from, false, usual);
        on = on(flow, from, end, atStart);
        off = off(flow, from, end, atEnd);
        if (on >= off) {
            return;
        }
        if (commanded()) {
            // Commands flicker along an edge for less than a valve takes: those that the flow followed count.
            first = commandedOn(r, on) ? commandBegan(r, on, first) : first;
            last = commandEnded(r, off, last);
        }
        double lagS = meanLagS + ratios.limits.skewS(r);
        double delay = poses.timeS(work.step[on]) - poses.timeS(work.step[first]);
        if (commanded() || delay < UNEXPLAINED_S + lagS || covered(r, from, on) < COVERED) {
            onDelayS[r][q] = delay - lagS;
        }
        double shown = poses.timeS(work.endStep[last - 1]) - poses.timeS(work.endStep[off - 1]);
        double lead = lagS + (shown > 0 ? shown : -trail(r, work.endStep[last - 1], atEnd));
        if (commanded() || lead < UNEXPLAINED_S || covered(r, earlier(off, from, lagS), end) < COVERED) {
            offLeadS[r][q] = lead;
        }
    }

    /** The entry so many seconds before entry j of a pass that begins at entry from. */
    private int earlier(int j, int from, double seconds) {
        int at = j;
        while (at > from && work.timeS[j - 1] - work.timeS[at - 1] < seconds) {
            at--;
        }
        return at;
    }

    private double covered(int r, int from, int end) {
        return end <= from ? 0 : ratios.evaluated.covered().share(r, work.step[from], work.endStep[end - 1]);
    }

    /** How long the flow goes on after the lift or the command to stop, s. */
    private double trail(int r, int step, double usual) {
        int k = step;
        while (k < poses.steps()
                && (commanded() || !poses.working(k))
                && poses.record(k) >= 0
                && delivery.flowLPerS(ratios.product, r, k) >= ON * usual) {
            k++;
        }
        return poses.timeS(Math.min(k, poses.poses() - 1)) - poses.timeS(step);
    }

    /** Median flow of row r in a pass, from some of its records. */
    private double usual(int r, int from, int end) {
        int stride = Math.max(1, (end - from) / 40);
        double[] some = new double[(end - from) / stride + 1];
        int n = 0;
        for (int j = from; j < end; j += stride) {
            if (!ratios.evaluated.shut(r).get(j)) {
                some[n++] = ratios.flowLPerS[r][j];
            }
        }
        return n < 5 ? Double.NaN : RobustStatistics.median(some, n);
    }

    /** Median flow in the seconds after (or before) an edge at entry at, when it has settled; usual where the pass is too short. */
    private double usualNear(float[] flow, int at, int limit, boolean after, double usual) {
        double[] near = new double[Math.abs(limit - at) + 1];
        int direction = after ? 1 : -1;
        double fromS = SETTLED_S + ratios.limits.smearS();
        int n = 0;
        for (int j = at; direction * (limit - j) > 0; j += direction) {
            double awayS = Math.abs(work.timeS[j] - work.timeS[at]);
            if (awayS > fromS + NEAR_S) {
                break;
            }
            if (awayS >= fromS) {
                near[n++] = flow[j];
            }
        }
        double median = n < MIN_NEAR ? Double.NaN : RobustStatistics.median(near, n);
        // A row that comes and goes may give nothing just there.
        return median > ON * usual ? median : usual;
    }

    /** Takes out starts and ends at which the bar was not lowered or lifted. */
    private void forgetUnlifted(int q) {
        int start = work.step[work.passFrom[q]];
        int end = work.endStep[work.passFrom[q + 1] - 1];
        boolean lowered = q == 0 || lifted(work.endStep[work.passFrom[q] - 1], start);
        boolean lifted = work.passFrom[q + 1] == work.n || lifted(end, work.step[work.passFrom[q + 1]]);
        for (int r = 0; r < onDelayS.length; r++) {
            onDelayS[r][q] = lowered ? onDelayS[r][q] : Double.NaN;
            offLeadS[r][q] = lifted ? offLeadS[r][q] : Double.NaN;
        }
    }

    /** True if the bar was lifted between two steps. */
    private boolean lifted(int from, int to) {
        if (!log.hasDown()) {
            double east = poses.dropEastM(to) - poses.dropEastM(from);
            double north = poses.dropNorthM(to) - poses.dropNorthM(from);
            return Math.hypot(east, north) > NOT_LIFTED_M;
        }
        for (int k = from; k < to; k++) {
            if (poses.record(k) < 0 || log.down(poses.record(k)) == 0) {
                return true;
            }
        }
        return false;
    }

    /** The largest difference between two rows' delays in pass q, s. */
    private static double widest(double[][] delayS, int q) {
        double[] known = Arrays.stream(delayS)
                .mapToDouble(ofRow -> ofRow[q])
                .filter(s -> !Double.isNaN(s))
                .sorted()
                .toArray();
        return known.length == 0 ? 0 : known[known.length - 1] - known[0];
    }

    /** Takes the line through a pass's delays out of them where they rise or fall evenly across the bar. */
    private void takeSlopeOut(double[][] delayS, int q) {
        int rows = delayS.length;
        double[] slopes = new double[rows * (rows - 1) / 2];
        int pairs = 0;
        int known = 0;
        for (int a = 0; a < rows; a++) {
            known += Double.isNaN(delayS[a][q]) ? 0 : 1;
            for (int b = a + 1; b < rows; b++) {
                double rise = delayS[b][q] - delayS[a][q];
                if (!Double.isNaN(rise)) {
                    slopes[pairs++] = rise / (work.atM[b] - work.atM[a]);
                }
            }
        }
        if (known < MIN_SLOPED_ROWS) {
            if (widest(delayS, q) >= MIN_SLOPE_S + work.intervalS) {
                // A slope or single rows: too few to tell.
                Arrays.stream(delayS).forEach(ofRow -> ofRow[q] = Double.NaN);
            }
            return;
        }
        double slope = RobustStatistics.median(slopes, pairs);
        double range = Math.abs(slope) * 2 * work.halfWidthM;
        double[] level = new double[known];
        int n = 0;
        for (int r = 0; r < rows; r++) {
            if (!Double.isNaN(delayS[r][q])) {
                level[n++] = delayS[r][q] - slope * work.atM[r];
            }
        }
        double scatter = RobustStatistics.sigma(level);
        if (range < MIN_SLOPE_S + work.intervalS
                || scatter > MAX_SCATTER * range + MAX_SCATTER_INTERVALS * work.intervalS) {
            return;
        }
        // The bar is lowered as its first row enters and lifted as its last one leaves: that row has the bar's delay.
        double first = Double.POSITIVE_INFINITY;
        for (int r = 0; r < rows; r++) {
            first = Double.isNaN(delayS[r][q]) ? first : Math.min(first, slope * work.atM[r]);
        }
        for (int r = 0; r < rows; r++) {
            delayS[r][q] -= slope * work.atM[r] - first;
        }
    }
}
