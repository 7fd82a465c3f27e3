package io.rowledger.report.rows;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Outline;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.chart.Plot;
import io.rowledger.document.text.Messages;
import io.rowledger.report.common.Limits;
import io.rowledger.report.rows.RowDiagnosis.BaselineLine;
import java.util.List;

/** Dot plot: each row's median deviation from the other rows, with two standard deviations to either side. */
final class BaselineDots implements Chart {
    private static final int SIGMAS = 2;
    /** Smallest half height of the scale, percent: the band of healthy rows and a little more. */
    private static final double MIN_SCALE_PCT = Limits.WATCH_PCT + 1;

    private static final int BAND_RGB = 0xedf2f2;

    private final List<BaselineLine> rows;
    private final Messages messages;

    BaselineDots(List<BaselineLine> rows, Messages messages) {
        this.rows = rows;
        this.messages = messages;
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        double halfHeightPct = MIN_SCALE_PCT;
        for (BaselineLine row : rows) {
            double reachPct = Math.abs(row.usualPct()) + SIGMAS * row.spreadPct();
            halfHeightPct = Double.isFinite(reachPct) ? Math.max(halfHeightPct, reachPct) : halfHeightPct;
        }
        Plot plot = new Plot(canvas, messages.units(), widthPt, heightPt, rows.size(), -halfHeightPct, halfHeightPct);
        double bandTop = plot.y(Limits.WATCH_PCT);
        canvas.box(plot.left, bandTop, plot.width, plot.y(-Limits.WATCH_PCT) - bandTop, BAND_RGB);
        plot.grid(true);
        for (int i = 0; i < rows.size(); i++) {
            BaselineLine row = rows.get(i);
            double x = plot.middle(i);
            if (!Double.isFinite(row.usualPct())) {
                canvas.text("?", x, plot.y(0) - 2, Palette.LABEL, Align.CENTER);
                continue;
            }
            int rgb = row.outlier() ? Palette.VERMILLION : Palette.ACCENT;
            if (Double.isFinite(row.spreadPct())) {
                double reach = SIGMAS * row.spreadPct();
                canvas.line(x, plot.y(row.usualPct() - reach), x, plot.y(row.usualPct() + reach), rgb, 1);
            }
            canvas.fill(new Outline().dot(x, plot.y(row.usualPct()), 2.4), rgb);
        }
        canvas.line(plot.left, plot.y(0), plot.left + plot.width, plot.y(0), Palette.INK, 0.6);
        plot.numbers(rows.get(0).row(), messages.text("words.map.rowsFromLeft"));
        canvas.text(messages.text("rows.baseline.axis", SIGMAS), 0, 7, Palette.SMALL, Align.LEFT);
    }
}
