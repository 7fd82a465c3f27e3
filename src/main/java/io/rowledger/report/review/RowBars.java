package io.rowledger.report.review;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.chart.Plot;
import io.rowledger.report.review.PassReview.ProductReview;
import io.rowledger.report.review.PassReview.RowRate;
import io.rowledger.units.UnitFormat;

/** How far each row is off, as bars up and down from its target, with the band of 5 % shaded. */
final class RowBars implements Chart {
    private final ProductReview product;
    private final UnitFormat f;

    RowBars(ProductReview product, UnitFormat f) {
        this.product = product;
        this.f = f;
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        double low = -10;
        double high = 10;
        for (RowRate row : product.rows()) {
            if (Double.isFinite(row.deviationPct())) {
                low = Math.min(low, row.deviationPct());
                high = Math.max(high, row.deviationPct());
            }
        }
        Plot plot = new Plot(canvas, f, widthPt, heightPt, product.rows().size(), low, high);
        canvas.box(plot.left, plot.y(5), plot.width, plot.y(-5) - plot.y(5), 0xedf2f2);
        plot.grid(true);
        for (int i = 0; i < product.rows().size(); i++) {
            double pct = product.rows().get(i).deviationPct();
            if (!Double.isFinite(pct)) {
                canvas.text("?", plot.middle(i), plot.y(0) - 2, Palette.LABEL, Align.CENTER);
                continue;
            }
            double size = Math.abs(pct);
            int rgb = size > 10 ? Palette.SKIP : size > 5 ? 0xe69f00 : Palette.ACCENT;
            double top = Math.min(plot.y(pct), plot.y(0));
            canvas.box(
                    plot.middle(i) - plot.bar / 2,
                    top,
                    plot.bar,
                    Math.max(0.6, Math.abs(plot.y(pct) - plot.y(0))),
                    rgb);
        }
        canvas.line(plot.left, plot.y(0), plot.left + plot.width, plot.y(0), Palette.INK, 0.6);
        plot.rowNumbers(product.rows().get(0).row());
        canvas.text(product.hasTarget() ? "off target, %" : "off the mean, %", 0, 7, Palette.SMALL, Align.LEFT);
    }
}
