package io.rowledger.report.rows;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.chart.Scale;
import io.rowledger.document.chart.Scale.Tick;
import io.rowledger.document.chart.XyChart;
import io.rowledger.document.chart.XyChart.Margins;
import io.rowledger.document.text.Messages;
import io.rowledger.report.findings.MeterLanes;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;

/** All rows, or meters that feed several, one below another over the whole job: each row's rate against its target, or against the other rows without one. */
final class StackedTraces implements Chart {
    /** Height of a row's target above the row's foot, as a share of its lane. */
    private static final double LANE = 0.72;
    /** What is more than so many times the target ends at the lane above (1). */
    private static final double MAX_SHARE = 1.35;

    private final JobTraces traces;
    private final MeterLanes meters;
    private final WorkClock clock;
    private final Set<Integer> faulty;
    private final Messages messages;

    /**
     * The stack of one product.
     *
     * @param faulty numbers of the lanes that a finding concerns, drawn in the row's color
     */
    StackedTraces(JobTraces traces, MeterLanes meters, WorkClock clock, Set<Integer> faulty, Messages messages) {
        this.traces = traces;
        this.meters = meters;
        this.clock = clock;
        this.faulty = faulty;
        this.messages = messages;
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        int rows = meters.rows().size();
        List<String> labels = meters.labels();
        List<Tick> numbers = new ArrayList<>();
        for (int r = 0; r < rows; r++) {
            numbers.add(new Tick(rows - 1 - r + LANE / 2, labels.get(r)));
        }
        Scale lanes = new Scale(-0.05, rows, numbers, false, false);
        Margins margins = new Margins(20, 14, 2, 13);
        Scale times = clock.wholeJob(canvas, widthPt - margins.left() - margins.right(), messages.units());
        XyChart chart = new XyChart(times, lanes, margins)
                .lineBelow()
                .unit(messages.text(meters.shared() ? "words.map.rowsOfMeter" : "words.map.row"));
        for (double turn : clock.turns()) {
            chart.upright(turn, Palette.BAND, 0.5);
        }
        for (int r = 0; r < rows; r++) {
            double foot = rows - 1 - r;
            chart.across(foot, Palette.GRID, 0.4).across(foot + LANE, TraceColors.TARGET, 0.35);
            trace(chart, r, foot);
        }
        chart.key(messages.text("rows.stack.row"), Palette.ACCENT, 1.2)
                .key(messages.text("rows.stack.faulty"), TraceColors.ROW, 1.2)
                .key(
                        messages.text(traces.hasTarget() ? "rows.stack.target" : "rows.stack.peers"),
                        TraceColors.TARGET,
                        0.6)
                .paint(canvas, widthPt, heightPt);
    }

    /** The row that stands for a lane in a slice: the first that is known. */
    private int row(int lane, int s) {
        List<Integer> rows = meters.rows().get(lane);
        return rows.stream()
                        .filter(row -> Double.isFinite(traces.rateLPerM2[row - 1][s]))
                        .findFirst()
                        .orElse(rows.get(0))
                - 1;
    }

    private void trace(XyChart chart, int lane, double foot) {
        double[] peers = traces.hasTarget()
                ? new double[0]
                : traces.peersLPerM2(meters.rows().get(lane).get(0) - 1);
        double[] x = new double[2 * traces.slices()];
        double[] y = new double[x.length];
        int n = 0;
        for (int s = 0; s < traces.slices(); s++) {
            if (s > 0 && traces.pass[s] != traces.pass[s - 1]) {
                x[n] = clock.at(traces.startS[s]);
                y[n++] = Double.NaN;
            }
            int r = row(lane, s);
            double share = traces.rateLPerM2[r][s] / (traces.hasTarget() ? traces.targetLPerM2[r][s] : peers[s]);
            x[n] = clock.at((traces.startS[s] + traces.endS[s]) / 2);
            y[n++] = foot + LANE * Math.min(MAX_SHARE, share);
        }
        int rgb = faulty.contains(lane + 1) ? TraceColors.ROW : Palette.ACCENT;
        chart.line(Arrays.copyOf(x, n), Arrays.copyOf(y, n), rgb, 0.8);
    }
}
