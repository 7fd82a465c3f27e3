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
 * <li>the receiver was wrong about a tractor that drove true: the log shows errors that were not on the ground, and the truth
 *     has less overlap than measured. It is found by simulation and extrapolation (J. Cook, L. Stefanski, J. Am. Stat. Assoc.
 *     89 (1994) 1314-1328): A(λ) is the mean area with λ times the error's variance added, A(−1) the area without error.
 *     For seams whose widths scatter normally A(λ) = a + b·√(c + λ), c ≥ 1;
 * <li>the tractor was steered by the same wrong receiver: the log looks better than the ground, and the truth is as A(1).
 * </ul>
 */
final class GroundDoubt {
    /** Draws; the standard deviation of 40 is good to 11 %. */
    static final int DRAWS = 40;

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
        List<double[]> drawn = Parallel.map(DRAWS, threads, d -> twoLayings(job, ground, seed + 1 + d));
        double[] value = {coverage.coveredAreaM2(), coverage.overlapAreaM2(), coverage.missedAreaM2()};
        Doubt[] doubt = new Doubt[FIGURES];
        for (int f = 0; f < FIGURES; f++) {
            doubt[f] = doubt(value[f], plain[f], drawn, f);
        }
        return new GroundDoubt(doubt[0], doubt[1], doubt[2]);
    }

    /** Covered, doubled and missed with the error's variance once, then twice. */
    private static double[] twoLayings(Measured job, LaidGround ground, long seed) {
        GroundDraw draw = new GroundDraw(job, ground, seed);
        ScanLines lines = ground.lines();
        double[] out = new double[2 * FIGURES];
        for (int lambda = 1; lambda <= 2; lambda++) {
            ground.lay(draw, Math.sqrt(lambda), lines);
            out[(lambda - 1) * FIGURES] = lines.coveredM2();
            out[(lambda - 1) * FIGURES + 1] = lines.twiceM2();
            out[(lambda - 1) * FIGURES + 2] = lines.bareM2();
        }
        return out;
    }

    private static Doubt doubt(double value, double plain, List<double[]> drawn, int f) {
        double once = 0;
        double twice = 0;
        for (double[] draw : drawn) {
            once += draw[f] / drawn.size();
            twice += draw[FIGURES + f] / drawn.size();
        }
        double square = 0;
        for (double[] draw : drawn) {
            square += (draw[f] - once) * (draw[f] - once);
        }
        double steered = value + once - plain;
        double errorless = value + withoutError(plain, once, twice) - plain;
        return new Doubt(
                Math.min(steered, errorless), Math.max(steered, errorless), Math.sqrt(square / (drawn.size() - 1)), 0);
    }

    /** A(−1) of the curve a + b·√(c + λ) through A(0), A(1), A(2). */
    static double withoutError(double a0, double a1, double a2) {
        double first = a1 - a0;
        double second = a2 - a1;
        if (first == 0 || second / first >= 1) {
            return a0 - first;
        }
        // (√(c+1) − √c) ÷ (√(c+2) − √(c+1)) falls from 1.3032 at c = 1 towards 1.
        double ratio = second / first <= 0 ? Double.POSITIVE_INFINITY : first / second;
        double low = 1;
        double high = 1e4;
        for (int i = 0; i < 60; i++) {
            double c = (low + high) / 2;
            double at = (Math.sqrt(c + 1) - Math.sqrt(c)) / (Math.sqrt(c + 2) - Math.sqrt(c + 1));
            if (at > ratio) {
                low = c;
            } else {
                high = c;
            }
        }
        double b = first / (Math.sqrt(low + 1) - Math.sqrt(low));
        return a0 - b * (Math.sqrt(low) - Math.sqrt(low - 1));
    }
}
