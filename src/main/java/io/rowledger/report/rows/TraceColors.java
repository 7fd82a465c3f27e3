package io.rowledger.report.rows;

import io.rowledger.document.chart.Palette;

/** Colors of the lines in the row diagnosis: one meaning, one color, on every page. */
final class TraceColors {
    static final int ROW = Palette.VERMILLION;
    static final int PEERS = Palette.BLUE;
    static final int TARGET = 0x8a8f92;

    private TraceColors() {}

    /** The largest finite value of all columns; NaN if there is none. */
    static double max(double[]... columns) {
        double max = Double.NaN;
        for (double[] column : columns) {
            for (double value : column) {
                if (Double.isFinite(value)) {
                    max = Double.isNaN(max) ? value : Math.max(max, value);
                }
            }
        }
        return max;
    }
}
