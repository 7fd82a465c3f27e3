package io.rowledger.report.rows;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Outline;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.chart.Plot;
import io.rowledger.report.rows.RowDiagnosis.BaselineLine;
import io.rowledger.units.UnitFormat;
import java.util.List;

/** What each row is usually off its siblings, with two standard deviations to either side. */
final class BaselineDots implements Chart {
    private static final double SIGMAS = 2;

    private final List<BaselineLine> rows;
    private final UnitFormat f;

    BaselineDots(List<BaselineLine> rows, UnitFormat f) {
        this.rows = rows;
        this.f = f;
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        double most = 6;
        for (BaselineLine row : rows) {
            double far = Math.abs(row.usualPct()) + SIGMAS * row.spreadPct();
            most = Double.isFinite(far) ? Math.max(most, far) : most;
        }
        Plot plot = new Plot(canvas, f, widthPt, heightPt, rows.size(), -most, most);
        canvas.box(plot.left, plot.y(5), plot.width, plot.y(-5) - plot.y(5), 0xedf2f2);
        plot.grid(true);
        for (int i = 0; i < rows.size(); i++) {
            BaselineLine row = rows.get(i);
            double x = plot.middle(i);
            if (!Double.isFinite(row.usualPct())) {
                canvas.text("?", x, plot.y(0) - 2, Palette.LABEL, Align.CENTER);
                continue;
            }
            int rgb = row.outlier() ? Palette.SKIP : Palette.ACCENT;
            if (Double.isFinite(row.spreadPct())) {
                double reach = SIGMAS * row.spreadPct();
                canvas.line(x, plot.y(row.usualPct() - reach), x, plot.y(row.usualPct() + reach), rgb, 1);
            }
            canvas.fill(new Outline().dot(x, plot.y(row.usualPct()), 2.4), rgb);
        }
        canvas.line(plot.left, plot.y(0), plot.left + plot.width, plot.y(0), Palette.INK, 0.6);
        plot.rowNumbers(rows.get(0).row());
        canvas.text(
                "off the siblings, %: median and two standard deviations to either side",
                0, 7, Palette.SMALL, Align.LEFT);
    }
}
