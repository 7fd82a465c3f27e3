package io.rowledger.diagnose.setup;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One number out of contrasts whose errors hang together in time: generalised least squares with an unknown share of slow
 * drift.
 *
 * <p>An observation errs by white noise of variance σ² and by a first-order Gauss-Markov drift of variance ρσ² and time
 * constant τ, so Cov(i, j) = σ²(δᵢⱼ + ρ·exp(−|tᵢ − tⱼ|/τ)); contrasts A·y have A·Cov·Aᵀ. For each (ρ, τ) of a grid σ is
 * integrated out under the usual 1/σ: the number then has a t distribution, and the grid point the weight
 * |C|^(−1/2) · (xᵀC⁻¹x)^(−1/2) · S^(−(n−1)/2) (A. Zellner, An Introduction to Bayesian Inference in Econometrics, 1971, ch. 3).
 * The mixture's mean and standard deviation come out. So a receiver that drifts widens the interval by itself, and
 * one that drifts slowly between neighbours doesn't.
 */
final class DriftFit {
    /** Drift's variance over white noise's: none, to much more than any receiver's. */
    private static final double[] SHARES = {0, 0.1, 0.3, 1, 3, 10, 30, 100, 1000};

    /** Time constants of drift, s: corrections age over a minute, the ionosphere over a quarter of an hour. */
    private static final double[] TAUS_S = {60, 200, 700};

    /** Contrasts solved together; a neighbour in another block is taken as independent. */
    private static final int BLOCK = 100;

    /** Part of a contrast's own variance that is its own, so that contrasts that add up to nothing can be solved. */
    private static final double NUGGET = 1e-3;

    /**
     * The number.
     *
     * @param value best estimate
     * @param sigma its standard deviation
     * @param n contrasts it rests on
     */
    record Fitted(double value, double sigma, int n) {}

    private final List<Contrast> contrasts;
    private final double[] timeS;
    private final double[] spanS;
    private final boolean withSpeed;
    private final double leastNoiseM;

    private DriftFit(List<Contrast> contrasts, double[] timeS, double[] spanS, boolean withSpeed, double leastNoiseM) {
        this.spanS = spanS;
        this.leastNoiseM = leastNoiseM;
        this.contrasts = contrasts;
        this.timeS = timeS;
        this.withSpeed = withSpeed;
    }

    /**
     * The error looked for, or null where fewer than {@code least} contrasts tell.
     *
     * @param timeS the middle of each observation
     * @param spanS how long each is a mean over; 0 for an instant
     * @param leastNoiseM white noise that each observation is known to have, 1 sigma, m, however well a few may agree
     */
    static @Nullable Fitted error(
            List<Contrast> contrasts, double[] timeS, double[] spanS, int least, double leastNoiseM) {
        return contrasts.size() < Math.max(2, least)
                ? null
                : new DriftFit(contrasts, timeS, spanS, false, leastNoiseM).fit();
    }

    /** The delay in seconds that goes with speed, the error looked for left free beside it. */
    static @Nullable Fitted delay(List<Contrast> contrasts, double[] timeS, int least) {
        return contrasts.size() < Math.max(3, least)
                ? null
                : new DriftFit(contrasts, timeS, new double[timeS.length], true, 0).fit();
    }

    /** Sums over the blocks at one point of the grid. */
    private static final class Sums {
        private double xx;
        private double xz;
        private double zz;
        private double xy;
        private double zy;
        private double yy;
        private double logDet;
    }

    private Fitted fit() {
        List<double[]> points = new ArrayList<>();
        for (double share : SHARES) {
            for (double tau : TAUS_S) {
                points.add(point(share, tau));
                if (share == 0) {
                    break;
                }
            }
        }
        double most = Double.NEGATIVE_INFINITY;
        for (double[] p : points) {
            most = Math.max(most, p[2]);
        }
        double weights = 0;
        double mean = 0;
        for (double[] p : points) {
            double w = Math.exp(p[2] - most);
            weights += w;
            mean += w * p[0];
        }
        mean /= weights;
        double variance = 0;
        for (double[] p : points) {
            variance += Math.exp(p[2] - most) * (p[1] + (p[0] - mean) * (p[0] - mean));
        }
        double known = leastNoiseM * leastNoiseM / points.get(0)[3];
        return new Fitted(mean, Math.sqrt(Math.max(known, variance / weights)), contrasts.size());
    }

    /** Mean, variance, log weight and information over σ² at one point of the grid. */
    private double[] point(double share, double tauS) {
        Sums s = new Sums();
        int n = contrasts.size();
        int blocks = (n + BLOCK - 1) / BLOCK;
        for (int b = 0; b < blocks; b++) {
            block(b * n / blocks, (b + 1) * n / blocks, share, tauS, s);
        }
        int free = withSpeed ? 2 : 1;
        double xx = s.xx;
        double xy = s.xy;
        double squares = s.yy;
        double logOther = 0;
        if (withSpeed) {
            // The number is the delay: the error is taken out of it first.
            squares -= s.xy * s.xy / s.xx;
            logOther = Math.log(s.xx);
            xx = s.zz - s.xz * s.xz / s.xx;
            xy = s.zy - s.xz * s.xy / s.xx;
        }
        double value = xy / xx;
        int dof = Math.max(1, n - free);
        double left = Math.max(1e-12, squares - value * xy);
        // A t distribution of dof degrees of freedom has a variance of dof / (dof - 2) of its scale's square.
        double variance = left / dof / xx * (dof > 2 ? dof / (dof - 2.0) : 4);
        double log = -0.5 * (s.logDet + logOther + Math.log(xx) + dof * Math.log(left));
        return new double[] {value, variance, log, xx};
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
        double[] x = new double[n];
        double[] z = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            Contrast k = contrasts.get(from + i);
            x[i] = k.effect();
            z[i] = k.speedEffect();
            y[i] = k.valueM();
        }
        // Cholesky, the columns solved on the way: A.-L. Cholesky's factor L of C, then L u = x.
        for (int i = 0; i < n; i++) {
            double[] row = c[i];
            for (int j = 0; j <= i; j++) {
                double sum = row[j];
                for (int k = 0; k < j; k++) {
                    sum -= row[k] * c[j][k];
                }
                row[j] = j < i ? sum / c[j][j] : Math.sqrt(Math.max(sum, 1e-12));
            }
            for (int k = 0; k < i; k++) {
                x[i] -= row[k] * x[k];
                z[i] -= row[k] * z[k];
                y[i] -= row[k] * y[k];
            }
            x[i] /= row[i];
            z[i] /= row[i];
            y[i] /= row[i];
            s.logDet += 2 * Math.log(row[i]);
            s.xx += x[i] * x[i];
            s.xz += x[i] * z[i];
            s.zz += z[i] * z[i];
            s.xy += x[i] * y[i];
            s.zy += z[i] * y[i];
            s.yy += y[i] * y[i];
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
