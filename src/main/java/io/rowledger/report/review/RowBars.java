package io.rowledger.report.review;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.chart.Plot;
import io.rowledger.document.text.Messages;
import io.rowledger.report.common.Limits;
import io.rowledger.report.review.PassReview.ProductReview;
import io.rowledger.report.review.PassReview.RowRate;

/** How far each row is off, as bars up and down from its target; the band in which a row is on target is shaded. */
final class RowBars implements Chart {
    private final ProductReview product;
    private final Messages messages;

    RowBars(ProductReview product, Messages messages) {
        this.product = product;
        this.messages = messages;
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        double low = -Limits.ACT_PCT;
        double high = Limits.ACT_PCT;
        for (RowRate row : product.rows()) {
            if (Double.isFinite(row.deviationPct())) {
                low = Math.min(low, row.deviationPct());
                high = Math.max(high, row.deviationPct());
            }
        }
        Plot plot = new Plot(
                canvas, messages.units(), widthPt, heightPt, product.rows().size(), low, high);
        double band = Limits.WATCH_PCT;
        canvas.box(plot.left, plot.y(band), plot.width, plot.y(-band) - plot.y(band), Palette.BAND);
        plot.grid(true);
        for (int i = 0; i < product.rows().size(); i++) {
            double pct = product.rows().get(i).deviationPct();
            if (!Double.isFinite(pct)) {
                canvas.text("?", plot.middle(i), plot.y(0) - 2, Palette.LABEL, Align.CENTER);
                continue;
            }
            double size = Math.abs(pct);
            int rgb = size > Limits.ACT_PCT
                    ? Palette.VERMILLION
                    : size > Limits.WATCH_PCT ? Palette.ORANGE : Palette.ACCENT;
            double top = Math.min(plot.y(pct), plot.y(0));
            canvas.box(
                    plot.middle(i) - plot.bar / 2,
                    top,
                    plot.bar,
                    Math.max(0.6, Math.abs(plot.y(pct) - plot.y(0))),
                    rgb);
        }
        canvas.line(plot.left, plot.y(0), plot.left + plot.width, plot.y(0), Palette.INK, 0.6);
        plot.numbers(product.rows().get(0).row(), messages.text("words.map.rowsFromLeft"));
        canvas.text(
                messages.text(product.hasTarget() ? "review.chart.offTarget" : "review.chart.offMean"),
                0,
                7,
                Palette.SMALL,
                Align.LEFT);
    }
}
