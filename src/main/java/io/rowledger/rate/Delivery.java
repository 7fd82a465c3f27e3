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
     * Returns the target rate of outlet r in step k, L/m²: the log's, else the prescription's at the place of the strip, else
     * the rig file's; NaN if there is none.
     */
    public double targetLPerM2(int p, int r, int k) {
        return targets.lPerM2(p, r, k, record[k]);
    }

    /** Returns the mean target of outlets [from, to) in step k, L/m². */
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

    /** Returns true if there is a prescription. */
    public boolean hasPrescription() {
        return targets.hasPrescription();
    }

    /** Returns true if outlets have different targets in step k: the bar lies across a zone line. */
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

    /** Returns true if outlet r was delivering in step k: working, with flow above 5 % of the target. */
    public boolean delivering(int r, int k) {
        return delivering[r].get(k);
    }

    /** Returns the delivering steps of outlet r. Shared, not copied: read only. */
    public BitSet deliveringSteps(int r) {
        return delivering[r];
    }

    /** Returns the number of outlets. */
    public int rows() {
        return delivering.length;
    }

    /** Returns the number of products. */
    public int products() {
        return flowLPerS.length;
    }
}
