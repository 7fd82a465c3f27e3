package io.rowledger.diagnose.setup;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Generalized least squares on contrasts whose errors are correlated in time, with an unknown share of slow drift.
 *
 * <p>An observation has white noise of variance σ² and a first-order Gauss-Markov drift of variance ρσ² and time constant τ, so
 * Cov(i, j) = σ²(δᵢⱼ + ρ·exp(−|tᵢ − tⱼ|/τ)); contrasts A·y have A·Cov·Aᵀ = σ²C. For each (ρ, τ) of a grid σ is integrated out
 * under the prior 1/σ: a single unknown then has a t distribution, and the grid point the weight |C|^(−1/2) ·
 * (xᵀC⁻¹x)^(−1/2) · S^(−(n−1)/2) (A. Zellner, An Introduction to Bayesian Inference in Econometrics, 1971, ch. 3). The result
 * is the mixture's mean and standard deviation. So a receiver that drifts widens the interval by itself; one that drifts slowly
 * between neighbors does not.
 *
 * <p>With error and habit together the unknowns are the error (no prior), the habit and the half-difference between lowering and
 * lifting (normal priors of {@link HeadlandEstimate#HABIT_PRIOR_S}); σ² is then replaced by its estimate S/(n − rank), widened
 * by the variance of a t distribution.
 */
final class DriftFit {
    /** Variance of the drift over that of the white noise: from none to more than any receiver has. */
    private static final double[] SHARES = {0, 0.1, 0.3, 1, 3, 10, 30, 100, 1000};

    /** Time constants of drift, s: corrections age over a minute, the ionosphere changes over a quarter of an hour. */
    private static final double[] TAUS_S = {60, 200, 700};

    /** Contrasts solved together; a neighbor in another block is taken as independent. */
    private static final int BLOCK = 100;

    /** Independent part of a contrast's variance, so that contrasts that add up to nothing can be solved. */
    private static final double NUGGET = 1e-3;

    /** Smallest variance of an observation with several unknowns, m²: a tenth of a millimeter, so that they can be solved. */
    private static final double MIN_VARIANCE_M2 = 1e-8;

    /** A column that keeps less than this share of its square beside the others is a combination of them. */
    private static final double COLLINEAR = 1e-9;

    /**
     * One unknown.
     *
     * @param value best estimate
     * @param sigma its standard deviation
     * @param n number of contrasts
     */
    record Fitted(double value, double sigma, int n) {}

    private final List<Contrast> contrasts;
    private final double[] timeS;
    private final double[] spanS;
    private final int unknowns;
    private final double minNoiseM;

    private DriftFit(List<Contrast> contrasts, double[] timeS, double[] spanS, int unknowns, double minNoiseM) {
        this.contrasts = contrasts;
        this.timeS = timeS;
        this.spanS = spanS;
        this.unknowns = unknowns;
        this.minNoiseM = minNoiseM;
    }

    /**
     * Returns the error alone, or null if there are fewer than {@code min} contrasts.
     *
     * @param timeS the middle of each observation
     * @param spanS duration of each observation; 0 for an instant
     * @param minNoiseM white noise that each observation has at least, 1 sigma, m, however well a few may agree
     */
    static @Nullable Fitted error(List<Contrast> contrasts, double[] timeS, double[] spanS, int min, double minNoiseM) {
        if (contrasts.size() < Math.max(2, min)) {
            return null;
        }
        DriftFit fit = new DriftFit(contrasts, timeS, spanS, 1, minNoiseM);
        List<Point> points = fit.points();
        double weights = 0;
        double mean = 0;
        double square = 0;
        double max = points.stream().mapToDouble(Point::logWeight).max().orElseThrow();
        for (Point p : points) {
            double w = Math.exp(p.logWeight - max);
            weights += w;
            mean += w * p.mean[0];
            square += w * (p.covariance[0][0] + p.mean[0] * p.mean[0]);
        }
        mean /= weights;
        double variance = square / weights - mean * mean;
        double knownM2 = minNoiseM * minNoiseM / points.get(0).information;
        return new Fitted(mean, Math.sqrt(Math.max(knownM2, Math.max(0, variance))), contrasts.size());
    }

    /** Returns the error and the habit together, or null if there are fewer than {@code min} contrasts. */
    static @Nullable HeadlandEstimate together(List<Contrast> contrasts, double[] timeS, int min, double minNoiseM) {
        if (contrasts.size() < Math.max(4, min)) {
            return null;
        }
        List<Point> points = new DriftFit(contrasts, timeS, new double[timeS.length], 3, minNoiseM).points();
        double max = points.stream().mapToDouble(Point::logWeight).max().orElseThrow();
        HeadlandEstimate.Mixture mixture = new HeadlandEstimate.Mixture();
        for (Point p : points) {
            mixture.add(Math.exp(p.logWeight - max), p.mean, p.covariance);
        }
        return mixture.estimate(contrasts.size());
    }

    /** Sums over the blocks at one point of the grid: XᵀC⁻¹X, XᵀC⁻¹y, yᵀC⁻¹y, ln |C|. */
    private static final class Sums {
        private final double[][] xx;
        private final double[] xy;
        private double yy;
        private double logDet;

        Sums(int unknowns) {
            xx = new double[unknowns][unknowns];
            xy = new double[unknowns];
        }
    }

    /** Mean, covariance, log weight and the error's information over σ² at one point of the grid. */
    private record Point(double[] mean, double[][] covariance, double logWeight, double information) {}

    private List<Point> points() {
        List<Point> points = new ArrayList<>();
        for (double share : SHARES) {
            for (double tau : TAUS_S) {
                points.add(point(share, tau));
                if (share == 0) {
                    break;
                }
            }
        }
        return points;
    }

    private Point point(double share, double tauS) {
        Sums s = new Sums(unknowns);
        int n = contrasts.size();
        int blocks = (n + BLOCK - 1) / BLOCK;
        for (int b = 0; b < blocks; b++) {
            block(b * n / blocks, (b + 1) * n / blocks, share, tauS, s);
        }
        double[] squares = residual(s);
        double left = Math.max(1e-12, squares[0]);
        int dof = Math.max(1, n - (int) squares[1]);
        // A t distribution of dof degrees of freedom has a variance of dof / (dof − 2) of its scale's square.
        double variance = left / dof * (dof > 2 ? dof / (dof - 2.0) : 4);
        if (unknowns > 1) {
            variance = Math.max(variance, Math.max(minNoiseM * minNoiseM, MIN_VARIANCE_M2));
        }
        double[][] precision = new double[unknowns][unknowns];
        double[] pull = new double[unknowns];
        for (int a = 0; a < unknowns; a++) {
            for (int b = 0; b < unknowns; b++) {
                precision[a][b] = s.xx[a][b] / variance;
            }
            precision[a][a] += a == 0 ? 0 : 1 / (HeadlandEstimate.HABIT_PRIOR_S * HeadlandEstimate.HABIT_PRIOR_S);
            pull[a] = s.xy[a] / variance;
        }
        double[][] l = SmallMatrix.cholesky(precision);
        double[][] covariance = SmallMatrix.inverse(l);
        double log = -0.5 * (s.logDet + SmallMatrix.logDet(l) + unknowns * Math.log(variance) + dof * Math.log(left));
        return new Point(SmallMatrix.times(covariance, pull), covariance, log, s.xx[0][0]);
    }

    /** Sum of squares that the unknowns leave without any prior, and how many of them are independent. */
    private double[] residual(Sums s) {
        double[][] m = new double[unknowns][unknowns + 1];
        for (int a = 0; a < unknowns; a++) {
            System.arraycopy(s.xx[a], 0, m[a], 0, unknowns);
            m[a][unknowns] = s.xy[a];
        }
        double squares = s.yy;
        int rank = 0;
        for (int c = 0; c < unknowns; c++) {
            if (m[c][c] <= COLLINEAR * s.xx[c][c]) {
                continue;
            }
            rank++;
            squares -= m[c][unknowns] * m[c][unknowns] / m[c][c];
            for (int r = c + 1; r < unknowns; r++) {
                double f = m[r][c] / m[c][c];
                for (int j = c; j <= unknowns; j++) {
                    m[r][j] -= f * m[c][j];
                }
            }
        }
        return new double[] {squares, rank};
    }

    private double[] regressors(Contrast c) {
        return unknowns == 1 ? new double[] {c.effect()} : new double[] {c.effect(), c.habitEffect(), c.unlikeEffect()};
    }

    private void block(int from, int end, double share, double tauS, Sums s) {
        int n = end - from;
        double[][] c = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                c[i][j] = covariance(contrasts.get(from + i), contrasts.get(from + j), share, tauS);
            }
            c[i][i] *= 1 + NUGGET;
        }
        double[][] x = new double[n][];
        double[] y = new double[n];
        // Cholesky factor L of C; L u = x and L v = y are solved on the way.
        for (int i = 0; i < n; i++) {
            Contrast contrast = contrasts.get(from + i);
            x[i] = regressors(contrast);
            y[i] = contrast.valueM();
            double[] row = c[i];
            for (int j = 0; j <= i; j++) {
                double sum = row[j];
                for (int k = 0; k < j; k++) {
                    sum -= row[k] * c[j][k];
                }
                row[j] = j < i ? sum / c[j][j] : Math.sqrt(Math.max(sum, 1e-12));
            }
            for (int k = 0; k < i; k++) {
                for (int a = 0; a < unknowns; a++) {
                    x[i][a] -= row[k] * x[k][a];
                }
                y[i] -= row[k] * y[k];
            }
            y[i] /= row[i];
            for (int a = 0; a < unknowns; a++) {
                x[i][a] /= row[i];
            }
            s.logDet += 2 * Math.log(row[i]);
            s.yy += y[i] * y[i];
            for (int a = 0; a < unknowns; a++) {
                s.xy[a] += x[i][a] * y[i];
                for (int b = 0; b < unknowns; b++) {
                    s.xx[a][b] += x[i][a] * x[i][b];
                }
            }
        }
    }

    /**
     * Covariance of the drift's means over two observations: with x = span ÷ τ, 2(x − 1 + e⁻ˣ)/x² for one with itself and
     * e^(−Δt/τ) · sinh(x₁/2)/(x₁/2) · sinh(x₂/2)/(x₂/2) for two that don't overlap, by integrating e^(−|t − s|/τ).
     */
    private double drift(int i, int j, double tauS) {
        double x = spanS[i] / tauS;
        if (i == j) {
            return x < 1e-6 ? 1 : 2 * (x - 1 + Math.exp(-x)) / (x * x);
        }
        double y = spanS[j] / tauS;
        double apart = Math.exp(-Math.abs(timeS[i] - timeS[j]) / tauS);
        return apart * (x < 1e-6 ? 1 : Math.sinh(x / 2) / (x / 2)) * (y < 1e-6 ? 1 : Math.sinh(y / 2) / (y / 2));
    }

    /** Covariance of two contrasts over σ²: positions err alike in every direction of the plane. */
    private double covariance(Contrast a, Contrast b, double share, double tauS) {
        int[] ia = {a.of(), a.before(), a.after()};
        double[] wa = {1, -a.weightBefore(), -a.weightAfter()};
        int[] ib = {b.of(), b.before(), b.after()};
        double[] wb = {1, -b.weightBefore(), -b.weightAfter()};
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                double of = ia[i] == ib[j] ? 1 : 0;
                if (share > 0) {
                    of += share * drift(ia[i], ib[j], tauS);
                }
                sum += wa[i] * wb[j] * of;
            }
        }
        return sum * Math.cos(a.axisRad() - b.axisRad());
    }
}
