package io.rowledger.track;

import java.util.Arrays;

/**
 * A two-sided smoother for one unbroken stretch of fixes: both axes at once, irregular times allowed.
 *
 * <p>Model: position is the triple integral of white jerk with spectral density q, m²/s⁵; a fix is the position plus
 * white noise of variance r, m². The conditional mean is found by a Kalman filter forward and the recursion of Rauch,
 * Tung and Striebel backward (AIAA J. 3 (1965) 1445-1450); between fixes it is the quintic through position, velocity
 * and acceleration at both ends, which is the exact conditional mean of this model. Its bandwidth is (q/(r·Δt))^(1/6)
 * rad/s, so stiffness follows the fix type through r.
 *
 * <p>The density is chosen per fix: jerk is small on a guidance line and large in a headland turn. The stretch is smoothed
 * at several densities; each fix takes the smallest one whose residuals nearby agree with the noise and whose path
 * departs from that of the next larger density by no more than the latter's own uncertainty (the choice rule of
 * O. V. Lepskii, Theory Probab. Appl. 35 (1991) 454-466). A last run uses the chosen densities. Both axes share the
 * covariance, which depends on times and noise alone.
 *
 * <p>Cost: (levels + 1) runs of about 150 flops per fix; memory of 12 doubles per fix of the stretch.
 */
final class PathSmoother {
    /** Jerk densities, m²/s⁵: a guidance line, a contour, a headland lap, a hard turn, a jolt. */
    private static final double[] JERK_DENSITY = {1e-6, 3e-5, 1e-3, 5e-2, 2.0};

    /** Half width of the neighborhood whose residuals are tested, s, and the fewest fixes on either side. */
    private static final double NEIGHBORHOOD_S = 1.0;

    private static final int MIN_NEIGHBORS = 4;

    /**
     * Limit of the mean squared residual over the noise variance, in standard deviations: for pure noise and m fixes of two
     * axes the mean is at most 1 and has the standard deviation 1/√m, so the limit is 1 + 3/√m.
     */
    private static final double MAX_RESIDUAL_SIGMAS = 3.0;

    /** Largest departure from the path of the next larger density, in standard deviations of the latter. */
    private static final double MAX_DEPARTURE_SIGMAS = 2.0;

    private final double[] t;
    private final double[] east;
    private final double[] north;
    private final double[] variance;

    /** Smoothed states, [fix][position, velocity, acceleration]. */
    final double[] pe;

    final double[] pn;
    final double[] ve;
    final double[] vn;
    final double[] ae;
    final double[] an;

    /** Filtered covariance, packed upper triangle, six values per fix. */
    private final double[] cov;

    /** Smooths a stretch with the density chosen per fix. */
    static PathSmoother of(double[] t, double[] east, double[] north, double[] sigmaM) {
        PathSmoother smoother = new PathSmoother(t, east, north, sigmaM);
        if (t.length > 1) {
            smoother.smooth();
        }
        return smoother;
    }

    /** Smooths a stretch at one density: the linear model, for tests against another solution of it. */
    static PathSmoother atDensity(double[] t, double[] east, double[] north, double[] sigmaM, double density) {
        PathSmoother smoother = new PathSmoother(t, east, north, sigmaM);
        double[] uniform = new double[t.length];
        Arrays.fill(uniform, density);
        smoother.filter(uniform);
        smoother.backward(uniform);
        return smoother;
    }

    private PathSmoother(double[] t, double[] east, double[] north, double[] sigmaM) {
        int n = t.length;
        this.t = t;
        this.east = east;
        this.north = north;
        this.variance = new double[n];
        for (int i = 0; i < n; i++) {
            variance[i] = sigmaM[i] * sigmaM[i];
        }
        pe = new double[n];
        pn = new double[n];
        ve = new double[n];
        vn = new double[n];
        ae = new double[n];
        an = new double[n];
        cov = new double[6 * n];
        if (n == 1) {
            pe[0] = east[0];
            pn[0] = north[0];
        }
    }

    private void smooth() {
        int n = t.length;
        double[] density = new double[n];
        double[] uniform = new double[n];
        boolean[] eligible = new boolean[n];
        double[] looseEast = new double[n];
        double[] looseNorth = new double[n];
        for (int level = JERK_DENSITY.length - 1; level >= 0; level--) {
            Arrays.fill(uniform, JERK_DENSITY[level]);
            filter(uniform);
            backward(uniform);
            if (level == JERK_DENSITY.length - 1) {
                Arrays.fill(density, JERK_DENSITY[level]);
                Arrays.fill(eligible, true);
            } else {
                stiffen(level, density, eligible, looseEast, looseNorth);
            }
            System.arraycopy(pe, 0, looseEast, 0, n);
            System.arraycopy(pn, 0, looseNorth, 0, n);
        }
        loosenNearby(density);
        filter(density);
        backward(density);
    }

