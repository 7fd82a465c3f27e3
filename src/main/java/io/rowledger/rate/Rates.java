package io.rowledger.rate;

import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Areas and volumes of the job.
 *
 * @param rows per outlet, from the left
 * @param passes per pass, in order
 * @param passRows per pass, per outlet: {@code passRows.get(pass - 1).get(row - 1)}
 * @param sweptAreaM2 all outlets, m²
 * @param unsettledAreaM2 swept while the bar's angle was not known, m²
 */
public record Rates(
        List<RowTotals> rows,
        List<PassTotals> passes,
        List<List<RowTotals>> passRows,
        double sweptAreaM2,
        double unsettledAreaM2) {
    /** Copies the lists. */
    public Rates {
        rows = List.copyOf(rows);
        passes = List.copyOf(passes);
        passRows = List.copyOf(passRows);
    }

    /**
     * Returns the volume of product p metered while working, all outlets whose flow is known at least in part, L; NaN if no
     * outlet's is.
     */
    public double volumeL(int p) {
        return sumOfKnown(rows, p, RowTotals.ProductTotals::volumeL);
    }

    /** Returns target × swept area of product p, all outlets, L; NaN without a target. */
    public double targetVolumeL(int p) {
        return rows.stream()
                .mapToDouble(row -> row.products().get(p).targetVolumeL())
                .sum();
    }

    /** Returns target × area swept with a known flow of product p, all outlets, L; NaN without a target. */
    public double meteredTargetL(int p) {
        return rows.stream()
                .mapToDouble(row -> row.products().get(p).meteredTargetL())
                .sum();
    }

    /** Returns the area swept while the flow of product p is not known, all outlets, m². */
    public double unknownAreaM2(int p) {
        return rows.stream()
                .mapToDouble(row -> row.products().get(p).unknownAreaM2())
                .sum();
    }

    /** Sum over the outlets where the value is known; NaN if it is for none. */
    static double sumOfKnown(List<RowTotals> rows, int p, ToDoubleFunction<RowTotals.ProductTotals> value) {
        double sum = 0;
        boolean known = rows.isEmpty();
        for (RowTotals row : rows) {
            double one = value.applyAsDouble(row.products().get(p));
            if (!Double.isNaN(one)) {
                sum += one;
                known = true;
            }
        }
        return known ? sum : Double.NaN;
    }

    /**
     * One pass, all outlets.
     *
     * @param pass from 1
     * @param sweptAreaM2 all outlets, m²
     * @param volumeL per product, metered while working, L; NaN if no outlet's flow is known
     * @param targetVolumeL per product, target × swept area, L; NaN without a target
     * @param meteredTargetL per product, target × area swept with a known flow, L; NaN without a target
     */
    public record PassTotals(
            int pass, double sweptAreaM2, double[] volumeL, double[] targetVolumeL, double[] meteredTargetL) {
        /** Returns volume against the target volume of the area with a known flow, percent; NaN without either. */
        public double deviationPct(int p) {
            return RowTotals.deviationPct(volumeL[p], meteredTargetL[p]);
        }
    }
}
