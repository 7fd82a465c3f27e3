package io.rowledger.report.review;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.chart.Scale;
import io.rowledger.document.chart.XyChart;
import io.rowledger.document.chart.XyChart.Margins;
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
        int n = rows.size();
        double[] equalFlow = new double[n];
        double[] remained = new double[n];
        for (int i = 0; i < n; i++) {
            equalFlow[i] = rows.get(i).seenPct();
            remained[i] = rows.get(i).leftPct();
            high = Math.max(high, Double.isFinite(equalFlow[i]) ? equalFlow[i] : 0);
            high = Math.max(high, Double.isFinite(remained[i]) ? remained[i] : 0);
        }
        RowAxis axis = new RowAxis(rows.get(0).row(), n, widthPt);
        double[] none = XyChart.repeated(0, n);
        new XyChart(axis.scale(), Scale.round(0, high, 5, false, messages.units()), Margins.CAPTIONED)
                .boxes(axis.from(-1), axis.to(0), none, equalFlow, Palette.ACCENT_LIGHT)
                .boxes(axis.from(0), axis.to(1), none, remained, Palette.ACCENT)
                .across(0, Palette.INK, 0.6)
                .unit(messages.text("review.chart.turnError"))
                .caption(messages.text("words.map.rowsFromLeft"))
                .swatch(messages.text("review.chart.equalFlow"), Palette.ACCENT_LIGHT)
                .swatch(messages.text("review.chart.turnLeft"), Palette.ACCENT)
                .paint(canvas, widthPt, heightPt);
    }
}
