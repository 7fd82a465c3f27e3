package io.rowledger.document.chart;

import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.units.UnitFormat;

/** The frame of a bar chart: a scale in percent on the left, one slot a row. */
public final class Plot {
    private static final double LEFT_PT = 30;
    private static final double BOTTOM_PT = 22;
    private static final double TOP_PT = 14;

    public final double left = LEFT_PT;
    public final double width;
    public final double bar;

    private final Canvas canvas;
    private final UnitFormat f;
    private final double bottomPt;
    private final double slot;
    private final int slots;
    private final double low;
    private final double high;
    private final double step;

    public Plot(Canvas canvas, UnitFormat f, double widthPt, double heightPt, int slots, double low, double high) {
        this.canvas = canvas;
        this.f = f;
        this.width = widthPt - LEFT_PT;
        this.bottomPt = heightPt - BOTTOM_PT;
        this.slots = slots;
        this.slot = width / slots;
        // A limit for charts of few slots.
        this.bar = Math.min(0.7 * slot, 28);
        this.step = Axis.step(high - low, 5);
        this.low = Math.floor(low / step) * step;
        this.high = Math.ceil(high / step) * step;
    }

    public double y(double value) {
        return bottomPt - (value - low) / (high - low) * (bottomPt - TOP_PT);
    }

    public double middle(int i) {
        return left + (i + 0.5) * slot;
    }

    public double slot() {
        return slot;
    }

    public double bottom() {
        return bottomPt;
    }

    /** Lines across with their figures. */
    public void grid(boolean signed) {
        int marks = (int) Math.round((high - low) / step);
        for (int i = 0; i <= marks; i++) {
            double value = low + i * step;
            canvas.line(left, y(value), left + width, y(value), Palette.GRID, 0.4);
            String figure = f.fixed(value, Axis.decimals(step));
            String sign = signed && value > step / 2 ? "+" : "";
            canvas.text(sign + figure, left - 4, y(value) + 2.4, Palette.LABEL, Align.RIGHT);
        }
    }

    /** Numbers under the slots, as many as have room, and a caption below. */
    public void numbers(int first, String caption) {
        int every = 1;
        while (every * slot < 13) {
            every = every == 1 ? 2 : every == 2 ? 4 : every * 2;
        }
        for (int i = 0; i < slots; i++) {
            if (i % every == 0) {
                canvas.text(Integer.toString(first + i), middle(i), bottomPt + 9, Palette.LABEL, Align.CENTER);
            }
        }
        canvas.text(caption, left + width / 2, bottomPt + 19, Palette.SMALL, Align.CENTER);
    }
}
