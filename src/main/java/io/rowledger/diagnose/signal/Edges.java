package io.rowledger.diagnose.signal;

import io.rowledger.finding.FindingKind;
import io.rowledger.stats.RobustStatistics;
import io.rowledger.track.Poses;
import java.util.Arrays;

/**
 * When each row's flow came on after the bar was lowered, and when it went off before the bar was lifted, pass by pass.
 * The edge is where the flow passes half of the row's median flow in the pass. NaN if the row did not deliver, ran over
 * covered ground there, or had a faulty meter.
 */
public final class Edges {
    private static final double ON = 0.5;

    /** Share of prior coverage from which covered ground explains a late start or early stop (1). */
    private static final double COVERED = 0.3;

    /** Delays below this are kept without looking at prior coverage, s. */
    private static final double UNEXPLAINED_S = 0.4;

    /** [row][pass], s; positive late. */
    public final double[][] onDelayS;
    /** [row][pass], s; positive early, negative where flow goes on after the lift. */
    public final double[][] offLeadS;

    private final Evidence e;
    private final Poses poses;

    Edges(Evidence e) {
        this.e = e;
        this.poses = e.strips.poses();
        onDelayS = new double[e.rows()][e.work.passes()];
        offLeadS = new double[e.rows()][e.work.passes()];
        for (int r = 0; r < e.rows(); r++) {
            Arrays.fill(onDelayS[r], Double.NaN);
            Arrays.fill(offLeadS[r], Double.NaN);
            for (int q = 0; q < e.work.passes(); q++) {
                if (e.work.passFrom[q + 1] > e.work.passFrom[q] && !meterAtFault(r, q)) {
                    edges(r, q);
                }
            }
        }
    }

    private boolean meterAtFault(int r, int q) {
        double from = e.work.timeS[e.work.passFrom[q]];
        double to = e.work.timeS[e.work.passFrom[q + 1] - 1];
        for (Case found : e.cases()) {
            boolean meter = found.kind() == FindingKind.METER_STUCK
                    || found.kind() == FindingKind.METER_DROPOUT
                    || found.kind() == FindingKind.CHANNELS_SWAPPED
                    || found.kind() == FindingKind.PLUGGED;
            if (meter && found.concerns(r) && found.fromS() < to && found.toS() > from) {
                return true;
            }
        }
        return false;
    }

    private void edges(int r, int q) {
        WorkingSamples work = e.work;
        int from = work.passFrom[q];
        int end = work.passFrom[q + 1];
        double usual = usual(r, from, end);
        if (!(usual > 0)) {
            return;
        }
        float[] flow = e.ratios.flowLPerS[r];
        int on = from;
        while (on < end && flow[on] < ON * usual) {
            on++;
        }
        int off = end;
        while (off > from && flow[off - 1] < ON * usual) {
            off--;
        }
        if (on >= off) {
            return;
        }
        double delay = poses.timeS(work.step[on]) - poses.timeS(work.step[from]);
        if (delay < UNEXPLAINED_S || covered(r, from, on) < COVERED) {
            onDelayS[r][q] = delay;
        }
        double lead = poses.timeS(work.endStep[end - 1]) - poses.timeS(work.endStep[off - 1]);
        if (lead < UNEXPLAINED_S || covered(r, off, end) < COVERED) {
            offLeadS[r][q] = lead > 0 ? lead : -trail(r, work.endStep[end - 1], usual);
        }
    }

    private double covered(int r, int from, int end) {
        return e.ratios.evaluated.covered().share(r, e.work.step[from], e.work.endStep[end - 1]);
    }

    /** How long the flow goes on after the lift, s. */
    private double trail(int r, int step, double usual) {
        int k = step;
        while (k < poses.steps()
                && !poses.working(k)
                && poses.record(k) >= 0
                && e.delivery.flowLPerS(e.ratios.product, r, k) >= ON * usual) {
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
            if (!e.ratios.evaluated.shut(r).get(j)) {
                some[n++] = e.ratios.flowLPerS[r][j];
            }
        }
        return n < 5 ? Double.NaN : RobustStatistics.median(some, n);
    }
}
