package io.rowledger.report.rows;

import io.rowledger.diagnose.OnsetWindow;
import io.rowledger.document.chart.Axis;
import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Canvas.Ink;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Outline;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.text.Messages;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;

/** Flow of a row around the onset of a finding, with what the other rows imply, its target, and the speed below. */
final class OnsetChart implements Chart {
    private static final double LEFT_PT = 34;
    private static final double TOP_PT = 14;
    private static final double BOTTOM_PT = 13;
    /** Share of the height for the speed. */
    private static final double SPEED_SHARE = 0.27;

    private static final double BETWEEN_PT = 10;
    /** Slices of time; a line is drawn by the lowest and highest sample of each, so that no dip is lost. */
    private static final int SLICES = 300;
    /** A line breaks where records are missing for longer than this many mean intervals. */
    private static final double MAX_GAP_INTERVALS = 5;

    /** Steps that a time axis may have, s. */
    private static final int[] STEPS_S = {10, 20, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200, 14400};

    private static final int ROW_RGB = Palette.VERMILLION;
    private static final int PEERS_RGB = Palette.BLUE;
    private static final int TARGET_RGB = 0x8a8f92;

    private final OnsetWindow window;
    private final Messages messages;
    private final UnitFormat f;

    OnsetChart(OnsetWindow window, Messages messages) {
        this.window = window;
        this.messages = messages;
        this.f = messages.units();
    }

    /** One of the two panels: its edges, pt, and the values at its bottom and top. */
    private record Panel(double top, double bottom, double low, double high) {
        double y(double value) {
            return bottom - (value - low) / (high - low) * (bottom - top);
        }
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        if (window.timeS().length < 2) {
            canvas.text(messages.text("rows.onset.tooFew"), 0, 10, Palette.LABEL, Align.LEFT);
            return;
        }
        double foot = heightPt - BOTTOM_PT;
        double split = TOP_PT + (foot - TOP_PT) * (1 - SPEED_SHARE);
        double flowMax =
                max(new double[] {max(window.flowLPerS()), max(window.peersLPerS()), max(window.targetLPerS())});
        Panel flow = panel(TOP_PT, split - BETWEEN_PT, QuantityKind.FLOW.from(flowMax, f.system()));
        Panel speed = panel(split, foot, QuantityKind.SPEED.from(max(window.speedMps()), f.system()));
        grid(canvas, flow, widthPt, 4);
        grid(canvas, speed, widthPt, 2);
        times(canvas, speed, widthPt);
        double onset = x(window.onsetS(), widthPt);
        canvas.line(onset, TOP_PT, onset, foot, Palette.INK, 0.7);
        line(canvas, flow, window.targetLPerS(), QuantityKind.FLOW, widthPt, TARGET_RGB, 1.8);
        line(canvas, flow, window.peersLPerS(), QuantityKind.FLOW, widthPt, PEERS_RGB, 0.9);
        line(canvas, flow, window.flowLPerS(), QuantityKind.FLOW, widthPt, ROW_RGB, 1.3);
        line(canvas, speed, window.speedMps(), QuantityKind.SPEED, widthPt, Palette.ACCENT, 1);
        captions(canvas, widthPt, split, onset);
    }

    private void captions(Canvas canvas, double widthPt, double split, double onset) {
        canvas.text(f.unit(QuantityKind.FLOW), 0, 7, Palette.SMALL, Align.LEFT);
        canvas.text(f.unit(QuantityKind.SPEED), 0, split - 2, Palette.SMALL, Align.LEFT);
        double x = LEFT_PT;
        String row =
                window.row() == 0 ? messages.text("rows.onset.allRows") : messages.text("rows.onset.row", window.row());
        x = key(canvas, x, ROW_RGB, 1.6, row);
        if (Double.isFinite(max(window.peersLPerS()))) {
            x = key(canvas, x, PEERS_RGB, 1.2, messages.text("rows.onset.peers"));
        }
        if (Double.isFinite(max(window.targetLPerS()))) {
            x = key(canvas, x, TARGET_RGB, 2, messages.text("rows.onset.target"));
        }
        key(canvas, x, Palette.ACCENT, 1.2, messages.text("rows.onset.speed"));
        String label = messages.text("rows.onset.label", Message.time(window.onsetS()));
        double width = canvas.width(label, Palette.STRONG);
        Align align = onset + width + 4 > widthPt ? Align.RIGHT : Align.LEFT;
        double at = align == Align.LEFT ? onset + 3 : onset - 3;
        canvas.text(label, at, split - 1.5, Palette.STRONG, align);
    }

