package io.rowledger.report.record;

import io.rowledger.analysis.Analysis;
import io.rowledger.report.record.NitrogenAnswer.Plan;

/**
 * The record's figures as computed, SI, for files that programs read; NaN where unknown.
 *
 * @param jobKg nitrogen of this job, kg
 * @param jobKgPerM2 the same per covered area
 * @param totalKgPerM2 with earlier applications and credits
 * @param comparedWith {@code plan}, {@code target} or {@code nothing}
 * @param withinPct share of the covered ground within 10 % of it
 * @param underPct share more than 10 % below
 * @param overPct share more than 10 % above
 */
public record NitrogenFigures(
        double jobKg,
        double jobKgPerM2,
        double totalKgPerM2,
        String comparedWith,
        double withinPct,
        double underPct,
        double overPct) {
    /** The figures of this analysis. */
    public static NitrogenFigures of(Analysis a) {
        NitrogenSums sums = NitrogenSums.of(a);
        Plan plan = Plan.of(a, sums, NitrogenGrid.of(a));
        return new NitrogenFigures(
                sums.jobKg(),
                sums.jobKgPerM2(),
                sums.totalKgPerM2(),
                plan.known() ? plan.name() : "nothing",
                plan.shares().within(),
                plan.shares().under(),
                plan.shares().over());
    }
}
