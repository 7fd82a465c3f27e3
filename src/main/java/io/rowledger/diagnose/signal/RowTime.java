package io.rowledger.diagnose.signal;

/**
 * Deviation of every row from what its other rows imply in the same instant, by time: the picture in which a person sees
 * the fault before reading. Only working time has bins; a bin never crosses the end of a pass. Row r from 0 at the left,
 * bin b from 0 in time order.
 */
public final class RowTime {
    private final double[] startS;
    private final double[] endS;
    private final int[] pass;
    private final float[][] ratio;

    public RowTime(double[] startS, double[] endS, int[] pass, float[][] ratio) {
        this.startS = startS;
        this.endS = endS;
        this.pass = pass;
        this.ratio = ratio;
    }

    /** A picture without bins, of a log that doesn't tell rows apart. */
    public static RowTime nothing(int rows) {
        return new RowTime(new double[0], new double[0], new int[0], new float[rows][0]);
    }

    /** Number of rows. */
    public int rows() {
        return ratio.length;
    }

    /** Number of bins. */
    public int bins() {
        return startS.length;
    }

    /** Start of a bin, seconds since the Unix epoch. */
    public double startS(int b) {
        return startS[b];
    }

    /** End of a bin, seconds since the Unix epoch. */
    public double endS(int b) {
        return endS[b];
    }

    /** The pass a bin lies in, from 1. */
    public int pass(int b) {
        return pass[b];
    }

    /** True where a new pass begins with this bin. */
    public boolean passBegins(int b) {
        return b == 0 || pass[b] != pass[b - 1];
    }

    /**
     * Row flow against what its other rows imply, as a fraction: −1 nothing, 0 like the other rows, 0.3 thirty percent more.
     * NaN where the row was shut off, just came on or goes off, or too few other rows delivered.
     */
    public double deviation(int r, int b) {
        return ratio[r][b] - 1.0;
    }
}
