package io.rowledger.report.season;

import io.rowledger.rate.NutrientKg;
import io.rowledger.uncertainty.Interval;
import java.util.List;

/**
 * One field over a season.
 *
 * @param farm as entered, or empty
 * @param field as entered, or a name made from the folder
 * @param jobs its jobs, in time order
 * @param areaM2 the area that rates refer to, m²: covered area of the one job, or area of the boundary that several jobs have
 *     in common; NaN for several jobs without one, which may lie side by side or on one another
 * @param kg nutrients of the jobs
 * @param earlierKg nitrogen of earlier applications that are not jobs of the ledger, kg
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

    /** The same per area of the field, kg/m². */
    public double totalKgPerM2() {
        return totalKg() / areaM2;
    }

    /** Nitrogen of the jobs with its bounds, kg; bounds add up as in {@link Season#sum}. */
    public Interval nitrogenWithin() {
        return Season.sum(jobs.stream().map(SeasonJob::nitrogenWithin).toList());
    }

    /** Covered area of all jobs, m²: ground that two jobs covered counts twice. */
    public double coveredM2() {
        return jobs.stream().mapToDouble(SeasonJob::coveredM2).sum();
    }
}
