package io.rowledger.report.rows;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.chart.Scale;
import io.rowledger.document.chart.XyChart;
import io.rowledger.document.chart.XyChart.Margins;
import io.rowledger.document.text.Messages;
import io.rowledger.report.common.Limits;
import io.rowledger.report.rows.RowDiagnosis.BaselineLine;
import java.util.List;

/** Dot plot: each row's median deviation from the other rows, with two standard deviations to either side. */
final class BaselineDots implements Chart {
    private static final int SIGMAS = 2;
    /** Smallest half height of the scale, percent: the band of healthy rows and a little more. */
    private static final double MIN_SCALE_PCT = Limits.WATCH_PCT + 1;

    private final List<BaselineLine> rows;
    private final Messages messages;

    BaselineDots(List<BaselineLine> rows, Messages messages) {
        this.rows = rows;
        this.messages = messages;
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        int n = rows.size();
        double halfHeightPct = MIN_SCALE_PCT;
        for (BaselineLine row : rows) {
            double reachPct = Math.abs(row.usualPct()) + SIGMAS * row.spreadPct();
            halfHeightPct = Double.isFinite(reachPct) ? Math.max(halfHeightPct, reachPct) : halfHeightPct;
        }
        XyChart chart = new XyChart(
                        Scale.slots(rows.stream().map(BaselineLine::label).toList()),
                        Scale.round(-halfHeightPct, halfHeightPct, 5, true, messages.units()),
                        Margins.CAPTIONED)
                .band(-Limits.WATCH_PCT, Limits.WATCH_PCT, Palette.BAND)
                .across(0, Palette.INK, 0.6)
                .unit(messages.text("rows.baseline.axis", SIGMAS))
                .caption(messages.text("words.map.rowsFromLeft"));
        for (int i = 0; i < n; i++) {
            BaselineLine row = rows.get(i);
            if (!Double.isFinite(row.usualPct())) {
                chart.label(i, 0, "?", Palette.LABEL, Align.CENTER);
                continue;
            }
            int rgb = row.outlier() ? Palette.VERMILLION : Palette.ACCENT;
            if (Double.isFinite(row.spreadPct())) {
                double reach = SIGMAS * row.spreadPct();
                chart.segment(i, row.usualPct() - reach, i, row.usualPct() + reach, rgb, 1);
            }
            chart.dots(new double[] {i}, new double[] {row.usualPct()}, rgb, 2.4);
        }
        chart.paint(canvas, widthPt, heightPt);
    }
}
