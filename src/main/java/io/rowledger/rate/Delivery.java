package io.rowledger.rate;

import java.util.BitSet;

/**
 * What left each outlet in each step: flow with the product's lag taken out, target, and whether the outlet was
 * delivering. Step k, outlet r (0 at the left), product p (rig order).
 */
public final class Delivery {
    private final double[][][] flowLPerS;
    private final double[][] targetLPerM2;
    private final BitSet[] delivering;
    private final int[] record;

    Delivery(double[][][] flowLPerS, double[][] targetLPerM2, BitSet[] delivering, int[] record) {
        this.flowLPerS = flowLPerS;
        this.targetLPerM2 = targetLPerM2;
        this.delivering = delivering;
        this.record = record;
    }

    /** Flow of outlet r in step k, L/s; 0 where the log had no figure. */
    public double flowLPerS(int p, int r, int k) {
        return flowLPerS[p][r][record[k]];
    }

    /** Target rate in step k, L/m²; NaN where nobody gave one. */
    public double targetLPerM2(int p, int k) {
        double[] column = targetLPerM2[p];
        return column.length == 1 ? column[0] : column[record[k]];
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
