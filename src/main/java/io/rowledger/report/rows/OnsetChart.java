package io.rowledger.report.rows;

import io.rowledger.diagnose.OnsetWindow;
import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.chart.Scale;
import io.rowledger.document.chart.XyChart;
import io.rowledger.document.chart.XyChart.Margins;
import io.rowledger.document.text.Messages;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.List;

/** Flow of a row around the onset of a finding, with what the other rows imply, its target, and the speed below. */
final class OnsetChart implements Chart {
    /** Share of the height for the speed. */
    private static final double SPEED_SHARE = 0.38;

    private static final Margins WITHOUT_TIMES = new Margins(34, 14, 2, 3);

    private final OnsetWindow window;
    private final WorkClock clock;
    private final Messages messages;
    private final UnitFormat f;

    OnsetChart(OnsetWindow window, WorkClock clock, Messages messages) {
        this.window = window;
        this.clock = clock;
        this.messages = messages;
        this.f = messages.units();
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        int n = window.timeS().length;
        if (n < 2) {
            canvas.text(messages.text("rows.onset.tooFew"), 0, 10, Palette.LABEL, Align.LEFT);
            return;
        }
        double flowMax = TraceColors.max(window.flowLPerS(), window.peersLPerS(), window.targetLPerS());
        Scale times = clock.window(window.timeS()[0], window.timeS()[n - 1], f);
        Scale plain = new Scale(times.low(), times.high(), List.of(), false, false);
        XyChart flow = new XyChart(
                        plain, Scale.fromZero(QuantityKind.FLOW.from(flowMax, f.system()), 4, f), WITHOUT_TIMES)
                .unit(f.unit(QuantityKind.FLOW));
        double onset = Math.min(times.high(), Math.max(times.low(), clock.at(window.onsetS())));
        turns(flow, times);
        flow.upright(onset, Palette.INK, 0.7);
        trace(flow, window.targetLPerS(), QuantityKind.FLOW, TraceColors.TARGET, 1.8);
        trace(flow, window.peersLPerS(), QuantityKind.FLOW, TraceColors.PEERS, 0.9);
        trace(flow, window.flowLPerS(), QuantityKind.FLOW, TraceColors.ROW, 1.3);
        keys(flow);
        double speedMax = QuantityKind.SPEED.from(TraceColors.max(window.speedMps()), f.system());
        XyChart speed = new XyChart(times, Scale.fromZero(speedMax, 2, f), Margins.PLAIN)
                .unit(f.unit(QuantityKind.SPEED))
                .lineBelow();
        turns(speed, times);
        speed.upright(onset, Palette.INK, 0.7);
        trace(speed, window.speedMps(), QuantityKind.SPEED, Palette.ACCENT, 1);
        double split = heightPt * (1 - SPEED_SHARE);
        flow.paint(canvas, 0, 0, widthPt, split);
        speed.paint(canvas, 0, split, widthPt, heightPt - split);
        onsetLabel(canvas, widthPt, split, (onset - times.low()) / (times.high() - times.low()));
    }

    /** The turns that lie between two passes of the window, which the axis leaves out. */
    private void turns(XyChart chart, Scale times) {
        for (double turn : clock.turns()) {
            if (turn > times.low() && turn < times.high()) {
                chart.upright(turn, Palette.GRID, 1.6);
            }
        }
    }

    private void keys(XyChart flow) {
        flow.key(
                window.row() == 0 ? messages.text("rows.onset.allRows") : messages.text("rows.onset.row", window.row()),
                TraceColors.ROW,
                1.6);
        if (Double.isFinite(TraceColors.max(window.peersLPerS()))) {
            flow.key(messages.text("rows.onset.peers"), TraceColors.PEERS, 1.2);
        }
        if (Double.isFinite(TraceColors.max(window.targetLPerS()))) {
            flow.key(messages.text("rows.onset.target"), TraceColors.TARGET, 2);
        }
        flow.key(messages.text("rows.onset.speed"), Palette.ACCENT, 1.2);
    }

    private void onsetLabel(Canvas canvas, double widthPt, double split, double share) {
        double at = Margins.PLAIN.left() + share * (widthPt - Margins.PLAIN.left() - Margins.PLAIN.right());
        String label = messages.text("rows.onset.label", Message.time(window.onsetS()));
        boolean left = at + canvas.width(label, Palette.STRONG) + 4 > widthPt;
        canvas.text(label, left ? at - 3 : at + 3, split + 8, Palette.STRONG, left ? Align.RIGHT : Align.LEFT);
    }

    private void trace(XyChart chart, double[] si, QuantityKind kind, int rgb, double widthPt) {
        TraceColumns thinned = TraceColumns.of(window.timeS(), si);
        double[] at = new double[thinned.timeS().length];
        double[] shown = new double[at.length];
        for (int i = 0; i < shown.length; i++) {
            at[i] = clock.at(thinned.timeS()[i]);
            shown[i] = kind.from(thinned.value()[i], f.system());
        }
        chart.line(at, shown, rgb, widthPt);
    }
}
