package io.rowledger.report.review;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.chart.Plot;
import io.rowledger.report.map.RateMap;
import io.rowledger.report.review.PassReview.TurnLine;
import io.rowledger.units.UnitFormat;
import java.util.List;

/** Turn error per row: what equal flow would do, and what was left of it. */
final class TurnBars implements Chart {
    private final List<TurnLine> rows;
    private final UnitFormat f;

    TurnBars(List<TurnLine> rows, UnitFormat f) {
        this.rows = rows;
        this.f = f;
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        double high = 2;
        for (TurnLine row : rows) {
            high = Math.max(high, Double.isFinite(row.seenPct()) ? row.seenPct() : 0);
            high = Math.max(high, Double.isFinite(row.leftPct()) ? row.leftPct() : 0);
        }
        Plot plot = new Plot(canvas, f, widthPt, heightPt, rows.size(), 0, high);
        plot.grid(false);
        double half = plot.bar / 2;
        for (int i = 0; i < rows.size(); i++) {
            bar(canvas, plot, plot.middle(i) - half, half, rows.get(i).seenPct(), Palette.ACCENT_LIGHT);
            bar(canvas, plot, plot.middle(i), half, rows.get(i).leftPct(), Palette.ACCENT);
        }
        canvas.line(plot.left, plot.y(0), plot.left + plot.width, plot.y(0), Palette.INK, 0.6);
        plot.rowNumbers(rows.get(0).row());
        canvas.text("mean turn error, %", 0, 7, Palette.SMALL, Align.LEFT);
        double x = widthPt - 190;
        RateMap.swatch(canvas, x, 0, Palette.ACCENT_LIGHT);
        canvas.text("equal flow to all rows", x + 14, 7.5, Palette.LABEL, Align.LEFT);
        RateMap.swatch(canvas, x + 105, 0, Palette.ACCENT);
        canvas.text("left in the meters", x + 119, 7.5, Palette.LABEL, Align.LEFT);
    }

    private static void bar(Canvas canvas, Plot plot, double x, double width, double pct, int rgb) {
        if (Double.isFinite(pct)) {
            canvas.box(x, plot.y(pct), width, Math.max(0.5, plot.y(0) - plot.y(pct)), rgb);
        }
    }
}