    /**
     * Assigns the density of the level to every eligible fix whose residuals nearby agree with the noise and whose path
     * stays near that of the next larger density. A fix that fails at one level is not eligible for smaller densities.
     */
    private void stiffen(int level, double[] density, boolean[] eligible, double[] looseEast, double[] looseNorth) {
        int n = t.length;
        double[] residual = new double[n + 1];
        double[] departure = new double[n + 1];
        for (int i = 0; i < n; i++) {
            residual[i + 1] = residual[i] + square(east[i] - pe[i], north[i] - pn[i]) / (2 * variance[i]);
            double h = i == 0 ? t[1] - t[0] : t[i] - t[i - 1];
            double bandwidth = Math.pow(JERK_DENSITY[level + 1] / (variance[i] * h), 1.0 / 6);
            // Variance of the path at the larger density: r·Δt·ω₀/3, the integral of 1/(1 + (ω/ω₀)⁶) over all
            // frequencies.
            double looseVariance = variance[i] * Math.min(1, h * bandwidth / 3);
            departure[i + 1] = departure[i] + square(pe[i] - looseEast[i], pn[i] - looseNorth[i]) / (2 * looseVariance);
        }
        int from = 0;
        int to = 0;
        for (int i = 0; i < n; i++) {
            while (t[from] < t[i] - NEIGHBORHOOD_S && from < i - MIN_NEIGHBORS) {
                from++;
            }
            while (to < n && (t[to] <= t[i] + NEIGHBORHOOD_S || to <= i + MIN_NEIGHBORS)) {
                to++;
            }
            int m = to - from;
            double limit = 1 + MAX_RESIDUAL_SIGMAS / Math.sqrt(m);
            eligible[i] &= residual[to] - residual[from] <= limit * m
                    && departure[to] - departure[from] <= MAX_DEPARTURE_SIGMAS * MAX_DEPARTURE_SIGMAS * m;
            if (eligible[i]) {
                density[i] = JERK_DENSITY[level];
            }
        }
    }

    private static double square(double a, double b) {
        return a * a + b * b;
    }

    /** Every fix takes the largest density of its neighborhood, because a turn begins before its residuals show it. */
    private void loosenNearby(double[] density) {
        int n = t.length;
        double[] own = density.clone();
        int[] queue = new int[n];
        int head = 0;
        int tail = 0;
        int to = 0;
        for (int i = 0; i < n; i++) {
            while (to < n && t[to] <= t[i] + NEIGHBORHOOD_S) {
                while (tail > head && own[queue[tail - 1]] <= own[to]) {
                    tail--;
                }
                queue[tail++] = to++;
            }
            while (t[queue[head]] < t[i] - NEIGHBORHOOD_S) {
                head++;
            }
            density[i] = own[queue[head]];
        }
    }

