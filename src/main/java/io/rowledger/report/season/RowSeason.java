package io.rowledger.report.season;

import io.rowledger.finding.FindingKind;
import io.rowledger.stats.WeightedLine;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * One row of a bar with one product over the jobs of a season.
 *
 * <p>Its drift is the slope of its ratio to the other rows over the working hours of the season, by {@link WeightedLine}. The σ of
 * a job's ratio has two parts: what a median of n samples scatters, 1.2533·spread/√n, with one independent sample in
 * {@value #SAMPLE_S} s, and {@value #REPEATABILITY} for what a meter repeats from job to job (both common practice, no source).
 * A bar has many rows, so a drift is told only beyond the bound that keeps all rows together to one false alarm in ten seasons
 * (Bonferroni).
 *
 * @param row from 1 at the left
 * @param jobs one per job of the bar, in time order
 */
public record RowSeason(int row, List<OfJob> jobs) {
    /** Coverage of printed uncertainties, as everywhere in the reports. */
    static final double COVERAGE = 0.9;
    /** Time after which a sample no longer resembles an earlier one, s. */
    private static final double SAMPLE_S = 10;
    /** Standard deviation of a ratio from job to job with a meter in order (1). */
    private static final double REPEATABILITY = 0.005;
    /** Standard deviation of a median over that of a mean of normal samples: √(π/2). */
    private static final double MEDIAN = Math.sqrt(Math.PI / 2);
    /** Steps of the response times that the diagnosis tells apart, s. */
    private static final double RESPONSE_SIGMA_S = 0.5;
    /** A row that differs from the others by more than meters usually do (1); common practice, no source. */
    private static final double MAX_HEALTHY = 0.05;

    private static final double SECONDS_PER_HOUR = 3600;

    /** Findings that a meter, or what is connected to it, makes. */
    private static final Set<FindingKind> METER =
            EnumSet.of(FindingKind.METER_SCALE, FindingKind.METER_STUCK, FindingKind.METER_DROPOUT);

    /** Findings that are a lasting share of the other rows. */
    private static final Set<FindingKind> LEVELS =
            EnumSet.of(FindingKind.METER_SCALE, FindingKind.RESTRICTED, FindingKind.LEAKING);

    /**
     * The row in one job.
     *
     * @param workedS working time of the bar until the middle of the job, s
     * @param ratio median of the healthy row over the other rows (1); NaN if it was never healthy or never compared
     * @param overall the same with its faults (1); NaN if it was never compared
     * @param spread robust standard deviation of the samples (1)
     * @param responseS time to follow speed and target, s; NaN if nothing moved enough to tell
     * @param evaluatedS time it was compared while healthy, s
     * @param findings kinds of the findings that concern this row alone or with others
     */
    public record OfJob(
            double workedS,
            double ratio,
            double overall,
            double spread,
            double responseS,
            double evaluatedS,
            List<FindingKind> findings) {
        /** Copies the findings. */
        public OfJob {
            findings = List.copyOf(findings);
        }

        /** What the ledger prints: the healthy ratio, or the overall one. */
        double shown() {
            return Double.isNaN(ratio) ? overall : ratio;
        }

        /** The ratio that a change over the season is read from: a lasting level counts, a row that plugged doesn't. */
        double level() {
            return Double.isNaN(ratio) && !findings.isEmpty() && LEVELS.containsAll(findings) ? overall : ratio;
        }

        double sigma() {
            double sampled = MEDIAN * spread / Math.sqrt(Math.max(1, evaluatedS / SAMPLE_S));
            return Math.hypot(REPEATABILITY, Double.isNaN(sampled) ? 0 : sampled);
        }
    }

    /** Copies the list. */
    public RowSeason {
        jobs = List.copyOf(jobs);
    }

    /**
     * A change over the season.
     *
     * @param change from the first to the last job
     * @param uncertainty half-width with 90 % coverage
     * @param told true if it is beyond what all rows together show by chance
     */
    public record Drift(double change, double uncertainty, boolean told) {
        static final Drift UNKNOWN = new Drift(Double.NaN, Double.NaN, false);
    }

    /** Change of the ratio to the other rows (1); the bar has this many rows. */
    public Drift ratioDrift(int rows) {
        return drift(
                jobs.stream().mapToDouble(OfJob::level).toArray(),
                jobs.stream().mapToDouble(OfJob::sigma).toArray(),
                rows);
    }

    /** Change of the response time, s; the bar has this many rows. */
    public Drift responseDrift(int rows) {
        return drift(
                jobs.stream().mapToDouble(OfJob::responseS).toArray(),
                jobs.stream().mapToDouble(job -> RESPONSE_SIGMA_S).toArray(),
                rows);
    }

    private Drift drift(double[] y, double[] sigma, int rows) {
        double[] hours = jobs.stream()
                .mapToDouble(job -> job.workedS() / SECONDS_PER_HOUR)
                .toArray();
        WeightedLine line = WeightedLine.through(hours, y, sigma);
        if (Double.isNaN(line.slope())) {
            return Drift.UNKNOWN;
        }
        double span = hours[hours.length - 1] - hours[0];
        double bound = line.uncertainty(1 - (1 - COVERAGE) / rows);
        return new Drift(line.slope() * span, line.uncertainty(COVERAGE) * span, Math.abs(line.slope()) > bound);
    }

    /** Jobs in which the row's meter was found to err. */
    int meterFindings() {
        return (int) jobs.stream()
                .filter(job -> job.findings().stream().anyMatch(METER::contains))
                .count();
    }

    /** The last known ratio to the other rows; NaN if there is none. */
    double last() {
        double last = Double.NaN;
        for (OfJob job : jobs) {
            last = Double.isNaN(job.shown()) ? last : job.shown();
        }
        return last;
    }

    /** True if the row, while healthy, stood apart from the others in the last job that compared it. */
    boolean standsApart() {
        double healthy = Double.NaN;
        for (OfJob job : jobs) {
            healthy = Double.isNaN(job.ratio()) ? healthy : job.ratio();
        }
        return Math.abs(healthy - 1) > MAX_HEALTHY;
    }

    /** True if its meter should be checked before the next season. */
    public boolean toCalibrate(int rows) {
        return meterFindings() > 0 || ratioDrift(rows).told() || standsApart();
    }
}
