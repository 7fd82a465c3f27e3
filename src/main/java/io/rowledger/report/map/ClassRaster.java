package io.rowledger.report.map;

import io.rowledger.coverage.grid.ReceivedGrid;
import java.util.Arrays;
import java.util.function.DoubleToIntFunction;

/**
 * The received grid as classes of deviation, coarse enough for paper: blocks of f × f cells, each block's rate being
 * volume over target volume of all of it, so that a class is weighted by area.
 *
 * <p>Block (col, row) starts at the grid's south-west corner; index row·cols + col. −1 where less than half of the block is
 * covered.
 */
public final class ClassRaster {
    /** Blocks across the longer side: a block is then about a point wide, finer than a printer's eye. */
    static final int MAX_BLOCKS = 500;
    /** A block shows a color from this covered share of it on. */
    private static final double MIN_COVERED = 0.5;

    final int cols;
    final int rows;
    final double blockM;
    final byte[] classes;
    /** Covered area per class, m², from the single cells. */
    public final double[] classM2;

    private final int cellsPerBlock;

    private ClassRaster(ReceivedGrid grid, int classCount) {
        this.cellsPerBlock = Math.max(1, (Math.max(grid.cols(), grid.rows()) + MAX_BLOCKS - 1) / MAX_BLOCKS);
        this.cols = (grid.cols() + cellsPerBlock - 1) / cellsPerBlock;
        this.rows = (grid.rows() + cellsPerBlock - 1) / cellsPerBlock;
        this.blockM = grid.cellM() * cellsPerBlock;
        this.classes = new byte[cols * rows];
        this.classM2 = new double[classCount];
    }

    /**
     * Classes of product p against its target.
     *
     * @param fallbackLPerM2 the rate cells without a target are compared with
     */
    static ClassRaster of(ReceivedGrid grid, int p, double fallbackLPerM2) {
        ClassRaster raster = new ClassRaster(grid, DeviationClasses.count());
        float[] target = grid.targetL()[p];
        raster.fill(
                grid,
                grid.volumeL()[p],
                (i, areaM2) -> target[i] > 0 ? target[i] : fallbackLPerM2 * areaM2,
                ratio -> DeviationClasses.of(ratio - 1));
        return raster;
    }

    /**
     * Classes of a rate.
     *
     * @param got per cell, kg or L
     * @param boundsPerM2 upper bounds of the classes but the last, ascending
     */
    public static ClassRaster ofRates(ReceivedGrid grid, float[] got, double[] boundsPerM2) {
        ClassRaster raster = new ClassRaster(grid, boundsPerM2.length + 1);
        raster.fill(grid, got, (i, areaM2) -> areaM2, rate -> RateClasses.classOf(rate, boundsPerM2));
        return raster;
    }

    /** What a cell's amount is divided by. */
    private interface Wanted {
        double of(int i, double areaM2);
    }

    private void fill(ReceivedGrid grid, float[] got, Wanted wanted, DoubleToIntFunction classOf) {
        int f = cellsPerBlock;
        double least = MIN_COVERED * blockM * blockM;
        for (int row = 0; row < rows; row++) {
            Blocks blocks = new Blocks(cols);
            for (int y = row * f; y < Math.min(grid.rows(), (row + 1) * f); y++) {
                for (int x = 0; x < grid.cols(); x++) {
                    int i = y * grid.cols() + x;
                    double areaM2 = grid.coveredM2()[i];
                    if (areaM2 > 0) {
                        double divisor = wanted.of(i, areaM2);
                        blocks.add(x / f, areaM2, got[i], divisor);
                        if (divisor > 0) {
                            classM2[classOf.applyAsInt(got[i] / divisor)] += areaM2;
                        }
                    }
                }
            }
            for (int col = 0; col < cols; col++) {
                boolean shown = blocks.coveredM2[col] >= least && blocks.wanted[col] > 0;
                classes[row * cols + col] =
                        (byte) (shown ? classOf.applyAsInt(blocks.got[col] / blocks.wanted[col]) : -1);
            }
        }
    }

    /** Sums of one row of blocks. */
    private static final class Blocks {
        final double[] coveredM2;
        final double[] got;
        final double[] wanted;

        Blocks(int cols) {
            coveredM2 = new double[cols];
            got = new double[cols];
            wanted = new double[cols];
        }

        void add(int col, double areaM2, double gotHere, double wantedHere) {
            coveredM2[col] += areaM2;
            got[col] += gotHere;
            wanted[col] += wantedHere;
        }
    }