    private void filter(double[] density) {
        int n = t.length;
        double dt0 = Math.max(1e-3, t[1] - t[0]);
        pe[0] = east[0];
        pn[0] = north[0];
        ve[0] = (east[1] - east[0]) / dt0;
        vn[0] = (north[1] - north[0]) / dt0;
        ae[0] = 0;
        an[0] = 0;
        // Prior of the first velocity: 3 m/s plus the uncertainty of the difference of two fixes.
        double c00 = variance[0];
        double c01 = 0;
        double c02 = 0;
        double c11 = 9 + 2 * variance[0] / (dt0 * dt0);
        double c12 = 0;
        double c22 = 4;
        store(0, c00, c01, c02, c11, c12, c22);
        for (int i = 1; i < n; i++) {
            double h = t[i] - t[i - 1];
            double q = density[i];
            double h2 = h * h;
            double half = h2 / 2;
            // x⁻ = F x
            double xe = pe[i - 1] + h * ve[i - 1] + half * ae[i - 1];
            double xn = pn[i - 1] + h * vn[i - 1] + half * an[i - 1];
            double ue = ve[i - 1] + h * ae[i - 1];
            double un = vn[i - 1] + h * an[i - 1];
            // P⁻ = F P Fᵀ + Q
            double f00 = c00 + h * c01 + half * c02;
            double f01 = c01 + h * c11 + half * c12;
            double f02 = c02 + h * c12 + half * c22;
            double f11 = c11 + h * c12;
            double f12 = c12 + h * c22;
            double p00 = f00 + h * f01 + half * f02 + q * h2 * h2 * h / 20;
            double p01 = f01 + h * f02 + q * h2 * h2 / 8;
            double p02 = f02 + q * h2 * h / 6;
            double p11 = f11 + h * f12 + q * h2 * h / 3;
            double p12 = f12 + q * half;
            double p22 = c22 + q * h;
            double s = p00 + variance[i];
            double k0 = p00 / s;
            double k1 = p01 / s;
            double k2 = p02 / s;
            double re = east[i] - xe;
            double rn = north[i] - xn;
            pe[i] = xe + k0 * re;
            pn[i] = xn + k0 * rn;
            ve[i] = ue + k1 * re;
            vn[i] = un + k1 * rn;
            ae[i] = ae[i - 1] + k2 * re;
            an[i] = an[i - 1] + k2 * rn;
            c00 = p00 - k0 * p00;
            c01 = p01 - k0 * p01;
            c02 = p02 - k0 * p02;
            c11 = p11 - k1 * p01;
            c12 = p12 - k1 * p02;
            c22 = p22 - k2 * p02;
            store(i, c00, c01, c02, c11, c12, c22);
        }
    }

    private void store(int i, double c00, double c01, double c02, double c11, double c12, double c22) {
        int b = 6 * i;
        cov[b] = c00;
        cov[b + 1] = c01;
        cov[b + 2] = c02;
        cov[b + 3] = c11;
        cov[b + 4] = c12;
        cov[b + 5] = c22;
    }

    /** Rauch-Tung-Striebel: x ← x + G (x⁺ − F x) with G = P Fᵀ (P⁻)⁻¹, from the last fix to the first. */
    private void backward(double[] density) {
        for (int i = t.length - 2; i >= 0; i--) {
            double h = t[i + 1] - t[i];
            double q = density[i + 1];
            double h2 = h * h;
            double half = h2 / 2;
            int b = 6 * i;
            double c00 = cov[b];
            double c01 = cov[b + 1];
            double c02 = cov[b + 2];
            double c11 = cov[b + 3];
            double c12 = cov[b + 4];
            double c22 = cov[b + 5];
            // M = F P; P Fᵀ = Mᵀ because P is symmetric.
            double m00 = c00 + h * c01 + half * c02;
            double m01 = c01 + h * c11 + half * c12;
            double m02 = c02 + h * c12 + half * c22;
            double m10 = c01 + h * c02;
            double m11 = c11 + h * c12;
            double m12 = c12 + h * c22;
            double p00 = m00 + h * m01 + half * m02 + q * h2 * h2 * h / 20;
            double p01 = m01 + h * m02 + q * h2 * h2 / 8;
            double p02 = m02 + q * h2 * h / 6;
            double p11 = m11 + h * m12 + q * h2 * h / 3;
            double p12 = m12 + q * half;
            double p22 = c22 + q * h;
            double d00 = p11 * p22 - p12 * p12;
            double d01 = p02 * p12 - p01 * p22;
            double d02 = p01 * p12 - p02 * p11;
            double d11 = p00 * p22 - p02 * p02;
            double d12 = p01 * p02 - p00 * p12;
            double d22 = p00 * p11 - p01 * p01;
            double det = p00 * d00 + p01 * d01 + p02 * d02;
            for (int axis = 0; axis < 2; axis++) {
                double[] p = axis == 0 ? pe : pn;
                double[] v = axis == 0 ? ve : vn;
                double[] a = axis == 0 ? ae : an;
                double r0 = p[i + 1] - (p[i] + h * v[i] + half * a[i]);
                double r1 = v[i + 1] - (v[i] + h * a[i]);
                double r2 = a[i + 1] - a[i];
                double w0 = (d00 * r0 + d01 * r1 + d02 * r2) / det;
                double w1 = (d01 * r0 + d11 * r1 + d12 * r2) / det;
                double w2 = (d02 * r0 + d12 * r1 + d22 * r2) / det;
                p[i] += m00 * w0 + m10 * w1 + c02 * w2;
                v[i] += m01 * w0 + m11 * w1 + c12 * w2;
                a[i] += m02 * w0 + m12 * w1 + c22 * w2;
            }
        }
    }
}
