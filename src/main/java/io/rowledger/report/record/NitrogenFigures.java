package io.rowledger.report.record;

/**
 * The record's figures as computed, SI, for files that programs read; NaN where unknown.
 *
 * @param jobKg nitrogen of this job, kg
 * @param jobKgPerM2 the same per covered area
 * @param totalKgPerM2 with earlier applications and credits, per covered area
 * @param comparedWith {@code plan}, {@code target} or {@code nothing}
 * @param withinPct share of the covered ground within 10 % of plan or target, percent
 * @param underPct share more than 10 % below, percent
 * @param overPct share more than 10 % above, percent
 */
public record NitrogenFigures(
        double jobKg,
        double jobKgPerM2,
        double totalKgPerM2,
        String comparedWith,
        double withinPct,
        double underPct,
        double overPct) {
    static NitrogenFigures of(RecordInput in) {
        PlanComparison plan = in.plan();
        return new NitrogenFigures(
                in.nutrients().jobKg().nitrogenKg(),
                in.nutrients().jobNitrogenKgPerM2(),
                in.nutrients().totalNitrogenKgPerM2(),
                !plan.known() ? "nothing" : plan.isPlan() ? "plan" : "target",
                plan.shares().within(),
                plan.shares().under(),
                plan.shares().over());
    }
}
