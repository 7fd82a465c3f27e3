package io.rowledger.report.review;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Outline;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.chart.Plot;
import io.rowledger.document.text.Messages;
import io.rowledger.report.map.DeviationClasses;
import io.rowledger.report.review.PassReview.ProductReview;
import java.util.List;

/**
 * Covered area by received rate, in classes of 5 % of the target from half to one and a half, the ends open, in the map's colors.
 */
public final class ReceivedHistogram implements Chart {
    /** Histogram class that starts at half the target. */
    private static final int FIRST = 10;
    /** One past the class that ends at one and a half times the target. */
    private static final int END = 30;

    private final ProductReview product;
    private final Messages messages;

    ReceivedHistogram(ProductReview product, Messages messages) {
        this.product = product;
        this.messages = messages;
    }

    /** Share of the covered ground, percent: below half, the twenty classes, from one and a half on. */
    public static double[] shares(List<Double> histogramM2) {
        double[] shares = new double[END - FIRST + 2];
        double total = 0;
        for (int i = 0; i < histogramM2.size(); i++) {
            int slot = i < FIRST ? 0 : i >= END ? shares.length - 1 : i - FIRST + 1;
            shares[slot] += histogramM2.get(i);
            total += histogramM2.get(i);
        }
        for (int i = 0; i < shares.length; i++) {
            shares[i] = total > 0 ? shares[i] / total * 100 : 0;
        }
        return shares;
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        double[] shares = shares(product.histogram());
        double high = 10;
        for (double share : shares) {
            high = Math.max(high, share);
        }
        Plot plot = new Plot(canvas, messages.units(), widthPt, heightPt, shares.length, 0, high);
        plot.grid(false);
        for (int i = 0; i < shares.length; i++) {
            // Middle of the class as a deviation; the open ends count as far off.
            double middle = i == 0 ? -1 : i == shares.length - 1 ? 1 : (FIRST + i - 1 + 0.5) * 0.05 - 1;
            double x = plot.left + i * plot.slot() + 0.5;
            double width = plot.slot() - 1;
            double y = plot.y(shares[i]);
            if (shares[i] > 0) {
                canvas.box(x, y, width, plot.bottom() - y, DeviationClasses.color(DeviationClasses.of(middle)));
                canvas.stroke(new Outline().box(x, y, width, plot.bottom() - y), Palette.SOFT, 0.4);
            }
        }
        canvas.line(plot.left, plot.bottom(), plot.left + plot.width, plot.bottom(), Palette.INK, 0.6);
        for (int edge = -50; edge <= 50; edge += 10) {
            double x = plot.left + (1 + (edge + 50) / 5.0) * plot.slot();
            canvas.line(x, plot.bottom(), x, plot.bottom() + 2.5, Palette.INK, 0.5);
            canvas.text(
                    (edge > 0 ? "+" : "") + messages.units().fixed(edge, 0),
                    x,
                    plot.bottom() + 10,
                    Palette.LABEL,
                    Align.CENTER);
        }
        canvas.text(
                messages.text("review.chart.less"), plot.middle(0), plot.bottom() + 18, Palette.SMALL, Align.CENTER);
        canvas.text(
                messages.text("review.chart.more"),
                plot.middle(shares.length - 1),
                plot.bottom() + 18,
                Palette.SMALL,
                Align.CENTER);
        canvas.text(
                messages.text(product.hasTarget() ? "review.chart.receivedTarget" : "review.chart.receivedMean"),
                plot.left + plot.width / 2,
                plot.bottom() + 19,
                Palette.SMALL,
                Align.CENTER);
        canvas.text(messages.text("review.chart.groundShare"), 0, 7, Palette.SMALL, Align.LEFT);
    }
}
