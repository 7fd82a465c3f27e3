package io.rowledger.coverage.sections;

/**
 * Target volume of ground that rows passed over while shut off after another visit had delivered there. A row's
 * shortfall is evaluated against its target volume less this credit.
 */
public final class ShutOffCredit {
    private final double[][][] targetL;

    /** Uses the values without copying them: {@code [product][pass − 1][row − 1]}, L; NaN without a target. */
    ShutOffCredit(double[][][] targetL) {
        this.targetL = targetL;
    }

    /** Returns a credit of 0 for every row. */
    public static ShutOffCredit nothing(int products, int passes, int rows) {
        return new ShutOffCredit(new double[products][passes][rows]);
    }

    /** Returns the credit of row {@code row} (from 1) for product p over the whole job, L. */
    public double ofRowL(int p, int row) {
        double sum = 0;
        for (double[] pass : targetL[p]) {
            sum += pass[row - 1];
        }
        return sum;
    }

    /** Returns the credit of all rows for product p in pass {@code pass} (from 1), L. */
    public double ofPassL(int p, int pass) {
        double sum = 0;
        for (double row : targetL[p][pass - 1]) {
            sum += row;
        }
        return sum;
    }

    /** Returns the credit of all rows for product p, L. */
    public double ofJobL(int p) {
        double sum = 0;
        for (int pass = 1; pass <= targetL[p].length; pass++) {
            sum += ofPassL(p, pass);
        }
        return sum;
    }
}
