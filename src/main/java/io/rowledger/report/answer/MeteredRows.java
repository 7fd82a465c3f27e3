package io.rowledger.report.answer;

import io.rowledger.log.Metering;
import io.rowledger.rate.RowTotals;
import io.rowledger.rate.RowTotals.ProductTotals;
import io.rowledger.report.common.JobView;
import io.rowledger.report.common.ProductSums;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The smallest part of a bar whose volume is metered: a row with a meter of its own, or the rows that share a meter.
 *
 * @param rows from 1, ascending
 * @param sweptAreaM2 area swept while working, m²
 * @param appliedAreaM2 area swept while delivering, m²
 * @param volumeL metered while working, L; NaN if it is unknown
 * @param owedL target volume of the ground to be covered at a known flow, less what was rightly left off, L; NaN without a
 *     target
 * @param deviationPct volume against owed volume, or without a target against the mean of the bar, percent; NaN unknown
 */
public record MeteredRows(
        List<Integer> rows,
        double sweptAreaM2,
        double appliedAreaM2,
        double volumeL,
        double owedL,
        double deviationPct) {
    /** Copies the rows. */
    public MeteredRows {
        rows = List.copyOf(rows);
    }

    /** Returns the metered parts of a job from the left; none for a bar with one meter, and none for a map of areas. */
    public static List<MeteredRows> of(JobView job, int p) {
        Metering metering = job.log().metering(p);
        List<MeteredRows> parts = new ArrayList<>();
        if (metering == Metering.PER_ROW) {
            for (RowTotals row : job.rates().rows()) {
                parts.add(sum(job, p, List.of(row.row())));
            }
        } else if (metering == Metering.SHARED) {
            for (int[] rows : job.log().meterRows(p)) {
                parts.add(sum(
                        job,
                        p,
                        Arrays.stream(rows).mapToObj(row -> row + 1).sorted().toList()));
            }
        }
        return parts;
    }

    /** Returns true if several rows share the meter. */
    public boolean shared() {
        return rows.size() > 1;
    }

    private static MeteredRows sum(JobView job, int p, List<Integer> rows) {
        double sweptM2 = 0;
        double appliedM2 = 0;
        double volumeL = 0;
        double owedL = 0;
        for (int number : rows) {
            RowTotals row = job.rates().rows().get(number - 1);
            ProductTotals product = row.products().get(p);
            sweptM2 += row.sweptAreaM2();
            appliedM2 += row.appliedAreaM2();
            volumeL += product.volumeL();
            owedL += product.meteredTargetL() - job.coverage().shutOffCredit().ofRowL(p, number);
        }
        ProductSums sums = ProductSums.of(job.rates(), job.coverage(), p);
        double meanPct = sweptM2 > 0 && sums.volumeL() > 0
                ? (volumeL / sweptM2 / sums.meanSweptRateLPerM2() - 1) * 100
                : Double.NaN;
        return new MeteredRows(
                rows,
                sweptM2,
                appliedM2,
                volumeL,
                owedL,
                sums.hasTarget() ? ProductSums.offPct(volumeL, owedL) : meanPct);
    }
}
