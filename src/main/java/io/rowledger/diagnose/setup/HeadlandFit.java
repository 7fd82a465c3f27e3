package io.rowledger.diagnose.setup;

import io.rowledger.stats.TruncatedNormal;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The drop line's error where records are coarse: all that a log tells of a headland crossing is the two records between which
 * it fell, so no crossing has a place to take a mean of. What has to fit are the records' bounds, all of them at once.
 *
 * <p>Crossing i lies uᵢ ahead of the middle between its two records, −hᵢ ≤ uᵢ ≤ hᵢ. It strays from the headland's line, at gᵢ,
 * by chance: uᵢ − gᵢ is normal with σ. The line bends by chance: a contrast of g, held against its effect times the error
 * looked for, is normal with λ. For each (σ, λ) of a grid, the mean and variance of the error come by expectation
 * propagation, in which each pair of bounds is stood in for by the normal factor that leaves mean and variance right (T. P.
 * Minka, Expectation Propagation for Approximate Bayesian Inference, UAI 2001); the grid's points are weighed by how likely
 * they make the bounds. Bounds as wide as w tell a place to about √(w·σ/n) and not to w/√(12·n), as means of their middles would.
 */
final class HeadlandFit {
    /** How far ends stray from their line, 1 sigma, m. */
    private static final double[] STRAY_M = {0.05, 0.09, 0.15, 0.25, 0.45};

    /** How much a headland bends from pass to pass, 1 sigma, m. */
    private static final double[] BEND_M = {0.02, 0.06, 0.18, 0.5};

    /** Ends solved together; a neighbour in another block is let go. */
    private static final int BLOCK = 60;

    /** Nothing is known beforehand of an end's or a length's place within so much, m. */
    private static final double VAGUE_M = 20;

    private static final int MAX_ROUNDS = 25;

    /** Rounds end when nothing moves by more than this share of what it is known to. */
    private static final double STILL = 1e-3;

    /** Share of each round's step that is taken: less than all, so that rounds don't swing. */
    private static final double DAMPING = 0.8;

    private final List<PassEnd> ends;
    private final List<List<Contrast>> blocks;

    private HeadlandFit(List<PassEnd> ends, List<Contrast> lines) {
        this.ends = ends;
        this.blocks = blocks(lines, ends.size());
    }

    /**
     * The error looked for.
     *
     * @param ends with how far each may lie ahead or behind
     * @param lines every end against the line between its neighbours, those that the error doesn't move too; one or more
     */
    static DriftFit.Fitted error(List<PassEnd> ends, List<Contrast> lines) {
        return new HeadlandFit(ends, lines).fit(lines.size());
    }

    /** Contrasts that share ends, in runs along the headlands of no more than so many ends. */
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

    private DriftFit.Fitted fit(int n) {
        List<double[]> points = new ArrayList<>();
        double most = Double.NEGATIVE_INFINITY;
        for (double strayM : STRAY_M) {
            for (double bendM : BEND_M) {
                double[] point = point(strayM, bendM);
                points.add(point);
                most = Math.max(most, point[2]);
            }
        }
        double weights = 0;
        double mean = 0;
        double squares = 0;
        for (double[] p : points) {
            double weight = Math.exp(p[2] - most);
            weights += weight;
            mean += weight * p[0];
            squares += weight * (p[1] + p[0] * p[0]);
        }
        mean /= weights;
        return new DriftFit.Fitted(mean, Math.sqrt(Math.max(0, squares / weights - mean * mean)), n);
    }

    /** Mean, variance and log likelihood at one point of the grid, from all blocks. */
    private double[] point(double strayM, double bendM) {
        double precision = 0;
        double weighted = 0;
        double squares = 0;
        double log = 0;
        for (List<Contrast> block : blocks) {
            double[] of = new Block(block, strayM, bendM).solve();
            precision += 1 / of[1];
            weighted += of[0] / of[1];
            squares += of[0] * of[0] / of[1];
            log += of[2] - 0.5 * Math.log(of[1]);
        }
        // Normal densities of one number, multiplied and integrated.
        log += -0.5 * Math.log(precision) - 0.5 * (squares - weighted * weighted / precision);
        return new double[] {weighted / precision, 1 / precision, log};
    }

    /** Some ends with the error looked for, at one point of the grid. The error is the last unknown. */
    private final class Block {
        private final double strayM;
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

