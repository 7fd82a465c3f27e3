package io.rowledger.report.rows;

import io.rowledger.document.chart.Axis;
import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.chart.Scale;
import io.rowledger.document.chart.Scale.Tick;
import io.rowledger.document.chart.XyChart;
import io.rowledger.document.chart.XyChart.Margins;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Rate of a row over the whole job, with the other rows' median and the target, and the pressure below where it is logged. */
final class WholeJobChart implements Chart {
    private static final Margins WITHOUT_TIMES = new Margins(34, 14, 2, 3);
    /** Share of the height for the pressure, if there is one. */
    private static final double PRESSURE_SHARE = 0.4;
    /** A record below this share of its slice's mean is drawn as a dip (1). */
    private static final double DIP = 0.7;
    /** Narrowest mark of a finding, as a share of the chart's width. */
    private static final double MIN_WIDTH = 1 / 300.0;
    /** Behind the time of the finding. */
    private static final int FINDING_RGB = 0xfbeee3;

    private final JobTraces traces;
    private final WorkClock clock;
    private final @Nullable Finding finding;
    /** The row shown, from 0; −1 for the mean of the bar. */
    private final int row;

    private final Messages messages;

    /**
     * The row of a finding, or the bar.
     *
     * @param finding whose time is shaded; null for the bar without a finding
     */
    WholeJobChart(JobTraces traces, WorkClock clock, @Nullable Finding finding, Messages messages) {
        this.traces = traces;
        this.clock = clock;
        this.finding = finding;
        this.row = finding == null || finding.rows().isEmpty()
                ? -1
                : finding.rows().get(0) - 1;
        this.messages = messages;
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        if (traces.slices() < 2) {
            canvas.text(messages.text("rows.onset.tooFew"), 0, 10, Palette.LABEL, Align.LEFT);
            return;
        }
        UnitFormat f = messages.units();
        double[] own = row < 0 ? traces.barRateLPerM2() : traces.rateLPerM2[row];
        double[] target = row < 0 ? traces.targetLPerM2[0] : traces.targetLPerM2[row];
        double[] peers = row < 0 ? XyChart.repeated(Double.NaN, own.length) : traces.peersLPerM2(row);
        double[] pressure = row >= 0 && traces.hasRowPressure(row) ? traces.rowPressurePa[row] : traces.pressurePa;
        boolean pressed = Double.isFinite(TraceColors.max(pressure));
        Scale times = clock.wholeJob(canvas, widthPt - Margins.PLAIN.left() - Margins.PLAIN.right(), f);
        double split = pressed ? heightPt * (1 - PRESSURE_SHARE) : heightPt;
        double max = QuantityKind.RATE.from(TraceColors.max(own, target, peers), f.system());
        XyChart rates = plot(pressed ? bare(times) : times, max, pressed ? WITHOUT_TIMES : Margins.PLAIN, 4)
                .unit(f.unit(QuantityKind.RATE));
        line(rates, target, QuantityKind.RATE, TraceColors.TARGET, 1.8);
        line(rates, peers, QuantityKind.RATE, TraceColors.PEERS, 0.9);
        line(rates, own, QuantityKind.RATE, TraceColors.ROW, 1.1);
        keys(rates, Double.isFinite(TraceColors.max(peers)), Double.isFinite(TraceColors.max(target)));
        if (!pressed) {
            rates.lineBelow();
        }
        rates.paint(canvas, 0, 0, widthPt, split);
        if (pressed) {
            double most = QuantityKind.PRESSURE.from(TraceColors.max(pressure), f.system());
            double top = Axis.roundUp(Math.max(1, most));
            Scale ends = new Scale(0, top, List.of(new Tick(0, "0"), new Tick(top, f.fixed(top, 0))), true, false);
            XyChart below = shaded(new XyChart(times, ends, Margins.PLAIN), times, top)
                    .unit(messages.text("rows.trace.pressure", f.unit(QuantityKind.PRESSURE)))
                    .lineBelow();
            line(below, pressure, QuantityKind.PRESSURE, Palette.ACCENT, 1);
            below.paint(canvas, 0, split, widthPt, heightPt - split);
        }
    }

    private void keys(XyChart rates, boolean peers, boolean target) {
        rates.key(
                row < 0 ? messages.text("rows.onset.allRows") : messages.text("rows.onset.row", row + 1),
                TraceColors.ROW,
                1.6);
        if (peers) {
            rates.key(messages.text("rows.trace.peers"), TraceColors.PEERS, 1.2);
        }
        if (target) {
            rates.key(messages.text("rows.onset.target"), TraceColors.TARGET, 2);
        }
        if (finding != null) {
            rates.swatch(messages.text("rows.trace.finding"), FINDING_RGB);
        }
    }

    private static Scale bare(Scale times) {
        return new Scale(times.low(), times.high(), List.of(), false, false);
    }

    /** An empty plot with the time of the finding behind it. */
    private XyChart plot(Scale times, double max, Margins margins, int marks) {
        Scale values = Scale.fromZero(max, marks, messages.units());
        return shaded(new XyChart(times, values, margins), times, values.high());
    }

    /** The time of the finding, never so short that it can't be seen. */
    private XyChart shaded(XyChart chart, Scale times, double top) {
        if (finding == null) {
            return chart;
        }
        double from = Math.min(clock.at(finding.fromS()), times.high() * (1 - MIN_WIDTH));
        double to = Math.min(times.high(), Math.max(from + times.high() * MIN_WIDTH, clock.at(finding.toS())));
        return chart.box(from, to, 0, top, FINDING_RGB);
    }

    /** Draws slice by slice, with a dip where single records fell far below the slice's mean; breaks at every pass. */
    private void line(XyChart chart, double[] si, QuantityKind kind, int rgb, double widthPt) {
        double[] lowest = row >= 0 && si == traces.rateLPerM2[row] ? traces.minRateLPerM2[row] : si;
        double[] x = new double[4 * si.length];
        double[] y = new double[x.length];
        int n = 0;
        for (int s = 0; s < si.length; s++) {
            if (s > 0 && traces.pass[s] != traces.pass[s - 1]) {
                x[n] = clock.at(traces.startS[s]);
                y[n++] = Double.NaN;
            }
            double middle = clock.at((traces.startS[s] + traces.endS[s]) / 2);
            x[n] = middle;
            y[n++] = kind.from(si[s], messages.units().system());
            // Flow builds up and falls off at the ends of a pass: that is no dip.
            boolean inside = s > 0
                    && s + 1 < si.length
                    && traces.pass[s] == traces.pass[s - 1]
                    && traces.pass[s] == traces.pass[s + 1];
            if (inside && lowest[s] < DIP * si[s]) {
                x[n] = middle;
                y[n++] = kind.from(lowest[s], messages.units().system());
                x[n] = middle;
                y[n++] = kind.from(si[s], messages.units().system());
            }
        }
        chart.line(Arrays.copyOf(x, n), Arrays.copyOf(y, n), rgb, widthPt);
    }
}
