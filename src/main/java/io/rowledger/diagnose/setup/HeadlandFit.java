package io.rowledger.diagnose.setup;

import io.rowledger.stats.TruncatedNormal;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Drop offset error and lowering habit from coarse records: a log shows of a headland crossing only the two records between
 * which it fell, so that no crossing has a place to average. The estimate fits the bounds of all crossings at once.
 *
 * <p>Crossing i lies uᵢ ahead of the middle between its two records, −hᵢ ≤ uᵢ ≤ hᵢ. It scatters about the headland's line, at
 * gᵢ: uᵢ − gᵢ is normal with σ. The line bends: a contrast of g, less its effects times the unknowns, is normal with λ. For each
 * (σ, λ) of a grid, mean and covariance of the unknowns come from expectation propagation, which replaces each pair of bounds by
 * the normal factor that keeps mean and variance (T. P. Minka, Expectation Propagation for Approximate Bayesian Inference, UAI
 * 2001); the points of the grid are weighted by the likelihood of the bounds. Bounds of width w determine a place to about
 * √(w·σ/n), the mean of their middles only to w/√(12·n).
 *
 * <p>The unknowns are the error (m), the habit (s) and the half-difference between lowering and lifting (s), the last two with
 * the normal priors of {@link HeadlandEstimate#HABIT_PRIOR_S}.
 */
final class HeadlandFit {
    /** Scatter of the ends about their line, 1 sigma, m. */
    private static final double[] SCATTER_M = {0.05, 0.09, 0.15, 0.25, 0.45};

    /** Bend of a headland from pass to pass, 1 sigma, m. */
    private static final double[] BEND_M = {0.02, 0.06, 0.18, 0.5};

    /** Number of ends solved together; a neighbor in another block is left out. */
    private static final int BLOCK = 60;

    /** Standard deviation of the weak prior on pass-end positions and unknowns, m or s. */
    private static final double VAGUE = 20;

    private static final int MAX_ROUNDS = 25;

    /** Convergence: the means change by less than this fraction of their standard deviations. */
    private static final double CONVERGED = 1e-3;

    /** Share of each round's step that is taken, so that rounds do not oscillate. */
    private static final double DAMPING = 0.8;

    /** Error, habit, half-difference. */
    private static final int UNKNOWNS = 3;

    private final List<PassEnd> ends;
    private final List<List<Contrast>> blocks;

    private HeadlandFit(List<PassEnd> ends, List<Contrast> lines) {
        this.ends = ends;
        this.blocks = blocks(lines, ends.size());
    }

    /**
     * Returns error and habit together.
     *
     * @param ends with half the distance between the records around each
     * @param lines every end against the line between its neighbors, also those that the error does not move; one or more
     */
    static HeadlandEstimate together(List<PassEnd> ends, List<Contrast> lines) {
        return new HeadlandFit(ends, lines).fit(lines.size());
    }

    /** Groups contrasts that share ends into runs along the headlands of at most {@link #BLOCK}. */
    private static List<List<Contrast>> blocks(List<Contrast> lines, int n) {
        Contrast[] own = new Contrast[n];
        List<List<Contrast>> touching = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            touching.add(new ArrayList<>());
        }
        for (Contrast c : lines) {
            own[c.of()] = c;
            touching.get(c.of()).add(c);
            touching.get(c.before()).add(c);
            touching.get(c.after()).add(c);
        }
        boolean[] seen = new boolean[n];
        List<List<Contrast>> blocks = new ArrayList<>();
        List<Contrast> block = new ArrayList<>();
        for (int first = 0; first < n; first++) {
            ArrayDeque<Integer> next = new ArrayDeque<>(seen[first] ? List.of() : List.of(first));
            while (!next.isEmpty()) {
                int i = next.poll();
                if (seen[i]) {
                    continue;
                }
                seen[i] = true;
                if (own[i] != null) {
                    block.add(own[i]);
                }
                for (Contrast c : touching.get(i)) {
                    next.addAll(List.of(c.of(), c.before(), c.after()));
                }
                if (block.size() >= BLOCK) {
                    blocks.add(block);
                    block = new ArrayList<>();
                }
            }
        }
        if (!block.isEmpty()) {
            blocks.add(block);
        }
        return blocks;
    }

    private HeadlandEstimate fit(int n) {
        List<Point> points = new ArrayList<>();
        for (double scatterM : SCATTER_M) {
            for (double bendM : BEND_M) {
                points.add(point(scatterM, bendM));
            }
        }
        double max = points.stream().mapToDouble(Point::logWeight).max().orElseThrow();
        HeadlandEstimate.Mixture mixture = new HeadlandEstimate.Mixture();
        for (Point p : points) {
            mixture.add(Math.exp(p.logWeight - max), p.mean, p.covariance);
        }
        return mixture.estimate(n);
    }

    /** Mean and covariance of the unknowns and log likelihood: of a block, or at one point of the grid. */
    private record Point(double[] mean, double[][] covariance, double logWeight) {}

    /** Multiplies the blocks' normal densities of the unknowns and the priors, and integrates. */
    private Point point(double scatterM, double bendM) {
        double[][] precision = new double[UNKNOWNS][UNKNOWNS];
        double[] pull = new double[UNKNOWNS];
        double log = 0;
        for (List<Contrast> contrasts : blocks) {
            Point block = new Block(contrasts, scatterM, bendM).solve();
            double[][] l = SmallMatrix.cholesky(block.covariance);
            double[][] inverse = SmallMatrix.inverse(l);
            double[] weighted = SmallMatrix.times(inverse, block.mean);
            for (int a = 0; a < UNKNOWNS; a++) {
                pull[a] += weighted[a];
                for (int b = 0; b < UNKNOWNS; b++) {
                    precision[a][b] += inverse[a][b];
                }
            }
            log += block.logWeight - 0.5 * SmallMatrix.logDet(l) - 0.5 * SmallMatrix.dot(block.mean, weighted);
        }
        for (int a = 1; a < UNKNOWNS; a++) {
            precision[a][a] += 1 / (HeadlandEstimate.HABIT_PRIOR_S * HeadlandEstimate.HABIT_PRIOR_S);
        }
        double[][] l = SmallMatrix.cholesky(precision);
        double[][] covariance = SmallMatrix.inverse(l);
        double[] mean = SmallMatrix.times(covariance, pull);
        log += -0.5 * SmallMatrix.logDet(l) + 0.5 * SmallMatrix.dot(pull, mean);
        return new Point(mean, covariance, log);
    }

    /** Some ends with the unknowns behind them, at one point of the grid. */
    private final class Block {
        private final double scatterM;
        private final int[] end;
        private final int size;
        private final double[][] prior;
        private final double[] pull;
        private final double[] siteTau;
        private final double[] siteNu;
        private double constant;
        private double[][] covariance = new double[0][0];
        private double[] mean = new double[0];
        private double logDet;

        Block(List<Contrast> lines, double scatterM, double bendM) {
            this.scatterM = scatterM;
            int[] place = new int[ends.size()];
            Arrays.fill(place, -1);
            end = lines.stream()
                    .flatMapToInt(c -> IntStream.of(c.of(), c.before(), c.after()))
                    .distinct()
                    .sorted()
                    .toArray();
            for (int i = 0; i < end.length; i++) {
                place[end[i]] = i;
            }
            size = end.length + UNKNOWNS;
            prior = new double[size][size];
            pull = new double[size];
            for (int i = 0; i < size; i++) {
                prior[i][i] = 1 / (VAGUE * VAGUE);
            }
            for (Contrast c : lines) {
                add(c, place, bendM);
            }
            siteTau = new double[end.length];
            siteNu = new double[end.length];
            for (int i = 0; i < end.length; i++) {
                double halfM = ends.get(end[i]).halfM();
                siteTau[i] = 1 / (halfM * halfM / 3 + scatterM * scatterM);
            }
        }

        /** One contrast: its value and its ends' places, less its effects times the unknowns, are 0 but for the bend. */
        private void add(Contrast c, int[] place, double bendM) {
            int unknown = end.length;
            int[] at = {place[c.of()], place[c.before()], place[c.after()], unknown, unknown + 1, unknown + 2};
            double[] by = {
                1,
                -c.weightBefore() * sign(c.of(), c.before()),
                -c.weightAfter() * sign(c.of(), c.after()),
                -c.effect(),
                -c.habitEffect(),
                -c.unlikeEffect()
            };
            double w = 1 / (bendM * bendM);
            for (int a = 0; a < at.length; a++) {
                for (int b = 0; b < at.length; b++) {
                    prior[at[a]][at[b]] += w * by[a] * by[b];
                }
                pull[at[a]] -= w * by[a] * c.valueM();
            }
            constant -= Math.log(bendM) + 0.5 * w * c.valueM() * c.valueM();
        }

        private int sign(int a, int b) {
            return Math.cos(ends.get(a).headingRad() - ends.get(b).headingRad()) > 0 ? 1 : -1;
        }

        Point solve() {
            invert();
            double moved = 1;
            for (int round = 0; round < MAX_ROUNDS && moved > CONVERGED; round++) {
                double[] before = Arrays.copyOfRange(mean, end.length, size);
                for (int i = 0; i < end.length; i++) {
                    update(i);
                }
                invert();
                moved = 0;
                for (int a = 0; a < UNKNOWNS; a++) {
                    int at = end.length + a;
                    moved = Math.max(moved, Math.abs(mean[at] - before[a]) / Math.sqrt(covariance[at][at]));
                }
            }
            double log = constant - 0.5 * logDet;
            for (int i = 0; i < size; i++) {
                log += 0.5 * mean[i] * (pull[i] + (i < end.length ? siteNu[i] : 0));
            }
            for (int i = 0; i < end.length; i++) {
                log += scale(i);
            }
            double[][] unknowns = new double[UNKNOWNS][];
            for (int a = 0; a < UNKNOWNS; a++) {
                unknowns[a] = Arrays.copyOfRange(covariance[end.length + a], end.length, size);
            }
            return new Point(Arrays.copyOfRange(mean, end.length, size), unknowns, log);
        }

        /** Cavity distribution of end i, without its own bounds: mean and variance. */
        private double[] without(int i) {
            double variance = 1 / (1 / covariance[i][i] - siteTau[i]);
            return new double[] {variance * (mean[i] / covariance[i][i] - siteNu[i]), variance};
        }

        private TruncatedNormal bounds(int i, double[] without) {
            double halfM = ends.get(end[i]).halfM();
            return TruncatedNormal.of(-halfM, halfM, without[0], Math.sqrt(without[1] + scatterM * scatterM));
        }

        private void update(int i) {
            double[] without = without(i);
            if (!(without[1] > 0)) {
                return;
            }
            TruncatedNormal bounds = bounds(i, without);
            double tau = -bounds.bend() / (1 + without[1] * bounds.bend());
            double nu = bounds.slope() + tau * (without[0] + without[1] * bounds.slope());
            siteTau[i] += DAMPING * (tau - siteTau[i]);
            siteNu[i] += DAMPING * (nu - siteNu[i]);
        }

        /** Log ratio of the bounds' likelihood to that of the normal factor that replaces them. */
        private double scale(int i) {
            double[] without = without(i);
            if (!(without[1] > 0)) {
                return 0;
            }
            double widened = 1 + siteTau[i] * without[1];
            double shifted = without[0] + siteNu[i] * without[1];
            double factor = -0.5 * Math.log(widened)
                    + 0.5 * (shifted * shifted / (without[1] * widened) - without[0] * without[0] / without[1]);
            return bounds(i, without).logZ() - factor;
        }

        /** Covariance and mean from the prior and the factors. */
        private void invert() {
            double[][] precision = new double[size][];
            for (int i = 0; i < size; i++) {
                precision[i] = prior[i].clone();
                precision[i][i] += i < end.length ? siteTau[i] : 0;
            }
            double[][] l = SmallMatrix.cholesky(precision);
            logDet = SmallMatrix.logDet(l);
            covariance = SmallMatrix.inverse(l);
            double[] all = pull.clone();
            for (int i = 0; i < end.length; i++) {
                all[i] += siteNu[i];
            }
            mean = SmallMatrix.times(covariance, all);
        }
    }
}
