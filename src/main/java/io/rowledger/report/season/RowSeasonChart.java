package io.rowledger.report.season;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.chart.Scale;
import io.rowledger.document.chart.XyChart;
import io.rowledger.document.chart.XyChart.Margins;
import io.rowledger.document.text.Messages;

/** Each row against the other rows, job by job; rows whose meter is to be checked in color, with their numbers. */
final class RowSeasonChart implements Chart {
    /** Smallest half height of the scale, percent. */
    private static final double MIN_SCALE_PCT = 6;
    /** Largest half height: a plugged row would flatten all others. */
    private static final double MAX_SCALE_PCT = 30;

    private final BarSeason bar;
    private final Messages messages;

    RowSeasonChart(BarSeason bar, Messages messages) {
        this.bar = bar;
        this.messages = messages;
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        int n = bar.jobs().size();
        double halfPct = MIN_SCALE_PCT;
        for (RowSeason row : bar.rows()) {
            for (RowSeason.OfJob job : row.jobs()) {
                double pct = Math.abs(job.shown() - 1) * 100;
                halfPct = Double.isFinite(pct) ? Math.max(halfPct, Math.min(MAX_SCALE_PCT, pct)) : halfPct;
            }
        }
        XyChart chart = new XyChart(
                        Scale.slots(1, n), Scale.round(-halfPct, halfPct, 5, true, messages.units()), Margins.CAPTIONED)
                .across(0, Palette.INK, 0.6)
                .unit(messages.text("season.rows.axis"))
                .caption(messages.text("season.rows.jobNumber"))
                .key(messages.text("season.rows.others"), Palette.ACCENT_LIGHT, 1)
                .key(messages.text("season.rows.toCheck"), Palette.VERMILLION, 1.4);
        int rows = bar.rows().size();
        for (boolean checked : new boolean[] {false, true}) {
            for (RowSeason row : bar.rows()) {
                if (row.toCalibrate(rows) == checked) {
                    draw(chart, row, checked, halfPct);
                }
            }
        }
        chart.paint(canvas, widthPt, heightPt);
    }

    private static void draw(XyChart chart, RowSeason row, boolean checked, double halfPct) {
        int n = row.jobs().size();
        double[] x = new double[n];
        double[] y = new double[n];
        int last = -1;
        for (int j = 0; j < n; j++) {
            double pct = (row.jobs().get(j).shown() - 1) * 100;
            x[j] = j;
            y[j] = Double.isNaN(pct) ? Double.NaN : Math.max(-halfPct, Math.min(halfPct, pct));
            last = Double.isNaN(pct) ? last : j;
        }
        int rgb = checked ? Palette.VERMILLION : Palette.ACCENT_LIGHT;
        chart.line(x, y, rgb, checked ? 1.4 : 0.8).dots(x, y, rgb, checked ? 1.8 : 1.2);
        if (checked && last >= 0) {
            chart.label(last + 0.06, y[last], Integer.toString(row.row()), Palette.STRONG, Align.LEFT);
        }
    }
}