    /**
     * Widens rows that are far off and would be too thin to see: every stretch of blocks of more than 10 % under, or of more than
     * 10 % over, that is at least {@code minLengthM} long takes {@code blocks} more blocks on either side where these are
     * nearer to the target. Short marks keep their size, so that they don't look like more than they are.
     *
     * @return true if anything was widened
     */
    boolean widen(int blocks, double minLengthM) {
        byte[] before = classes.clone();
        boolean[] seen = new boolean[before.length];
        int[] queue = new int[before.length];
        boolean widened = false;
        for (int i = 0; i < before.length; i++) {
            if (seen[i] || side(before[i]) == 0) {
                continue;
            }
            int found = stretch(before, i, seen, queue);
            if (lengthM(queue, found) >= minLengthM) {
                for (int q = 0; q < found; q++) {
                    spread(before, queue[q], blocks);
                }
                widened = true;
            }
        }
        return widened;
    }

    /** −1 for a class of more than 10 % under, 1 for one of more than 10 % over, else 0. */
    private static int side(byte shown) {
        int away = shown - DeviationClasses.ON_TARGET;
        return shown < 0 || Math.abs(away) < 2 ? 0 : Integer.signum(away);
    }

    /** Fills the queue with the blocks that touch block i by a side or corner and lie on its side; returns their number. */
    private int stretch(byte[] before, int i, boolean[] seen, int[] queue) {
        int found = 0;
        queue[found++] = i;
        seen[i] = true;
        for (int q = 0; q < found; q++) {
            int row = queue[q] / cols;
            int col = queue[q] % cols;
            for (int r = Math.max(0, row - 1); r <= Math.min(rows - 1, row + 1); r++) {
                for (int c = Math.max(0, col - 1); c <= Math.min(cols - 1, col + 1); c++) {
                    int at = r * cols + c;
                    if (!seen[at] && side(before[at]) == side(before[i])) {
                        seen[at] = true;
                        queue[found++] = at;
                    }
                }
            }
        }
        return found;
    }

    private double lengthM(int[] queue, int found) {
        int west = cols;
        int east = 0;
        int south = rows;
        int north = 0;
        for (int q = 0; q < found; q++) {
            west = Math.min(west, queue[q] % cols);
            east = Math.max(east, queue[q] % cols);
            south = Math.min(south, queue[q] / cols);
            north = Math.max(north, queue[q] / cols);
        }
        return Math.hypot(east - west + 1, north - south + 1) * blockM;
    }

    private void spread(byte[] before, int i, int blocks) {
        int row = i / cols;
        int col = i % cols;
        for (int r = Math.max(0, row - blocks); r <= Math.min(rows - 1, row + blocks); r++) {
            for (int c = Math.max(0, col - blocks); c <= Math.min(cols - 1, col + blocks); c++) {
                int at = r * cols + c;
                int here = Math.abs(classes[at] - DeviationClasses.ON_TARGET);
                if (classes[at] >= 0 && here < Math.abs(before[i] - DeviationClasses.ON_TARGET)) {
                    classes[at] = before[i];
                }
            }
        }
    }

    /** The class at a place on the plane; −1 outside or where none is shown. */
    int at(ReceivedGrid grid, double eastM, double northM) {
        int col = (int) Math.floor((eastM - grid.east0M()) / blockM);
        int row = (int) Math.floor((northM - grid.north0M()) / blockM);
        return col < 0 || row < 0 || col >= cols || row >= rows ? -1 : classes[row * cols + col];
    }

    /** Receives boxes of blocks: columns [col, col + width), rows [row, row + height). */
    interface Boxes {
        void box(int col, int row, int width, int height);
    }

    /**
     * Covers all blocks of a class with few boxes: runs along a row, grown upward while the rows above have the same run.
     *
     * @param wanted the class, or −1 for any class
     */
    void boxes(int wanted, Boxes out) {
        boolean[] done = new boolean[classes.length];
        for (int row = 0; row < rows; row++) {
            for (int col = 0; col < cols; ) {
                if (!is(wanted, row, col) || done[row * cols + col]) {
                    col++;
                    continue;
                }
                int end = col;
                while (end < cols && is(wanted, row, end) && !done[row * cols + end]) {
                    end++;
                }
                int top = row + 1;
                while (top < rows && sameRun(wanted, top, col, end)) {
                    top++;
                }
                for (int r = row; r < top; r++) {
                    Arrays.fill(done, r * cols + col, r * cols + end, true);
                }
                out.box(col, row, end - col, top - row);
                col = end;
            }
        }
    }

    private boolean sameRun(int wanted, int row, int col, int end) {
        for (int c = col; c < end; c++) {
            if (!is(wanted, row, c)) {
                return false;
            }
        }
        return true;
    }

    private boolean is(int wanted, int row, int col) {
        byte found = classes[row * cols + col];
        return wanted < 0 ? found >= 0 : found == wanted;
    }
}