        Block(List<Contrast> lines, double strayM, double bendM) {
            this.strayM = strayM;
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
            size = end.length + 1;
            prior = new double[size][size];
            pull = new double[size];
            for (int i = 0; i < size; i++) {
                prior[i][i] = 1 / (VAGUE_M * VAGUE_M);
            }
            for (Contrast c : lines) {
                add(c, place, bendM);
            }
            siteTau = new double[end.length];
            siteNu = new double[end.length];
            for (int i = 0; i < end.length; i++) {
                double halfM = ends.get(end[i]).halfM();
                siteTau[i] = 1 / (halfM * halfM / 3 + strayM * strayM);
            }
        }

        /** One line: its value, and what its ends' places add to it, less the error's effect, is 0 but for the bend. */
        private void add(Contrast c, int[] place, double bendM) {
            int[] at = {place[c.of()], place[c.before()], place[c.after()], size - 1};
            double[] by = {
                1, -c.weightBefore() * sign(c.of(), c.before()), -c.weightAfter() * sign(c.of(), c.after()), -c.effect()
            };
            double w = 1 / (bendM * bendM);
            for (int a = 0; a < 4; a++) {
                for (int b = 0; b < 4; b++) {
                    prior[at[a]][at[b]] += w * by[a] * by[b];
                }
                pull[at[a]] -= w * by[a] * c.valueM();
            }
            constant -= Math.log(bendM) + 0.5 * w * c.valueM() * c.valueM();
        }

        private int sign(int a, int b) {
            return Math.cos(ends.get(a).headingRad() - ends.get(b).headingRad()) > 0 ? 1 : -1;
        }

        /** Mean and variance of the error, and the log likelihood. */
        double[] solve() {
            invert();
            double moved = 1;
            for (int round = 0; round < MAX_ROUNDS && moved > STILL; round++) {
                double before = mean[size - 1];
                for (int i = 0; i < end.length; i++) {
                    update(i);
                }
                invert();
                moved = Math.abs(mean[size - 1] - before) / Math.sqrt(covariance[size - 1][size - 1]);
            }
            double log = constant - 0.5 * logDet;
            for (int i = 0; i < size; i++) {
                log += 0.5 * mean[i] * (pull[i] + (i < end.length ? siteNu[i] : 0));
            }
            for (int i = 0; i < end.length; i++) {
                log += scale(i);
            }
            return new double[] {mean[size - 1], covariance[size - 1][size - 1], log};
        }

        /** What all but end i's own bounds say of its place: mean and variance. */
        private double[] without(int i) {
            double variance = 1 / (1 / covariance[i][i] - siteTau[i]);
            return new double[] {variance * (mean[i] / covariance[i][i] - siteNu[i]), variance};
        }

        private TruncatedNormal bounds(int i, double[] without) {
            double halfM = ends.get(end[i]).halfM();
            return TruncatedNormal.of(-halfM, halfM, without[0], Math.sqrt(without[1] + strayM * strayM));
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

        /** How much the bounds' likelihood is above that of the factor standing in for it, log. */
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

        /** Covariance and mean from prior and factors, by Cholesky: P = L Lᵀ, then L's inverse. */
        private void invert() {
            double[][] l = new double[size][size];
            logDet = 0;
            for (int i = 0; i < size; i++) {
                for (int j = 0; j <= i; j++) {
                    double sum = prior[i][j] + (i == j && i < end.length ? siteTau[i] : 0);
                    for (int k = 0; k < j; k++) {
                        sum -= l[i][k] * l[j][k];
                    }
                    l[i][j] = i == j ? Math.sqrt(Math.max(sum, 1e-12)) : sum / l[j][j];
                }
                logDet += 2 * Math.log(l[i][i]);
            }
            double[][] inverse = new double[size][size];
            for (int c = 0; c < size; c++) {
                for (int i = c; i < size; i++) {
                    double sum = i == c ? 1 : 0;
                    for (int k = c; k < i; k++) {
                        sum -= l[i][k] * inverse[k][c];
                    }
                    inverse[i][c] = sum / l[i][i];
                }
            }
            covariance = new double[size][size];
            mean = new double[size];
            for (int i = 0; i < size; i++) {
                for (int j = 0; j <= i; j++) {
                    double sum = 0;
                    for (int k = i; k < size; k++) {
                        sum += inverse[k][i] * inverse[k][j];
                    }
                    covariance[i][j] = sum;
                    covariance[j][i] = sum;
                }
            }
            for (int i = 0; i < size; i++) {
                for (int j = 0; j < size; j++) {
                    mean[i] += covariance[i][j] * (pull[j] + (j < end.length ? siteNu[j] : 0));
                }
            }
        }
    }
}
