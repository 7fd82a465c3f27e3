package io.rowledger.report.season;

import io.rowledger.rate.NutrientKg;
import io.rowledger.uncertainty.Interval;
import java.util.List;

/**
 * One field over a season.
 *
 * @param farm as entered, or empty
 * @param field as entered, or what stands for it
 * @param jobs its jobs, in time order
 * @param areaM2 the ground that rates are over, m²: covered ground of the one job, ground inside the boundary of several;
 *     NaN where several jobs have no boundary, since they may lie side by side or on one another
 * @param kg what the jobs put on
 * @param earlierKg nitrogen of earlier applications that are no jobs of the ledger, kg
 * @param creditKg nitrogen credits, kg
 * @param planKgPerM2 the latest job's plan, kg/m²; NaN without one
 * @param capKgPerM2 the latest job's cap, kg/m²; NaN without one
 */
public record SeasonField(
        String farm,
        String field,
        List<SeasonJob> jobs,
        double areaM2,
        NutrientKg kg,
        double earlierKg,
        double creditKg,
        double planKgPerM2,
        double capKgPerM2) {
    /** Copies the jobs. */
    public SeasonField {
        jobs = List.copyOf(jobs);
    }

    /** Nitrogen of jobs, earlier applications and credits, kg. */
    public double totalKg() {
        return kg.nitrogenKg() + earlierKg + creditKg;
    }

    /** The same over the field's ground, kg/m². */
    public double totalKgPerM2() {
        return totalKg() / areaM2;
    }

    /** Nitrogen of the jobs with its bounds, kg; see {@link Season#sum}. */
    public Interval nitrogenWithin() {
        return Season.sum(jobs.stream().map(SeasonJob::nitrogenWithin).toList());
    }

    /** Covered ground of all jobs, m²: ground that two jobs covered counts twice. */
    public double workedM2() {
        return jobs.stream().mapToDouble(SeasonJob::coveredM2).sum();
    }
}
