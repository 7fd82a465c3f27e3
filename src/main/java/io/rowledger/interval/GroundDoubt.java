package io.rowledger.interval;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.Parallel;
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
 * <p>What the tape measure got wrong, the side and the knives' places, is not of this kind: steering and log go by the same
 * figures, so whoever steered, the log shows passes that meet and the ground has the error. It is drawn and added in both cases
 * and never taken off; A(λ) is of the receiver's errors, starts and stops alone.
 */
final class GroundDoubt {
    /** Draws of all errors; the standard deviation of 48 is good to 10 %. */
    private static final int WHOLE = 48;

    /** Of them, drawn again without the tape's errors: a mean only. */
    private static final int RECEIVER_ONLY = 32;

    /** All of them. */
    static final int DRAWS = WHOLE + RECEIVER_ONLY;

    /** 1 + √2. */
    private static final double EXTRAPOLATED = 1 + Math.sqrt(2);

    private static final int FIGURES = 3;

    /** Covered ground, m². */
    final Doubt covered;
    /** Doubled ground, m². */
    final Doubt overlap;
    /** Missed ground, m². */
    final Doubt missed;

    private GroundDoubt(Doubt covered, Doubt overlap, Doubt missed) {
        this.covered = covered;
        this.overlap = overlap;
        this.missed = missed;
    }

    static GroundDoubt of(Measured job, Coverage coverage, long seed, int threads) {
        LaidGround ground = new LaidGround(job.track().passes(), job.strips(), coverage);
        if (ground.isEmpty()) {
            Doubt none = Doubt.about(Double.NaN, Double.NaN, Double.NaN);
            return new GroundDoubt(none, none, none);
        }
        ScanLines lines = ground.lines();
        ground.lay(new GroundDraw(job, ground, seed), 0, 0, lines);
        double[] plain = {lines.coveredM2(), lines.twiceM2(), lines.bareM2()};
        List<double[]> drawn = Parallel.map(
                DRAWS,
                threads,
                d -> d < WHOLE ? laid(job, ground, seed + 1 + d, 1) : laid(job, ground, seed + 1 + d - WHOLE, 0));
        List<double[]> whole = drawn.subList(0, WHOLE);
        List<double[]> receiverOnly = drawn.subList(WHOLE, DRAWS);
        double[] value = {coverage.coveredAreaM2(), coverage.overlapAreaM2(), coverage.missedAreaM2()};
        Doubt[] doubt = new Doubt[FIGURES];
        for (int f = 0; f < FIGURES; f++) {
            doubt[f] = doubt(value[f], plain[f], column(whole, f), column(receiverOnly, f));
        }
        return new GroundDoubt(doubt[0], doubt[1], doubt[2]);
    }

    /** Covered, doubled and missed as one draw lays them. */
    private static double[] laid(Measured job, LaidGround ground, long seed, double tape) {
        ScanLines lines = ground.lines();
        ground.lay(new GroundDraw(job, ground, seed), 1, tape, lines);
        return new double[] {lines.coveredM2(), lines.twiceM2(), lines.bareM2()};
    }

    private static double[] column(List<double[]> drawn, int f) {
        return drawn.stream().mapToDouble(draw -> draw[f]).toArray();
    }

    private static Doubt doubt(double value, double plain, double[] whole, double[] receiverOnly) {
        double mean = Arrays.stream(whole).average().orElseThrow();
        double receiverMean = Arrays.stream(receiverOnly).average().orElseThrow();
        double receiver = receiverMean - plain;
        double tape = mean - receiverMean;
        double steered = value + tape + receiver;
        double errorless = value + tape - EXTRAPOLATED * receiver;
        // So few draws know the receiver's mean only so well, and the extrapolation enlarges that.
        double drawn = EXTRAPOLATED * EXTRAPOLATED * variance(receiverOnly, receiverMean) / receiverOnly.length;
        return new Doubt(
                Math.min(steered, errorless),
                Math.max(steered, errorless),
                Math.sqrt(variance(whole, mean) + drawn),
                0);
    }

    private static double variance(double[] values, double mean) {
        return Arrays.stream(values).map(x -> (x - mean) * (x - mean)).sum() / (values.length - 1);
    }
}
