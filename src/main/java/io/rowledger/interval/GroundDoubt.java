package io.rowledger.interval;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.Parallel;
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
 */
final class GroundDoubt {
    /** Draws; the standard deviation of 60 is good to 9 %. */
    static final int DRAWS = 60;

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
        ground.lay(new GroundDraw(job, ground, seed), 0, lines);
        double[] plain = {lines.coveredM2(), lines.twiceM2(), lines.bareM2()};
        List<double[]> drawn = Parallel.map(DRAWS, threads, d -> laid(job, ground, seed + 1 + d));
        double[] value = {coverage.coveredAreaM2(), coverage.overlapAreaM2(), coverage.missedAreaM2()};
        Doubt[] doubt = new Doubt[FIGURES];
        for (int f = 0; f < FIGURES; f++) {
            doubt[f] = doubt(value[f], plain[f], drawn, f);
        }
        return new GroundDoubt(doubt[0], doubt[1], doubt[2]);
    }

    /** Covered, doubled and missed as one draw lays them. */
    private static double[] laid(Measured job, LaidGround ground, long seed) {
        ScanLines lines = ground.lines();
        ground.lay(new GroundDraw(job, ground, seed), 1, lines);
        return new double[] {lines.coveredM2(), lines.twiceM2(), lines.bareM2()};
    }

    private static Doubt doubt(double value, double plain, List<double[]> drawn, int f) {
        double mean = 0;
        for (double[] draw : drawn) {
            mean += draw[f] / drawn.size();
        }
        double square = 0;
        for (double[] draw : drawn) {
            square += (draw[f] - mean) * (draw[f] - mean);
        }
        double steered = value + (mean - plain);
        double errorless = value - (1 + Math.sqrt(2)) * (mean - plain);
        return new Doubt(
                Math.min(steered, errorless), Math.max(steered, errorless), Math.sqrt(square / (drawn.size() - 1)), 0);
    }
}
