package io.rowledger.report.review;

import io.rowledger.document.chart.Scale;
import io.rowledger.document.chart.XyChart.Margins;

/**
 * The rows of a bar side by side below a bar chart.
 *
 * @param first number of the first row
 * @param count number of rows
 * @param widthPt width of the whole chart, pt
 */
record RowAxis(int first, int count, double widthPt) {
    /** Share of a slot that a bar fills. */
    private static final double BAR = 0.7;
    /** Widest bar, pt: for charts of few rows. */
    private static final double MAX_BAR_PT = 28;

    Scale scale() {
        return Scale.slots(first, count);
    }

    /** Half the width of a bar, in slots. */
    private double halfBar() {
        double slotPt = (widthPt - Margins.CAPTIONED.left()) / count;
        return Math.min(BAR, MAX_BAR_PT / slotPt) / 2;
    }

    /** Left edges of the bars: at −1 the left edge of a whole bar, at 0 its middle. */
    double[] from(double half) {
        return edges(half);
    }

    /** Right edges of the bars: at 1 the right edge of a whole bar, at 0 its middle. */
    double[] to(double half) {
        return edges(half);
    }

    private double[] edges(double half) {
        double[] edges = new double[count];
        for (int i = 0; i < count; i++) {
            edges[i] = i + half * halfBar();
        }
        return edges;
    }
}
