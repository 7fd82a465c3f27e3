package io.rowledger.rate;

import java.util.List;

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
     * One pass, all outlets.
     *
     * @param pass from 1
     * @param sweptAreaM2 all outlets, m²
     * @param volumeL per product, metered while working, L
     * @param targetVolumeL per product, L; NaN without a target
     */
    public record PassTotals(int pass, double sweptAreaM2, double[] volumeL, double[] targetVolumeL) {}
}
