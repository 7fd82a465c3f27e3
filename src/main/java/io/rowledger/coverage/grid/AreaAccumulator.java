package io.rowledger.coverage.grid;

/**
 * Accumulates weight × area of polygons by grid cell, exactly: the signed-area accumulation of font rasterizers.
 *
 * <p>Every edge of a clockwise polygon adds the signed area between itself and the right rim of the grid: to the cells
 * that it crosses, the part right of it; to all cells further right, its height, by a running sum along the grid row
 * when reading. An edge that two polygons share can be added once, with the difference of their weights. There is no
 * sampling; the only error is rounding of sums. Lengths are in cells from the grid's south-west corner.
 *
 * <p>Measured by {@code CoverageBenchmark.gridDeposit}: two edges per strip and product.
 */
public final class AreaAccumulator {
    private final int cols;
    private final int stride;
    /** One column more than the grid, for what an edge in the last column passes on. */
    private final double[] sum;

    /** A grid of cols × rows cells, all 0. */
    public AreaAccumulator(int cols, int rows) {
        this.cols = cols;
        this.stride = cols + 1;
        this.sum = new double[stride * rows];
    }

    /** Adds the edge (x0, y0) to (x1, y1) of a clockwise outline, with a weight per cell area. */
    void edge(double x0, double y0, double x1, double y1, double weight) {
        if (y0 == y1 || weight == 0) {
            return;
        }
        if (y0 < y1) {
            rising(x0, y0, x1, y1, weight);
        } else {
            rising(x1, y1, x0, y0, -weight);
        }
    }

    private void rising(double x0, double y0, double x1, double y1, double weight) {
        int row = (int) y0;
        if (y1 <= row + 1) {
            span(row * stride, x0, x1, (y1 - y0) * weight);
            return;
        }
        double slope = (x1 - x0) / (y1 - y0);
        double y = y0;
        double x = x0;
        while (y < y1) {
            double yNext = Math.min(row + 1, y1);
            double xNext = yNext == y1 ? x1 : x0 + (yNext - y0) * slope;
            span(row * stride, x, xNext, (yNext - y) * weight);
            x = xNext;
            y = yNext;
            row++;
        }
    }

    /** Adds an edge within one grid row; {@code height} is its rise times its weight. */
    private void span(int base, double xa, double xb, double height) {
        double left = Math.min(xa, xb);
        double right = Math.max(xa, xb);
        int col = (int) left;
        if (right <= col + 1) {
            double shareLeft = 0.5 * (left + right) - col;
            sum[base + col] += height * (1 - shareLeft);
            sum[base + col + 1] += height * shareLeft;
            return;
        }
        double perX = height / (right - left);
        double x = left;
        while (x < right) {
            double next = Math.min(col + 1, right);
            double part = (next - x) * perX;
            double shareLeft = 0.5 * (x + next) - col;
            sum[base + col] += part * (1 - shareLeft);
            sum[base + col + 1] += part * shareLeft;
            x = next;
            col++;
        }
    }

    /** Adds an amount (weight × cells) to the cell that holds the point. */
    void point(double x, double y, double amount) {
        int row = (int) y;
        int i = row * stride + (int) x;
        sum[i] += amount;
        sum[i + 1] -= amount;
    }

    /** Reads a grid row: weight × area, in cells, of this and the other accumulator together. */
    public void readRow(int row, AreaAccumulator other, double[] out) {
        double carried = 0;
        int base = row * stride;
        for (int col = 0; col < cols; col++) {
            carried += sum[base + col] + other.sum[base + col];
            out[col] = carried;
        }
    }

    /** Reads a grid row: weight × area, in cells. */
    public void readRow(int row, double[] out) {
        double carried = 0;
        int base = row * stride;
        for (int col = 0; col < cols; col++) {
            carried += sum[base + col];
            out[col] = carried;
        }
    }
}
