package io.rowledger.report.review;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.chart.Scale;
import io.rowledger.document.chart.XyChart;
import io.rowledger.document.chart.XyChart.Margins;
import io.rowledger.document.text.Messages;
import io.rowledger.report.common.Limits;
import io.rowledger.report.review.PassReview.ProductReview;

/** How far each row is off, as bars up and down from its target; the band in which a row is on target is shaded. */
final class RowBars implements Chart {
    private final ProductReview product;
    private final Messages messages;

    RowBars(ProductReview product, Messages messages) {
        this.product = product;
        this.messages = messages;
    }

    /** Colors of the bars, in drawing order: on target, to watch, to act on. */
    private static final int[] COLORS = {Palette.ACCENT, Palette.ORANGE, Palette.VERMILLION};

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        double low = -Limits.ACT_PCT;
        double high = Limits.ACT_PCT;
        int n = product.rows().size();
        double[][] heights = new double[COLORS.length][n];
        for (int i = 0; i < n; i++) {
            double pct = product.rows().get(i).deviationPct();
            double size = Math.abs(pct);
            int color = size > Limits.ACT_PCT ? 2 : size > Limits.WATCH_PCT ? 1 : 0;
            for (int c = 0; c < COLORS.length; c++) {
                heights[c][i] = c == color && Double.isFinite(pct) ? pct : Double.NaN;
            }
            if (Double.isFinite(pct)) {
                low = Math.min(low, pct);
                high = Math.max(high, pct);
            }
        }
        RowAxis rows = new RowAxis(product.rows().get(0).row(), n, widthPt);
        XyChart chart = new XyChart(rows.scale(), Scale.round(low, high, 5, true, messages.units()), Margins.CAPTIONED)
                .band(-Limits.WATCH_PCT, Limits.WATCH_PCT, Palette.BAND)
                .unit(messages.text(product.hasTarget() ? "review.chart.offTarget" : "review.chart.offMean"))
                .caption(messages.text("words.map.rowsFromLeft"));
        for (int c = 0; c < COLORS.length; c++) {
            chart.boxes(rows.from(-1), rows.to(1), XyChart.repeated(0, n), heights[c], COLORS[c]);
        }
        chart.across(0, Palette.INK, 0.6);
        for (int i = 0; i < n; i++) {
            if (!Double.isFinite(product.rows().get(i).deviationPct())) {
                chart.label(i, 0, "?", Palette.LABEL, Align.CENTER);
            }
        }
        chart.paint(canvas, widthPt, heightPt);
    }
}
