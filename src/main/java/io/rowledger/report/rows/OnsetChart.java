package io.rowledger.report.rows;

import io.rowledger.diagnose.OnsetWindow;
import io.rowledger.document.chart.Axis;
import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Canvas.Ink;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Outline;
import io.rowledger.document.chart.Palette;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;

/** What happened around the onset of a finding: the row's flow, its siblings, its target, and the speed below. */
final class OnsetChart implements Chart {
    private static final double LEFT_PT = 34;
    private static final double TOP_PT = 14;
    private static final double BOTTOM_PT = 13;
    private static final double SPEED_SHARE = 0.27;
    private static final double BETWEEN_PT = 10;
    /** Points a line is thinned to: each holds the lowest and highest sample of its slice, so that no dip is lost. */
    private static final int SLICES = 300;
    /** A silence this many usual intervals long breaks a line. */
    private static final double SILENCE = 5;

    /** Steps of a time axis, s. */
    private static final int[] STEPS_S = {10, 20, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200, 14400};

    private static final int ROW_RGB = Palette.SKIP;
    private static final int PEERS_RGB = Palette.DOUBLE;
    private static final int TARGET_RGB = 0x8a8f92;

    private final OnsetWindow window;
    private final UnitFormat f;

    OnsetChart(OnsetWindow window, UnitFormat f) {
        this.window = window;
        this.f = f;
    }

    /** One of the two panels: its box and the values at its bottom and top. */
    private record Panel(double top, double bottom, double low, double high) {
        double y(double value) {
            return bottom - (value - low) / (high - low) * (bottom - top);
        }
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        if (window.timeS().length < 2) {
            canvas.text("Too few records around the onset to draw.", 0, 10, Palette.LABEL, Align.LEFT);
            return;
        }
        double foot = heightPt - BOTTOM_PT;
        double split = TOP_PT + (foot - TOP_PT) * (1 - SPEED_SHARE);
        double flowMost =
                most(new double[] {most(window.flowLPerS()), most(window.peersLPerS()), most(window.targetLPerS())});
        Panel flow = panel(TOP_PT, split - BETWEEN_PT, QuantityKind.FLOW.from(flowMost, f.system()));
        Panel speed = panel(split, foot, QuantityKind.SPEED.from(most(window.speedMps()), f.system()));
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
        String row = window.row() == 0 ? "all rows together" : "row " + window.row();
        x = key(canvas, x, ROW_RGB, 1.6, row);
        if (Double.isFinite(most(window.peersLPerS()))) {
            x = key(canvas, x, PEERS_RGB, 1.2, "what its siblings imply");
        }
        if (Double.isFinite(most(window.targetLPerS()))) {
            x = key(canvas, x, TARGET_RGB, 2, "target");
        }
        key(canvas, x, Palette.ACCENT, 1.2, "speed (below)");
        String label = "onset " + f.clock(window.onsetS());
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

    private static Panel panel(double top, double bottom, double most) {
        double high = Double.isFinite(most) && most > 0 ? most : 1;
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
        double half = canvas.width("00:00:00", ink) / 2;
        for (double t = Math.ceil(first / step) * step; t <= last; t += step) {
            double x = x(t, widthPt);
            canvas.line(x, panel.bottom, x, panel.bottom + 2.5, Palette.SOFT, 0.5);
            if (x + half <= widthPt && x - half >= 0) {
                String text = step < 60 ? f.clock(t) : f.minute(t);
                canvas.text(text, x, panel.bottom + 10, ink, Align.CENTER);
            }
        }
    }

    /** Draws a column over time; each slice of time gives its lowest and highest value in their order. */
    private void line(
            Canvas canvas, Panel panel, double[] si, QuantityKind measure, double widthPt, int rgb, double strokePt) {
        double[] time = window.timeS();
        int n = time.length;
        double silence = SILENCE * (time[n - 1] - time[0]) / (n - 1);
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
                double y = panel.y(measure.from(si[j], f.system()));
                open = open && time[j] - lastS <= silence * slice;
                path = open ? path.line(x, y) : path.move(x, y);
                open = true;
                lastS = time[j];
            }
        }
        if (!path.isEmpty()) {
            canvas.stroke(path, rgb, strokePt);
        }
    }

    private static double most(double[] values) {
        double most = Double.NaN;
        for (double value : values) {
            if (Double.isFinite(value)) {
                most = Double.isNaN(most) ? value : Math.max(most, value);
            }
        }
        return most;
    }
}