    private static double key(Canvas canvas, double x, int rgb, double widthPt, String text) {
        canvas.line(x, 4.6, x + 12, 4.6, rgb, widthPt);
        canvas.text(text, x + 15, 7, Palette.LABEL, Align.LEFT);
        return x + 15 + canvas.width(text, Palette.LABEL) + 12;
    }

    private static Panel panel(double top, double bottom, double max) {
        double high = Double.isFinite(max) && max > 0 ? max : 1;
        return new Panel(top, bottom, 0, high * 1.12);
    }

    private void grid(Canvas canvas, Panel panel, double widthPt, int marks) {
        double step = Axis.step(panel.high, marks);
        for (int i = 0; i * step <= panel.high; i++) {
            double y = panel.y(i * step);
            canvas.line(LEFT_PT, y, widthPt, y, i == 0 ? Palette.SOFT : Palette.GRID, 0.4);
            canvas.text(f.fixed(i * step, Axis.decimals(step)), LEFT_PT - 4, y + 2.4, Palette.LABEL, Align.RIGHT);
        }
    }

    private double x(double timeS, double widthPt) {
        double first = window.timeS()[0];
        double last = window.timeS()[window.timeS().length - 1];
        double share = Math.min(1, Math.max(0, (timeS - first) / (last - first)));
        return LEFT_PT + share * (widthPt - LEFT_PT);
    }

    private void times(Canvas canvas, Panel panel, double widthPt) {
        double first = window.timeS()[0];
        double last = window.timeS()[window.timeS().length - 1];
        int step = STEPS_S[STEPS_S.length - 1];
        for (int i = STEPS_S.length - 1; i >= 0; i--) {
            step = (last - first) / STEPS_S[i] <= 9 ? STEPS_S[i] : step;
        }
        Ink ink = Palette.LABEL;
        double half = canvas.width(step < 60 ? f.clock(first) : f.minute(first), ink) / 2;
        for (double t = Math.ceil(first / step) * step; t <= last; t += step) {
            double x = x(t, widthPt);
            canvas.line(x, panel.bottom, x, panel.bottom + 2.5, Palette.SOFT, 0.5);
            if (x + half <= widthPt && x - half >= 0) {
                String text = step < 60 ? f.clock(t) : f.minute(t);
                canvas.text(text, x, panel.bottom + 10, ink, Align.CENTER);
            }
        }
    }

    /** Draws a column over time; each slice gives its lowest and highest value, in the order in which they come. */
    private void line(
            Canvas canvas, Panel panel, double[] si, QuantityKind kind, double widthPt, int rgb, double strokePt) {
        double[] time = window.timeS();
        int n = time.length;
        double maxGapS = MAX_GAP_INTERVALS * (time[n - 1] - time[0]) / (n - 1);
        int slice = Math.max(1, n / SLICES);
        Outline path = new Outline();
        boolean open = false;
        double lastS = Double.NaN;
        for (int i = 0; i < n; i += slice) {
            int low = -1;
            int high = -1;
            for (int j = i; j < Math.min(n, i + slice); j++) {
                if (Double.isFinite(si[j])) {
                    low = low < 0 || si[j] < si[low] ? j : low;
                    high = high < 0 || si[j] > si[high] ? j : high;
                }
            }
            if (low < 0) {
                open = false;
                continue;
            }
            int[] both = low == high ? new int[] {low} : new int[] {Math.min(low, high), Math.max(low, high)};
            for (int j : both) {
                double x = x(time[j], widthPt);
                double y = panel.y(kind.from(si[j], f.system()));
                open = open && time[j] - lastS <= maxGapS * slice;
                path = open ? path.line(x, y) : path.move(x, y);
                open = true;
                lastS = time[j];
            }
        }
        if (!path.isEmpty()) {
            canvas.stroke(path, rgb, strokePt);
        }
    }

    /** The largest finite value; NaN if there is none. */
    private static double max(double[] values) {
        double max = Double.NaN;
        for (double value : values) {
            if (Double.isFinite(value)) {
                max = Double.isNaN(max) ? value : Math.max(max, value);
            }
        }
        return max;
    }
}
