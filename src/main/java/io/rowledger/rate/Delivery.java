package io.rowledger.rate;

import java.util.BitSet;

/**
 * What left each outlet in each step: flow with the product's lag removed, target, and whether the outlet delivered. Step k,
 * outlet r (from 0 at the left), product p (rig order). A flow that the log does not tell is unknown, never zero.
 */
public final class Delivery {
    private final double[][][] flowLPerS;
    private final Targets targets;
    private final BitSet[] delivering;
    private final int[] record;
    /** Records with an unknown flow, by product and outlet. */
    private final BitSet[][] unknown;

    /** Takes over the arrays; a NaN flow is unknown. */
    Delivery(double[][][] flowLPerS, Targets targets, BitSet[] delivering, int[] record) {
        this.unknown = new BitSet[flowLPerS.length][delivering.length];
        this.flowLPerS = flowLPerS;
        this.targets = targets;
        this.delivering = delivering;
        this.record = record;
        for (int p = 0; p < flowLPerS.length; p++) {
            for (int r = 0; r < delivering.length; r++) {
                unknown[p][r] = new BitSet();
                markUnknown(p, r);
            }
        }
    }

    /** Unknown flow is kept as 0, so that sums are sums of what is known. */
    private void markUnknown(int p, int r) {
        double[] flow = flowLPerS[p][r];
        boolean copied = false;
        for (int i = 0; i < flow.length; i++) {
            if (Double.isNaN(flow[i])) {
                if (!copied) {
                    flow = flow.clone();
                    flowLPerS[p][r] = flow;
                    copied = true;
                }
                flow[i] = 0;
                unknown[p][r].set(i);
            }
        }
    }

    /** Returns the flow of outlet r in step k, L/s; 0 if it is not {@link #known}. */
    public double flowLPerS(int p, int r, int k) {
        return flowLPerS[p][r][record[k]];
    }

    /** Returns true if the log tells the flow of product p at outlet r in step k. */
    public boolean known(int p, int r, int k) {
        return !unknown[p][r].get(record[k]);
    }

    /** Returns true if the log tells the flow of product p at outlet r in every record. */
    public boolean allKnown(int p, int r) {
        return unknown[p][r].isEmpty();
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
