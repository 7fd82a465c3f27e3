package io.rowledger.rate;

import java.util.BitSet;

/**
 * What left each outlet in each step: flow with the product's lag taken out, target, and whether the outlet was
 * delivering. Step k, outlet r (0 at the left), product p (rig order).
 */
public final class Delivery {
    private final double[][][] flowLPerS;
    private final Targets targets;
    private final BitSet[] delivering;
    private final int[] record;

    Delivery(double[][][] flowLPerS, Targets targets, BitSet[] delivering, int[] record) {
        this.flowLPerS = flowLPerS;
        this.targets = targets;
        this.delivering = delivering;
        this.record = record;
    }

    /** Flow of outlet r in step k, L/s; 0 where the log had no figure. */
    public double flowLPerS(int p, int r, int k) {
        return flowLPerS[p][r][record[k]];
    }

    /**
     * Target rate of outlet r in step k, L/m²: the log's, else the prescription's at the place of the strip, else the rig
     * file's; NaN where nobody gave one.
     */
    public double targetLPerM2(int p, int r, int k) {
        return targets.lPerM2(p, r, k, record[k]);
    }

    /** Mean target of outlets [from, to) in step k, L/m²; where they have one in common, that one. */
    public double meanTargetLPerM2(int p, int from, int to, int k) {
        if (!targets.byRow(p, record[k])) {
            return targetLPerM2(p, from, k);
        }
        double sum = 0;
        for (int r = from; r < to; r++) {
            sum += targetLPerM2(p, r, k);
        }
        return sum / (to - from);
    }

    /** True where a prescription was given. */
    public boolean planned() {
        return targets.planned();
    }

    /** True where outlets have different targets in step k: the bar lies across a line between two zones. */
    public boolean targetsDiffer(int p, int k) {
        if (targets.byRow(p, record[k])) {
            for (int r = 1; r < rows(); r++) {
                if (Double.compare(targetLPerM2(p, r, k), targetLPerM2(p, 0, k)) != 0) {
                    return true;
                }
            }
        }
        return false;
    }

    /** True where outlet r was delivering in step k: working, with flow above 5 % of what the target asks. */
    public boolean delivering(int r, int k) {
        return delivering[r].get(k);
    }

    /** The delivering steps of outlet r. Shared, read only. */
    public BitSet deliveringSteps(int r) {
        return delivering[r];
    }

    /** Number of outlets. */
    public int rows() {
        return delivering.length;
    }

    /** Number of products. */
    public int products() {
        return flowLPerS.length;
    }
}
