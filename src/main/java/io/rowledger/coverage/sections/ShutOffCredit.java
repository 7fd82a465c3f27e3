package io.rowledger.coverage.sections;

/**
 * What rows did not owe: the target volume of ground they passed over shut off after another visit had delivered there.
 * A row's shortfall is judged against its target volume less this.
 */
public final class ShutOffCredit {
    private final double[][][] targetL;

    /** Takes over {@code [product][pass − 1][row − 1]}, L; NaN where there was no target. */
    ShutOffCredit(double[][][] targetL) {
        this.targetL = targetL;
    }

    /** Nothing was rightly off: every row owed all of its target volume. */
    public static ShutOffCredit nothing(int products, int passes, int rows) {
        return new ShutOffCredit(new double[products][passes][rows]);
    }

    /** What row {@code row} (from 1) did not owe of product p over the whole job, L. */
    public double ofRowL(int p, int row) {
        double sum = 0;
        for (double[] pass : targetL[p]) {
            sum += pass[row - 1];
        }
        return sum;
    }

    /** What all rows together did not owe of product p in pass {@code pass} (from 1), L. */
    public double ofPassL(int p, int pass) {
        double sum = 0;
        for (double row : targetL[p][pass - 1]) {
            sum += row;
        }
        return sum;
    }

    /** What all rows together did not owe of product p, L. */
    public double ofJobL(int p) {
        double sum = 0;
        for (int pass = 1; pass <= targetL[p].length; pass++) {
            sum += ofPassL(p, pass);
        }
        return sum;
    }
}
