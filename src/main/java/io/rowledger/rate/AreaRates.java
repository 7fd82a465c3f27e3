package io.rowledger.rate;

import io.rowledger.rate.RowTotals.ProductTotals;
import io.rowledger.rate.RowTotals.TurnError;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Sums over areas with one rate each, which have no rows and no passes: ΣA (m²), Σ rate·A (L), Σ target·A (L). They are kept
 * as rows of a bar, divided by width, so that the job's totals are sums over rows as always; what a single row has means
 * nothing, and no document prints it.
 */
public final class AreaRates {
    private final double[] widthsM;
    private double sweptM2;
    private double appliedM2;
    private final double[] volumeL;
    private final double[] targetL;
    private final double[] meteredTargetL;
    private final double[] unknownM2;
    private final boolean[] known;

    /** Sums for a bar with these row widths, m, and a number of products. */
    public AreaRates(double[] widthsM, int products) {
        this.widthsM = widthsM.clone();
        volumeL = new double[products];
        targetL = new double[products];
        meteredTargetL = new double[products];
        unknownM2 = new double[products];
        known = new boolean[products];
    }

    /**
     * Adds an area.
     *
     * @param areaM2 its size, m²
     * @param applied true if anything was applied on it
     * @param rateLPerM2 per product, L/m²; NaN if unknown
     * @param targetLPerM2 per product, L/m²; NaN without a target, which leaves the target of the whole job unknown
     */
    public void add(double areaM2, boolean applied, double[] rateLPerM2, double[] targetLPerM2) {
        sweptM2 += areaM2;
        appliedM2 += applied ? areaM2 : 0;
        for (int p = 0; p < volumeL.length; p++) {
            targetL[p] += targetLPerM2[p] * areaM2;
            if (Double.isNaN(rateLPerM2[p])) {
                unknownM2[p] += areaM2;
            } else {
                known[p] = true;
                volumeL[p] += rateLPerM2[p] * areaM2;
                meteredTargetL[p] += targetLPerM2[p] * areaM2;
            }
        }
    }

    /** Returns the sums. */
    public Rates build() {
        double widthM = Arrays.stream(widthsM).sum();
        List<RowTotals> rows = new ArrayList<>();
        for (int r = 0; r < widthsM.length; r++) {
            double share = widthsM[r] / widthM;
            List<ProductTotals> products = new ArrayList<>();
            for (int p = 0; p < volumeL.length; p++) {
                products.add(new ProductTotals(
                        known[p] ? volumeL[p] * share : Double.NaN,
                        targetL[p] * share,
                        meteredTargetL[p] * share,
                        unknownM2[p] * share));
            }
            rows.add(new RowTotals(
                    r + 1, sweptM2 * share, appliedM2 * share, TurnError.UNKNOWN, TurnError.UNKNOWN, products));
        }
        return new Rates(rows, List.of(), List.of(), sweptM2, 0);
    }
}
