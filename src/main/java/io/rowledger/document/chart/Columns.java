package io.rowledger.document.chart;

import org.jfree.data.xy.AbstractIntervalXYDataset;

/** One series as columns: boxes from (x0, y0) to (x1, y1), or points (x0, y0). The arrays are not copied. */
final class Columns extends AbstractIntervalXYDataset {
    private static final long serialVersionUID = 1L;

    private final transient double[] x0;
    private final transient double[] x1;
    private final transient double[] y0;
    private final transient double[] y1;

    private Columns(double[] x0, double[] x1, double[] y0, double[] y1) {
        if (x1.length != x0.length || y0.length != x0.length || y1.length != x0.length) {
            throw new IllegalArgumentException("columns of different length in a chart");
        }
        this.x0 = x0;
        this.x1 = x1;
        this.y0 = y0;
        this.y1 = y1;
    }

    static Columns boxes(double[] x0, double[] x1, double[] y0, double[] y1) {
        return new Columns(x0, x1, y0, y1);
    }

    static Columns points(double[] x, double[] y) {
        return new Columns(x, x, y, y);
    }

    @Override
    public int getSeriesCount() {
        return 1;
    }

    @Override
    public Comparable<?> getSeriesKey(int series) {
        return series;
    }

    @Override
    public int getItemCount(int series) {
        return x0.length;
    }

    @Override
    public double getXValue(int series, int item) {
        return x0[item];
    }

    @Override
    public double getYValue(int series, int item) {
        return y0[item];
    }

    @Override
    public Number getX(int series, int item) {
        return x0[item];
    }

    @Override
    public Number getY(int series, int item) {
        return y0[item];
    }

    @Override
    public double getStartXValue(int series, int item) {
        return x0[item];
    }

    @Override
    public double getEndXValue(int series, int item) {
        return x1[item];
    }

    @Override
    public double getStartYValue(int series, int item) {
        return y0[item];
    }

    @Override
    public double getEndYValue(int series, int item) {
        return y1[item];
    }

    @Override
    public Number getStartX(int series, int item) {
        return x0[item];
    }

    @Override
    public Number getEndX(int series, int item) {
        return x1[item];
    }

    @Override
    public Number getStartY(int series, int item) {
        return y0[item];
    }

    @Override
    public Number getEndY(int series, int item) {
        return y1[item];
    }
}
