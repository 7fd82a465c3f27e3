package io.rowledger.report.review;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.chart.Plot;
import io.rowledger.document.text.Messages;
import io.rowledger.report.review.PassReview.TurnLine;
import java.util.List;

/** Mean turn error of each row: with equal flow to all rows, and what remained in the metered flows. */
final class TurnBars implements Chart {
    private final List<TurnLine> rows;
    private final Messages messages;

    TurnBars(List<TurnLine> rows, Messages messages) {
        this.rows = rows;
        this.messages = messages;
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        double high = 2;
        for (TurnLine row : rows) {
            high = Math.max(high, Double.isFinite(row.seenPct()) ? row.seenPct() : 0);
            high = Math.max(high, Double.isFinite(row.leftPct()) ? row.leftPct() : 0);
        }
        Plot plot = new Plot(canvas, messages.units(), widthPt, heightPt, rows.size(), 0, high);
        plot.grid(false);
        double half = plot.bar / 2;
        for (int i = 0; i < rows.size(); i++) {
            bar(canvas, plot, plot.middle(i) - half, half, rows.get(i).seenPct(), Palette.ACCENT_LIGHT);
            bar(canvas, plot, plot.middle(i), half, rows.get(i).leftPct(), Palette.ACCENT);
        }
        canvas.line(plot.left, plot.y(0), plot.left + plot.width, plot.y(0), Palette.INK, 0.6);
        plot.numbers(rows.get(0).row(), messages.text("words.map.rowsFromLeft"));
        canvas.text(messages.text("review.chart.turnError"), 0, 7, Palette.SMALL, Align.LEFT);
        double x = legendRight(canvas, widthPt, messages.text("review.chart.turnLeft"), Palette.ACCENT);
        legendRight(canvas, x - 12, messages.text("review.chart.equalFlow"), Palette.ACCENT_LIGHT);
    }

    /** Draws a color and its name so that they end at x; returns where they begin. */
    private static double legendRight(Canvas canvas, double x, String name, int rgb) {
        double left = x - canvas.width(name, Palette.LABEL) - 14;
        canvas.swatch(left, 0, rgb);
        canvas.text(name, left + 14, 7.5, Palette.LABEL, Align.LEFT);
        return left;
    }

    private static void bar(Canvas canvas, Plot plot, double x, double width, double pct, int rgb) {
        if (Double.isFinite(pct)) {
            canvas.box(x, plot.y(pct), width, Math.max(0.5, plot.y(0) - plot.y(pct)), rgb);
        }
    }
}
