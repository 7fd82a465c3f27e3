package io.rowledger.diagnose.setup;

/** Symmetric positive definite matrices of some ten rows, by their Cholesky factors A = L·Lᵀ. */
final class SmallMatrix {
    private SmallMatrix() {}

    /** Returns L; a pivot that is not positive becomes 1e-6. */
    static double[][] cholesky(double[][] a) {
        int n = a.length;
        double[][] l = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = a[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= l[i][k] * l[j][k];
                }
                l[i][j] = i == j ? Math.sqrt(Math.max(sum, 1e-12)) : sum / l[j][j];
            }
        }
        return l;
    }

    /** Returns ln |A| from L. */
    static double logDet(double[][] l) {
        double sum = 0;
        for (int i = 0; i < l.length; i++) {
            sum += 2 * Math.log(l[i][i]);
        }
        return sum;
    }

    /** Returns A⁻¹ from L. */
    static double[][] inverse(double[][] l) {
        int n = l.length;
        double[][] li = new double[n][n];
        for (int c = 0; c < n; c++) {
            for (int i = c; i < n; i++) {
                double sum = i == c ? 1 : 0;
                for (int k = c; k < i; k++) {
                    sum -= l[i][k] * li[k][c];
                }
                li[i][c] = sum / l[i][i];
            }
        }
        double[][] inverse = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = 0;
                for (int k = i; k < n; k++) {
                    sum += li[k][i] * li[k][j];
                }
                inverse[i][j] = sum;
                inverse[j][i] = sum;
            }
        }
        return inverse;
    }

    /** Returns A·x. */
    static double[] times(double[][] a, double[] x) {
        double[] y = new double[a.length];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < x.length; j++) {
                y[i] += a[i][j] * x[j];
            }
        }
        return y;
    }

    /** Returns x·y. */
    static double dot(double[] x, double[] y) {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            sum += x[i] * y[i];
        }
        return sum;
    }
}
