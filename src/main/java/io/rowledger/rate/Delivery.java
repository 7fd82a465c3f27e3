package io.rowledger.rate;

import io.rowledger.log.Metering;
import java.util.BitSet;
import org.jspecify.annotations.Nullable;

/**
 * What left each outlet in each step: flow with the product's lag removed, target, and whether the outlet delivered. Step k,
 * outlet r (from 0 at the left), product p (rig order). A flow that the log does not tell is unknown, never zero.
 */
public final class Delivery {
    private final double[][][] flowLPerS;
    private final @Nullable MeterShares[] shares;
    private final Metering metering;
    private final Targets targets;
    private final BitSet[] delivering;
    private final int[] record;
    /** Records with an unknown flow, by product and outlet or meter. */
    private final BitSet[][] unknown;

    /**
     * Takes over the arrays; a NaN flow is unknown.
     *
     * @param flowLPerS by product, then row or, where the product has shares, meter
     * @param shares by product; null where each row has its own meter
     */
    Delivery(
            double[][][] flowLPerS,
            @Nullable MeterShares[] shares,
            Metering metering,
            Targets targets,
            BitSet[] delivering,
            int[] record) {
        this.flowLPerS = flowLPerS;
        this.shares = shares;
        this.metering = metering;
        this.targets = targets;
        this.delivering = delivering;
        this.record = record;
        this.unknown = new BitSet[flowLPerS.length][];
        for (int p = 0; p < flowLPerS.length; p++) {
            unknown[p] = new BitSet[flowLPerS[p].length];
            for (int column = 0; column < flowLPerS[p].length; column++) {
                unknown[p][column] = new BitSet();
                markUnknown(p, column);
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
        MeterShares shared = shares[p];
        if (shared == null) {
            return flowLPerS[p][r][record[k]];
        }
        int meter = shared.meterOf(r);
        return meter < 0 ? 0 : flowLPerS[p][meter][record[k]] * shared.share(r, k);
    }

    /** Returns the flow of all outlets or meters of product p in a record of the log, without the lag, L/s; unknown flow is 0. */
    public double barFlowLPerS(int p, int logRecord) {
        double sum = 0;
        for (double[] column : flowLPerS[p]) {
            sum += column[logRecord];
        }
        return sum;
    }

    /** Returns how rows and meters belong together: with a shared meter, the flows of its rows are shares by area. */
    public Metering metering() {
        return metering;
    }

    /** Returns the column of outlet r: its own or that of its meter. Rig files give every row a meter. */
    private int column(int p, int r) {
        MeterShares shared = shares[p];
        return shared == null ? r : Math.max(0, shared.meterOf(r));
    }

    /** Returns true if the log tells the flow of product p at outlet r in step k. */
    public boolean known(int p, int r, int k) {
        return !unknown[p][column(p, r)].get(record[k]);
    }

    /** Returns true if the log tells the flow of product p at outlet r in every record. */
    public boolean allKnown(int p, int r) {
        return unknown[p][column(p, r)].isEmpty();
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
