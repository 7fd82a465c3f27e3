package io.rowledger.report.findings;

import io.rowledger.diagnose.signal.RowTime;
import java.util.ArrayList;
import java.util.List;

/**
 * The picture of deviation by row and time at a size that fits paper and a small file: columns in time order that never
 * cross the end of a pass, rows from the left.
 *
 * @param startS start of each column, seconds since the Unix epoch
 * @param endS end of each column
 * @param pass the pass a column lies in, from 1
 * @param deviation by row, then column: row flow against what the other rows imply, −1 for no flow, 0 for alike; NaN if it was
 *     evaluated for less than half of the column
 */
public record RowPicture(double[] startS, double[] endS, int[] pass, float[][] deviation) {
    /** Largest number of columns that print apart on a sheet of paper. */
    public static final int MAX_COLUMNS = 360;

    /** Checks that all columns are there for every row. */
    public RowPicture {
        for (float[] row : deviation) {
            if (row.length != startS.length || endS.length != startS.length || pass.length != startS.length) {
                throw new IllegalArgumentException("rows of different length in a picture");
            }
        }
    }

    /** Number of rows. */
    public int rows() {
        return deviation.length;
    }

    /** Number of columns. */
    public int columns() {
        return startS.length;
    }

    /** Working time shown, s. */
    public double workingS() {
        double sum = 0;
        for (int c = 0; c < columns(); c++) {
            sum += endS[c] - startS[c];
        }
        return sum;
    }

    /** True if a new pass begins with this column. */
    public boolean passBegins(int c) {
        return c == 0 || pass[c] != pass[c - 1];
    }

    /** Joins bins to at most {@link #MAX_COLUMNS} columns, or one per pass if there are more passes. */
    public static RowPicture of(RowTime full) {
        int group = Math.max(1, (full.bins() + MAX_COLUMNS - 1) / MAX_COLUMNS);
        List<int[]> columns = new ArrayList<>();
        for (int b = 0; b < full.bins(); ) {
            int end = b + 1;
            while (end < full.bins() && end < b + group && !full.passBegins(end)) {
                end++;
            }
            columns.add(new int[] {b, end});
            b = end;
        }
        int n = columns.size();
        RowPicture picture = new RowPicture(new double[n], new double[n], new int[n], new float[full.rows()][n]);
        for (int c = 0; c < n; c++) {
            int from = columns.get(c)[0];
            int end = columns.get(c)[1];
            picture.startS[c] = full.startS(from);
            picture.endS[c] = full.endS(end - 1);
            picture.pass[c] = full.pass(from);
            for (int r = 0; r < full.rows(); r++) {
                picture.deviation[r][c] = (float) mean(full, r, from, end);
            }
        }
        return picture;
    }

    /** Mean deviation by time; NaN if less than half of the time was evaluated. */
    private static double mean(RowTime full, int r, int from, int end) {
        double sum = 0;
        double evaluatedS = 0;
        double allS = 0;
        for (int b = from; b < end; b++) {
            double seconds = full.endS(b) - full.startS(b);
            double deviation = full.deviation(r, b);
            allS += seconds;
            if (!Double.isNaN(deviation)) {
                sum += deviation * seconds;
                evaluatedS += seconds;
            }
        }
        return evaluatedS > 0 && evaluatedS >= allS / 2 ? sum / evaluatedS : Double.NaN;
    }

    /** CSS class for the height of a picture of so many rows; lower if several share a page. */
    public static String size(int rows, boolean several) {
        if (several) {
            return rows <= 16 ? "few" : "some";
        }
        return rows <= 8 ? "few" : rows <= 16 ? "some" : "many";
    }
}
