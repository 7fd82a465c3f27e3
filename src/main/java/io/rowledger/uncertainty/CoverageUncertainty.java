package io.rowledger.uncertainty;

import io.rowledger.coverage.Coverage;
import io.rowledger.parallel.ParallelTasks;
import io.rowledger.uncertainty.PerturbedCoverage.Parts;
import java.util.Arrays;
import java.util.List;

/**
 * The doubt about covered, doubled and missed ground, from laying it again with drawn errors.
 *
 * <p>These figures are not only blurred by position noise but biased: two passes that meet exactly look overlapped here and
 * apart there. Two cases bound what is true, and a log cannot tell which holds:
 * <ul>
 * <li>the receiver was wrong about a tractor that drove true: the log shows errors that were not on the ground. Less overlap
 *     is true than measured, by no more than simulation and extrapolation give (J. Cook, L. Stefanski, J. Am. Stat. Assoc. 89
 *     (1994) 1314-1328): A(λ) is the mean area with λ times the error's variance added, A(−1) the area without error. For
 *     passes that meet, whose seams scatter by the error alone, A(λ) = a + b·√(1 + λ), so A(−1) = A(0) − (1 + √2)·(A(1) −
 *     A(0)); where seams scatter by themselves too the curve is flatter and the truth lies nearer to the figure;
 * <li>the tractor was steered by the same wrong receiver: the log looks better than the ground, and the truth is as A(1).
 * </ul>
 *
 * <p>Two kinds of error are not in question. What the tape measure got wrong, the side and the knives' places, is in the
 * ground whoever steered, for steering and log go by the same figures: it is added in both cases and never taken off. Where
 * between two records a strip starts or stops is in the log and not in the ground: it is taken off in the first case and added
 * in neither. Lengths along the way stay with the receiver: they are in the log where a bar is lowered by eye, in the ground
 * where a map shuts rows off.
 */
final class CoverageUncertainty {
    private static final Parts NOTHING = new Parts(0, 0, 0);
    private static final Parts ALL = new Parts(1, 1, 1);
    private static final Parts LOG = new Parts(1, 1, 0);
    private static final Parts RECEIVER = new Parts(1, 0, 0);

    /** Draws of all errors; the standard deviation of 48 is good to 10 %. */
    private static final int WHOLE = 48;

    /** As many of them are drawn again without the tape's errors, and again with the receiver's alone: means only. */
    private static final int OF_PARTS = 32;

    /** All of them. */
    static final int DRAWS = WHOLE + 2 * OF_PARTS;

    /** 1 + √2. */
    private static final double EXTRAPOLATED = 1 + Math.sqrt(2);

    private static final int FIGURES = 3;

    /** Covered ground, m². */
    final UncertaintyDistribution covered;
    /** Doubled ground, m². */
    final UncertaintyDistribution overlap;
    /** Missed ground, m². */
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
            UncertaintyDistribution none = UncertaintyDistribution.about(Double.NaN, Double.NaN, Double.NaN);
            return new CoverageUncertainty(none, none, none);
        }
        ScanLines lines = ground.lines();
        ground.lay(new ErrorSample(job, ground, seed), NOTHING, lines);
        double[] plain = {lines.coveredM2(), lines.twiceM2(), lines.bareM2()};
        List<double[]> drawn = ParallelTasks.map(DRAWS, threads, d -> {
            int of = d < WHOLE ? d : (d - WHOLE) % OF_PARTS;
            return laid(job, ground, seed + 1 + of, d < WHOLE ? ALL : d < WHOLE + OF_PARTS ? LOG : RECEIVER);
        });
        List<double[]> whole = drawn.subList(0, WHOLE);
        List<double[]> log = drawn.subList(WHOLE, WHOLE + OF_PARTS);
        List<double[]> receiver = drawn.subList(WHOLE + OF_PARTS, DRAWS);
        double[] value = {coverage.coveredAreaM2(), coverage.overlapAreaM2(), coverage.skipAreaM2()};
        UncertaintyDistribution[] doubt = new UncertaintyDistribution[FIGURES];
        for (int f = 0; f < FIGURES; f++) {
            doubt[f] = doubt(value[f], plain[f], column(whole, f), column(log, f), column(receiver, f));
        }
        return new CoverageUncertainty(doubt[0], doubt[1], doubt[2]);
    }

    /** Covered, doubled and missed as one draw lays them. */
    private static double[] laid(UncertaintyInputs job, PerturbedCoverage ground, long seed, Parts parts) {
        ScanLines lines = ground.lines();
        ground.lay(new ErrorSample(job, ground, seed), parts, lines);
        return new double[] {lines.coveredM2(), lines.twiceM2(), lines.bareM2()};
    }

    private static double[] column(List<double[]> drawn, int f) {
        return drawn.stream().mapToDouble(draw -> draw[f]).toArray();
    }

    private static UncertaintyDistribution doubt(
            double value, double plain, double[] whole, double[] log, double[] receiver) {
        double mean = mean(whole);
        double logMean = mean(log);
        double tape = mean - logMean;
        double steered = value + tape + mean(receiver) - plain;
        double errorless = value + tape - EXTRAPOLATED * (logMean - plain);
        // So few draws know the log's mean only so well, and the extrapolation enlarges that.
        double drawn = EXTRAPOLATED * EXTRAPOLATED * variance(log, logMean) / log.length;
        return new UncertaintyDistribution(
                Math.min(steered, errorless),
                Math.max(steered, errorless),
                Math.sqrt(variance(whole, mean) + drawn),
                0);
    }

    private static double mean(double[] values) {
        return Arrays.stream(values).average().orElseThrow();
    }

    private static double variance(double[] values, double mean) {
        return Arrays.stream(values).map(x -> (x - mean) * (x - mean)).sum() / (values.length - 1);
    }
}
