package io.rowledger.track;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class PathSmootherTest {
    /**
     * Oracle: the smoothed states are the generalised least-squares solution of the same model (prior, motion and fixes
     * as one system of normal equations, solved by elimination). The recursion must find the same point.
     */
    @Test
    void the_recursion_finds_the_least_squares_solution_of_its_model() {
        SplittableRandom random = new SplittableRandom(4);
        for (double density : new double[] {1e-4, 0.05, 2}) {
            int n = 14;
            double[] t = new double[n];
            double[] east = new double[n];
            double[] north = new double[n];
            double[] sigma = new double[n];
            for (int i = 0; i < n; i++) {
                t[i] = (i == 0 ? 0 : t[i - 1]) + random.nextDouble(0.1, 1.2);
                east[i] = 2 * t[i] + Math.sin(t[i]) + random.nextDouble(-0.1, 0.1);
                north[i] = 0.3 * t[i] * t[i] + random.nextDouble(-0.1, 0.1);
                sigma[i] = random.nextDouble(0.02, 0.2);
            }
            PathSmoother smoother = PathSmoother.atDensity(t, east, north, sigma, density);
            double[] solution = leastSquares(t, east, sigma, density);
            for (int i = 0; i < n; i++) {
                assertEquals(solution[3 * i], smoother.pe[i], 1e-6, "position " + i);
                assertEquals(solution[3 * i + 1], smoother.ve[i], 1e-6, "velocity " + i);
                assertEquals(solution[3 * i + 2], smoother.ae[i], 1e-5, "acceleration " + i);
            }
        }
    }

    @Test
    void a_straight_line_in_noise_comes_out_straight_and_a_sharp_turn_is_not_cut() {
        // 60 s straight at 2 m/s, a quarter circle of 6 m, 60 s straight; 10 Hz, 1.2 cm of noise.
        SplittableRandom random = new SplittableRandom(9);
        int n = 1250;
        double[] t = new double[n];
        double[][] real = new double[n][];
        double[] east = new double[n];
        double[] north = new double[n];
        double[] sigma = new double[n];
        for (int i = 0; i < n; i++) {
            t[i] = i / 10.0;
            real[i] = corner(2 * t[i] - 120);
            east[i] = real[i][0] + 0.012 * random.nextGaussian();
            north[i] = real[i][1] + 0.012 * random.nextGaussian();
            sigma[i] = 0.012;
        }
        PathSmoother smoother = PathSmoother.of(t, east, north, sigma);
        double straight = 0;
        for (int i = 100; i < 450; i++) {
            straight += square(smoother.pe[i] - real[i][0]);
        }
        double sideways = Math.sqrt(straight / 350);
        assertTrue(sideways < 0.003, "1.2 cm of noise left " + sideways + " m on a guidance line");
        for (int i = 50; i < n - 50; i++) {
            double off = Math.hypot(smoother.pe[i] - real[i][0], smoother.pn[i] - real[i][1]);
            assertTrue(off < 0.04, "cut by " + off + " m at " + t[i] + " s");
        }
    }

    /** Way s along north, a quarter circle to the east with radius 6 m from s = 0, then east. */
    private static double[] corner(double s) {
        double arc = Math.PI / 2 * 6;
        if (s < 0) {
            return new double[] {0, s};
        }
        if (s < arc) {
            return new double[] {6 - 6 * Math.cos(s / 6), 6 * Math.sin(s / 6)};
        }
        return new double[] {6 + s - arc, 6};
    }

    private static double square(double x) {
        return x * x;
    }

    private static double[] leastSquares(double[] t, double[] z, double[] sigma, double q) {
        int n = t.length;
        double[][] a = new double[3 * n][3 * n];
        double[] b = new double[3 * n];
        double h0 = t[1] - t[0];
        double[] mean = {z[0], (z[1] - z[0]) / h0, 0};
        // The filter starts from the first fix: its noise is the first position's, and it is used once.
        double[] precision = {1 / square(sigma[0]), 1 / (9 + 2 * square(sigma[0]) / (h0 * h0)), 1 / 4.0};
        for (int j = 0; j < 3; j++) {
            a[j][j] += precision[j];
            b[j] += precision[j] * mean[j];
        }
        for (int i = 1; i < n; i++) {
            a[3 * i][3 * i] += 1 / square(sigma[i]);
            b[3 * i] += z[i] / square(sigma[i]);
            double h = t[i] - t[i - 1];
            double[][] f = {{1, h, h * h / 2}, {0, 1, h}, {0, 0, 1}};
            double[][] cov = {
                {Math.pow(h, 5) / 20, Math.pow(h, 4) / 8, Math.pow(h, 3) / 6},
                {Math.pow(h, 4) / 8, Math.pow(h, 3) / 3, h * h / 2},
                {Math.pow(h, 3) / 6, h * h / 2, h}
            };
            double[][] w = inverse(cov, q);
            // (x⁺ − F x)ᵀ W (x⁺ − F x): J = [−F, I].
            for (int r = 0; r < 3; r++) {
                for (int c = 0; c < 3; c++) {
                    for (int k = 0; k < 3; k++) {
                        a[3 * (i - 1) + r][3 * i + c] -= f[k][r] * w[k][c];
                        a[3 * i + c][3 * (i - 1) + r] -= f[k][r] * w[k][c];
                        for (int l = 0; l < 3; l++) {
                            a[3 * (i - 1) + r][3 * (i - 1) + c] += f[k][r] * w[k][l] * f[l][c];
                        }
                    }
                    a[3 * i + r][3 * i + c] += w[r][c];
                }
            }
        }
        return solve(a, b);
    }

    private static double[][] inverse(double[][] m, double scale) {
        double[][] out = new double[3][3];
        for (int c = 0; c < 3; c++) {
            double[][] a = new double[3][];
            for (int r = 0; r < 3; r++) {
                a[r] = Arrays.stream(m[r]).map(x -> x * scale).toArray();
            }
            double[] e = new double[3];
            e[c] = 1;
            double[] x = solve(a, e);
            for (int r = 0; r < 3; r++) {
                out[r][c] = x[r];
            }
        }
        return out;
    }

    /** Gaussian elimination with partial pivoting. */
    private static double[] solve(double[][] a, double[] b) {
        int n = b.length;
        for (int p = 0; p < n; p++) {
            int best = p;
            for (int r = p + 1; r < n; r++) {
                best = Math.abs(a[r][p]) > Math.abs(a[best][p]) ? r : best;
            }
            double[] row = a[p];
            a[p] = a[best];
            a[best] = row;
            double value = b[p];
            b[p] = b[best];
            b[best] = value;
            for (int r = p + 1; r < n; r++) {
                double factor = a[r][p] / a[p][p];
                for (int c = p; c < n; c++) {
                    a[r][c] -= factor * a[p][c];
                }
                b[r] -= factor * b[p];
            }
        }
        double[] x = new double[n];
        for (int r = n - 1; r >= 0; r--) {
            double sum = b[r];
            for (int c = r + 1; c < n; c++) {
                sum -= a[r][c] * x[c];
            }
            x[r] = sum / a[r][r];
        }
        return x;
    }
}
