package io.rowledger.uncertainty;

import io.rowledger.coverage.Coverage;
import io.rowledger.parallel.ParallelTasks;
import io.rowledger.uncertainty.PerturbedCoverage.Shares;
import java.util.Arrays;
import java.util.List;

/**
 * Uncertainty of the covered, overlap and skip area, by a Monte Carlo simulation.
 *
 * <p>Position noise not only blurs these areas but biases them: two passes that meet exactly overlap in one place of the log
 * and gape in another. Two cases bound the truth, and a log cannot tell which of them holds:
 * <ul>
 * <li>The receiver erred and the tractor drove true: the log shows errors that are not on the ground. The true overlap is
 *     smaller than the measured one, at most by what simulation and extrapolation give (J. Cook, L. Stefanski, J. Am. Stat.
 *     Assoc. 89 (1994) 1314-1328): A(λ) is the mean area with λ times the error's variance added, A(−1) the area without
 *     error. For passes that meet, with gaps that scatter by the error alone, A(λ) = a + b·√(1 + λ), so A(−1) = A(0) −
 *     (1 + √2)·(A(1) − A(0)); if the gaps also scatter by themselves, the curve is flatter and the truth is nearer to A(0).
 * <li>The tractor was steered by the same receiver: the log looks better than the ground, and the truth is A(1).
 * </ul>
 *
 * <p>Two kinds of error are known to be on one side. Errors of the tape measure (side offset, knives) are in the ground in
 * either case, because steering and log use the same lengths: they are added in both and never taken off. Where between two
 * records a strip starts or stops is in the log only: it is taken off in the first case and added in neither. Lengths along the
 * direction of travel belong to the receiver: they are in the log if a bar is lowered by eye, in the ground if a map shuts rows
 * off.
 */
final class CoverageUncertainty {
    private static final Shares NONE = new Shares(0, 0, 0);
    private static final Shares ALL = new Shares(1, 1, 1);
    private static final Shares LOG = new Shares(1, 1, 0);
    private static final Shares RECEIVER = new Shares(1, 0, 0);

    /** Samples of all errors; the standard deviation of 48 has a standard error of 10 %. */
    private static final int ALL_SAMPLES = 48;

    /** Samples without the tape's errors, and again of the receiver's alone: only means are taken from them. */
    private static final int PART_SAMPLES = 32;

    /** Number of all samples. */
    static final int SAMPLES = ALL_SAMPLES + 2 * PART_SAMPLES;

    /** 1 + √2. */
    private static final double EXTRAPOLATION = 1 + Math.sqrt(2);

    private static final int AREAS = 3;

    /** Covered area, m². */
    final UncertaintyDistribution covered;
    /** Overlap area, m². */
    final UncertaintyDistribution overlap;
    /** Skip area, m². */
    final UncertaintyDistribution skips;

    private CoverageUncertainty(
            UncertaintyDistribution covered, UncertaintyDistribution overlap, UncertaintyDistribution skips) {
        this.covered = covered;
        this.overlap = overlap;
        this.skips = skips;
    }

    static CoverageUncertainty of(UncertaintyInputs job, Coverage coverage, long seed, int threads) {
        PerturbedCoverage ground = new PerturbedCoverage(job.track().passes(), job.strips(), coverage);
        if (ground.isEmpty()) {
            // No strip delivers, so there is nothing to perturb: nothing covered, unless a meter or an unknown flow
            // hides it.
            UncertaintyDistribution none = UncertaintyDistribution.about(0, 0, 0);
            return new CoverageUncertainty(none, none, UncertaintyDistribution.about(coverage.skipAreaM2(), 0, 0));
        }
        double[] plain = areas(job, ground, seed, NONE);
        List<double[]> samples = ParallelTasks.map(SAMPLES, threads, i -> {
            int of = i < ALL_SAMPLES ? i : (i - ALL_SAMPLES) % PART_SAMPLES;
            Shares shares = i < ALL_SAMPLES ? ALL : i < ALL_SAMPLES + PART_SAMPLES ? LOG : RECEIVER;
            return areas(job, ground, seed + 1 + of, shares);
        });
        List<double[]> all = samples.subList(0, ALL_SAMPLES);
        List<double[]> log = samples.subList(ALL_SAMPLES, ALL_SAMPLES + PART_SAMPLES);
        List<double[]> receiver = samples.subList(ALL_SAMPLES + PART_SAMPLES, SAMPLES);
        double[] value = {coverage.coveredAreaM2(), coverage.overlapAreaM2(), coverage.skipAreaM2()};
        UncertaintyDistribution[] of = new UncertaintyDistribution[AREAS];
        for (int f = 0; f < AREAS; f++) {
            of[f] = distribution(value[f], plain[f], column(all, f), column(log, f), column(receiver, f));
        }
        return new CoverageUncertainty(of[0], of[1], of[2]);
    }

    /**
     * Returns the same with ground that faulty meters and unknown flows leave open.
     *
     * @param maybeAppliedM2 area that may have been served without a flow in the log: it may be covered, and no skip
     * @param maybeNotAppliedM2 area that may not have been served in spite of a flow in the log
     */
    CoverageUncertainty widened(double maybeAppliedM2, double maybeNotAppliedM2) {
        return new CoverageUncertainty(
                covered.widened(-maybeNotAppliedM2, maybeAppliedM2, 0),
                overlap.widened(-Math.min(overlap.from(), maybeNotAppliedM2), 0, 0),
                skips.widened(-maybeAppliedM2, maybeNotAppliedM2, 0));
    }

    /** Covered, overlap and skip area of one sample, m². */
    private static double[] areas(UncertaintyInputs job, PerturbedCoverage ground, long seed, Shares shares) {
        ScanLines lines = ground.lines();
        ground.sum(new ErrorSample(job, ground, seed), shares, lines);
        return new double[] {lines.coveredM2(), lines.overlapM2(), lines.skipM2()};
    }

    private static double[] column(List<double[]> samples, int f) {
        return samples.stream().mapToDouble(sample -> sample[f]).toArray();
    }

    private static UncertaintyDistribution distribution(
            double value, double plain, double[] all, double[] log, double[] receiver) {
        double mean = mean(all);
        double logMean = mean(log);
        double tape = mean - logMean;
        double steered = value + tape + mean(receiver) - plain;
        double errorless = value + tape - EXTRAPOLATION * (logMean - plain);
        // The mean of so few samples has its own variance, which the extrapolation enlarges.
        double sampling = EXTRAPOLATION * EXTRAPOLATION * variance(log, logMean) / log.length;
        return new UncertaintyDistribution(
                Math.min(steered, errorless),
                Math.max(steered, errorless),
                Math.sqrt(variance(all, mean) + sampling),
                0);
    }

    private static double mean(double[] values) {
        return Arrays.stream(values).average().orElseThrow();
    }

    private static double variance(double[] values, double mean) {
        return Arrays.stream(values).map(x -> (x - mean) * (x - mean)).sum() / (values.length - 1);
    }
}
