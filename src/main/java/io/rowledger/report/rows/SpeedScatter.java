package io.rowledger.report.rows;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.chart.Scale;
import io.rowledger.document.chart.XyChart;
import io.rowledger.document.chart.XyChart.Margins;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.Arrays;

/** Flow of a row against speed, inside and outside the time of a finding, with what the target asks at each speed. */
final class SpeedScatter implements Chart {
    private static final double DOT_PT = 0.9;

    private final JobTraces traces;
    private final Finding finding;
    private final Messages messages;

    SpeedScatter(JobTraces traces, Finding finding, Messages messages) {
        this.traces = traces;
        this.finding = finding;
        this.messages = messages;
    }

    /** Mean flow of the row, or of all rows together, L/s by slice. */
    private double[] flow() {
        if (!finding.rows().isEmpty()) {
            return traces.flowLPerS[finding.rows().get(0) - 1];
        }
        double[] sum = new double[traces.slices()];
        for (double[] row : traces.flowLPerS) {
            for (int s = 0; s < sum.length; s++) {
                sum[s] += row[s];
            }
        }
        return sum;
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        if (traces.slices() < 2) {
            canvas.text(messages.text("rows.onset.tooFew"), 0, 10, Palette.LABEL, Align.LEFT);
            return;
        }
        UnitFormat f = messages.units();
        double[] flow = flow();
        double[] speeds = new double[flow.length];
        double[] flows = new double[flow.length];
        boolean[] inside = new boolean[flow.length];
        for (int s = 0; s < flow.length; s++) {
            speeds[s] = QuantityKind.SPEED.from(traces.speedMps[s], f.system());
            flows[s] = QuantityKind.FLOW.from(flow[s], f.system());
            double middle = (traces.startS[s] + traces.endS[s]) / 2;
            inside[s] = middle >= finding.fromS() && middle <= finding.toS();
        }
        Scale across = Scale.fromZero(TraceColors.max(speeds), 4, f);
        Scale upright = Scale.fromZero(TraceColors.max(flows), 4, f);
        new XyChart(new Scale(0, across.high(), across.ticks(), false, false), upright, new Margins(30, 14, 4, 22))
                .dots(picked(speeds, inside, false), picked(flows, inside, false), TraceColors.PEERS, DOT_PT)
                .dots(picked(speeds, inside, true), picked(flows, inside, true), TraceColors.ROW, DOT_PT)
                .lineBelow()
                .unit(f.unit(QuantityKind.FLOW))
                .swatch(messages.text("rows.speed.before"), TraceColors.PEERS)
                .swatch(messages.text("rows.speed.during"), TraceColors.ROW)
                .caption(messages.text("rows.speed.caption", f.unit(QuantityKind.SPEED)))
                .paint(canvas, widthPt, heightPt);
    }

    private static double[] picked(double[] values, boolean[] inside, boolean which) {
        double[] picked = new double[values.length];
        int n = 0;
        for (int s = 0; s < values.length; s++) {
            if (inside[s] == which) {
                picked[n++] = values[s];
            }
        }
        return Arrays.copyOf(picked, n);
    }
}
