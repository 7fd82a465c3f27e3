package io.rowledger.report.review;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.chart.Scale;
import io.rowledger.document.chart.Scale.Tick;
import io.rowledger.document.chart.XyChart;
import io.rowledger.document.chart.XyChart.Margins;
import io.rowledger.document.text.Messages;
import io.rowledger.report.map.DeviationClasses;
import io.rowledger.report.review.PassReview.ProductReview;
import java.util.ArrayList;
import java.util.List;

/**
 * Covered area by received rate, in classes of 5 % of the target from half to one and a half, the ends open, in the map's colors.
 */
public final class ReceivedHistogram implements Chart {
    /** Histogram class that starts at half the target. */
    private static final int FIRST = 10;
    /** One past the class that ends at one and a half times the target. */
    private static final int END = 30;
    /** Room between two bars, in slots. */
    private static final double EDGE_SLOTS = 0.03;

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
        int n = shares.length;
        List<Tick> edges = new ArrayList<>();
        for (int edge = -50; edge <= 50; edge += 10) {
            edges.add(new Tick(
                    1 + (edge + 50) / 5.0,
                    (edge > 0 ? "+" : "") + messages.units().fixed(edge, 0)));
        }
        Scale rates = new Scale(0, n, edges, false, false);
        XyChart chart = new XyChart(rates, Scale.round(0, high, 5, false, messages.units()), Margins.CAPTIONED);
        for (int i = 0; i < n; i++) {
            if (shares[i] > 0) {
                // Middle of the class as a deviation; the open ends count as far off.
                double middle = i == 0 ? -1 : i == n - 1 ? 1 : (FIRST + i - 1 + 0.5) * 0.05 - 1;
                int rgb = DeviationClasses.color(DeviationClasses.of(middle));
                double left = i + EDGE_SLOTS;
                double right = i + 1 - EDGE_SLOTS;
                double[] xs = {left, left, right, right};
                double[] ys = {0, shares[i], shares[i], 0};
                chart.box(left, right, 0, shares[i], rgb).line(xs, ys, Palette.SOFT, 0.4);
            }
        }
        chart.lineBelow()
                .unit(messages.text("review.chart.groundShare"))
                .caption(messages.text(
                        product.hasTarget() ? "review.chart.receivedTarget" : "review.chart.receivedMean"))
                .paint(canvas, widthPt, heightPt);
        double slotPt = (widthPt - Margins.CAPTIONED.left()) / n;
        double below = heightPt - Margins.CAPTIONED.bottom() + 18;
        canvas.text(
                messages.text("review.chart.less"),
                Margins.CAPTIONED.left() + slotPt / 2,
                below,
                Palette.SMALL,
                Align.CENTER);
        canvas.text(messages.text("review.chart.more"), widthPt - slotPt / 2, below, Palette.SMALL, Align.CENTER);
    }
}
