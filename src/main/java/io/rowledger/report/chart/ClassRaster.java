package io.rowledger.report.chart;

import io.rowledger.coverage.ReceivedGrid;
import java.util.Arrays;

/**
 * The received grid as classes of deviation, coarse enough for paper: blocks of f × f cells, each block's rate being
 * volume over target volume of all of it, so that a class is weighted by area.
 *
 * <p>Block (col, row) starts at the grid's south-west corner; index row·cols + col. −1 where less than half of the block is
 * covered.
 */
final class ClassRaster {
    /** Blocks across the longer side: a block is then about a point wide, finer than a printer's eye. */
    static final int MAX_BLOCKS = 500;
    /** A block shows a colour from this covered share of it on. */
    private static final double MIN_COVERED = 0.5;

    final int cols;
    final int rows;
    final double blockM;
    final byte[] classes;
    /** Covered area per class, m², from the single cells. */
    final double[] classM2 = new double[Palette.DEVIATION.length];

    private ClassRaster(int cols, int rows, double blockM) {
        this.cols = cols;
        this.rows = rows;
        this.blockM = blockM;
        this.classes = new byte[cols * rows];
    }

    /**
     * Classes of product p.
     *
     * @param fallbackLPerM2 the rate cells without a target are compared with
     */
    static ClassRaster of(ReceivedGrid grid, int p, double fallbackLPerM2) {
        int f = Math.max(1, (Math.max(grid.cols(), grid.rows()) + MAX_BLOCKS - 1) / MAX_BLOCKS);
        ClassRaster raster = new ClassRaster((grid.cols() + f - 1) / f, (grid.rows() + f - 1) / f, grid.cellM() * f);
        double least = MIN_COVERED * raster.blockM * raster.blockM;
        for (int row = 0; row < raster.rows; row++) {
            Blocks blocks = new Blocks(raster.cols);
            for (int y = row * f; y < Math.min(grid.rows(), (row + 1) * f); y++) {
                for (int x = 0; x < grid.cols(); x++) {
                    int i = y * grid.cols() + x;
                    double areaM2 = grid.coveredM2()[i];
                    if (areaM2 > 0) {
                        double targetL = grid.targetL()[p][i];
                        double wantedL = targetL > 0 ? targetL : fallbackLPerM2 * areaM2;
                        raster.addCell(blocks, x / f, areaM2, grid.volumeL()[p][i], wantedL);
                    }
                }
            }
            for (int col = 0; col < raster.cols; col++) {
                boolean shown = blocks.coveredM2[col] >= least && blocks.targetL[col] > 0;
                raster.classes[row * raster.cols + col] =
                        (byte) (shown ? Palette.classOf(blocks.volumeL[col] / blocks.targetL[col] - 1) : -1);
            }
        }
        return raster;
    }

    private void addCell(Blocks blocks, int col, double areaM2, double volumeL, double targetL) {
        blocks.coveredM2[col] += areaM2;
        blocks.volumeL[col] += volumeL;
        blocks.targetL[col] += targetL;
        if (targetL > 0) {
            classM2[Palette.classOf(volumeL / targetL - 1)] += areaM2;
        }
    }

    /** Sums of one row of blocks. */
    private static final class Blocks {
        final double[] coveredM2;
        final double[] volumeL;
        final double[] targetL;

        Blocks(int cols) {
            coveredM2 = new double[cols];
            volumeL = new double[cols];
            targetL = new double[cols];
        }
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
