package io.rowledger.report.map;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Canvas.Ink;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.chart.Labels;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.chart.Scale;
import io.rowledger.document.chart.Scale.Tick;
import io.rowledger.document.chart.XyChart;
import io.rowledger.document.chart.XyChart.Margins;
import io.rowledger.document.text.Messages;
import io.rowledger.report.findings.FindingMark;
import io.rowledger.report.findings.MeterLanes;
import io.rowledger.report.findings.RowPicture;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Rows down, working time across, deviation as color: passes are set apart, findings framed and numbered. */
public final class DeviationPicture implements Chart {
    private static final double LEFT_PT = 24;
    private static final double TOP_PT = 20;
    private static final double BOTTOM_PT = 14;
    private static final double LEGEND_PT = 22;
    /** Distance along a hatch line at which the class under it is sampled, pt. */
    private static final double HATCH_STEP_PT = 0.5;
    /** Between two passes. */
    private static final double GAP_PT = 1.2;
    /** With more passes than this share of the width would be gaps, gaps shrink. */
    private static final double MAX_GAPS = 0.1;

    private static final Ink NUMBER = new Ink(6.5, true, Palette.WHITE);

    private final RowPicture data;
    private final List<FindingMark> marks;
    private final Messages messages;
    private final MeterLanes lanes;
    private final boolean legend;
    private final double[] x0;
    private final double[] x1;

    public DeviationPicture(RowPicture data, List<FindingMark> marks, Messages messages) {
        this(data, MeterLanes.ofRows(data.rows()), marks, messages, true);
    }

    private DeviationPicture(
            RowPicture data, MeterLanes lanes, List<FindingMark> marks, Messages messages, boolean legend) {
        this.lanes = lanes;
        this.legend = legend;
        this.data = data;
        this.marks = marks;
        this.messages = messages;
        this.x0 = new double[data.columns()];
        this.x1 = new double[data.columns()];
    }

    /** The same where several pictures share one legend. */
    public static DeviationPicture withoutLegend(RowPicture data, List<FindingMark> marks, Messages messages) {
        return new DeviationPicture(data, MeterLanes.ofRows(data.rows()), marks, messages, false);
    }

    /** The same of data whose lines are these lanes. */
    public DeviationPicture of(MeterLanes drawn) {
        return new DeviationPicture(data, drawn, marks, messages, legend);
    }

    /** Columns across the width by their time, the passes set apart. */
    private void layColumns(double width) {
        int passes = 0;
        for (int c = 0; c < data.columns(); c++) {
            passes += data.passBegins(c) ? 1 : 0;
        }
        double gap = passes < 2 ? 0 : Math.min(GAP_PT, MAX_GAPS * width / (passes - 1));
        double ptPerS = (width - gap * Math.max(0, passes - 1)) / data.workingS();
        double x = LEFT_PT;
        for (int c = 0; c < data.columns(); c++) {
            x += c > 0 && data.passBegins(c) ? gap : 0;
            x0[c] = x;
            x += (data.endS()[c] - data.startS()[c]) * ptPerS;
            x1[c] = x;
        }
    }

    /** Where a time stands; between passes at the edge of the next one. */
    private double x(double timeS) {
        for (int c = 0; c < data.columns(); c++) {
            if (timeS < data.endS()[c]) {
                double share = (timeS - data.startS()[c]) / (data.endS()[c] - data.startS()[c]);
                return x0[c] + Math.max(0, share) * (x1[c] - x0[c]);
            }
        }
        return x1[data.columns() - 1];
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        layColumns(widthPt - LEFT_PT);
        double below = legend ? BOTTOM_PT + LEGEND_PT : BOTTOM_PT;
        double bottom = heightPt - below;
        double row = (bottom - TOP_PT) / data.rows();
        XyChart chart = new XyChart(
                clock(canvas, widthPt), Scale.slots(lanes.labels()).downward(), new Margins(LEFT_PT, TOP_PT, 0, below));
        cells(chart);
        for (int r = 1; r < data.rows(); r++) {
            chart.across(r - 0.5, Palette.WHITE, Math.min(0.8, row / 8));
        }
        for (FindingMark mark : marks) {
            frames(chart, mark);
        }
        chart.paint(canvas, widthPt, heightPt);
        hatch(canvas, widthPt, bottom);
        canvas.text(
                messages.text(lanes.shared() ? "words.map.rowsOfMeter" : "words.map.row"),
                LEFT_PT - 4,
                TOP_PT - 3,
                Palette.SMALL,
                Align.RIGHT);
        passNumbers(canvas);
        numbers(canvas, row);
        if (legend) {
            legend(canvas, heightPt - 9, messages);
        }
    }

    /** The columns' places across, pt, with the time of day where a pass begins, as often as there is room. */
    private Scale clock(Canvas canvas, double widthPt) {
        UnitFormat f = messages.units();
        List<Tick> ticks = new ArrayList<>();
        double free = Double.NEGATIVE_INFINITY;
        int dated = -1;
        for (int c = 0; c < data.columns(); c++) {
            if (data.passBegins(c)) {
                // A new day shows its date, so that the clock doesn't seem to run backward.
                boolean newDay = dated < 0
                        ? !f.sameDay(data.startS()[0], data.endS()[data.columns() - 1])
                        : !f.sameDay(data.startS()[dated], data.startS()[c]);
                String text = newDay ? f.shortDateAndTime(data.startS()[c]) : f.minute(data.startS()[c]);
                double half = canvas.width(text, Palette.LABEL) / 2;
                if (x0[c] - half >= free && x0[c] + half <= widthPt) {
                    ticks.add(new Tick(x0[c], text));
                    // The axis begins a label at its mark where it would reach too far to the left.
                    free = Math.max(x0[c], LEFT_PT + half) + half + 8;
                    dated = c;
                }
            }
        }
        return new Scale(LEFT_PT, widthPt, ticks, false, false);
    }

    /** Runs of one class in one pass as boxes. */
    private void cells(XyChart chart) {
        List<List<double[]>> classes = new ArrayList<>();
        for (int i = 0; i < DeviationClasses.count(); i++) {
            classes.add(new ArrayList<>());
        }
        List<double[]> missing = new ArrayList<>();
        List<double[]> evaluated = new ArrayList<>();
        for (int r = 0; r < data.rows(); r++) {
            float[] deviation = data.deviation()[r];
            for (int c = 0; c < data.columns(); ) {
                int kind = kind(deviation[c]);
                int end = c + 1;
                while (end < data.columns() && !data.passBegins(end) && kind(deviation[end]) == kind) {
                    end++;
                }
                double[] run = {x0[c], x1[end - 1], r};
                if (kind < 0) {
                    missing.add(run);
                } else {
                    evaluated.add(run);
                    if (kind != DeviationClasses.ON_TARGET) {
                        classes.get(kind).add(run);
                    }
                }
                c = end;
            }
        }
        boxes(chart, missing, MapColors.NOT_EVALUATED);
        // All evaluated time first, in the middle color, so that no seam between two classes shows the paper.
        boxes(chart, evaluated, DeviationClasses.color(DeviationClasses.ON_TARGET));
        for (int i = 0; i < DeviationClasses.count(); i++) {
            boxes(chart, classes.get(i), DeviationClasses.color(i));
        }
    }

    /** Lines over the cells off the target: without color both sides of the scale look alike. */
    private void hatch(Canvas canvas, double widthPt, double bottom) {
        double row = (bottom - TOP_PT) / data.rows();
        for (int i = 0; i < DeviationClasses.count(); i++) {
            Hatch lines = ClassHatch.of(i);
            if (lines != null) {
                int of = i;
                lines.fill(canvas, LEFT_PT, TOP_PT, widthPt, bottom, HATCH_STEP_PT, (x, y) -> {
                    int r = Math.min(data.rows() - 1, Math.max(0, (int) ((y - TOP_PT) / row)));
                    int c = columnAt(x);
                    return c >= 0 && kind(data.deviation()[r][c]) == of;
                });
            }
        }
    }

    /** The column at a place across; -1 between two passes. */
    private int columnAt(double x) {
        int at = Arrays.binarySearch(x0, x);
        int c = at >= 0 ? at : -at - 2;
        return c >= 0 && x < x1[c] ? c : -1;
    }

    private static void boxes(XyChart chart, List<double[]> runs, int rgb) {
        double[] from = new double[runs.size()];
        double[] to = new double[from.length];
        double[] top = new double[from.length];
        double[] bottom = new double[from.length];
        for (int i = 0; i < from.length; i++) {
            double[] run = runs.get(i);
            from[i] = run[0];
            to[i] = run[1];
            top[i] = run[2] - 0.5;
            bottom[i] = run[2] + 0.5;
        }
        chart.boxes(from, to, top, bottom, rgb);
    }

    private static int kind(float deviation) {
        return Float.isNaN(deviation) ? -1 : DeviationClasses.of(deviation);
    }

    private void passNumbers(Canvas canvas) {
        canvas.text(messages.text("words.map.pass"), LEFT_PT - 4, TOP_PT - 11, Palette.SMALL, Align.RIGHT);
        double free = LEFT_PT;
        for (int c = 0; c < data.columns(); c++) {
            if (data.passBegins(c)) {
                int end = c;
                while (end + 1 < data.columns() && !data.passBegins(end + 1)) {
                    end++;
                }
                String number = Integer.toString(data.pass()[c]);
                double middle = (x0[c] + x1[end]) / 2;
                double half = canvas.width(number, Palette.SMALL) / 2;
                if (middle - half >= free) {
                    canvas.text(number, middle, TOP_PT - 11, Palette.SMALL, Align.CENTER);
                    free = middle + half + 3;
                }
            }
        }
    }

    /** A frame around the rows and the time of a finding; a bar above all rows where it concerns the whole bar. */
    private void frames(XyChart chart, FindingMark mark) {
        double from = x(mark.fromS());
        double to = Math.max(from + 2, x(mark.toS()));
        for (int i = 0; i < mark.rows().size(); ) {
            int end = i + 1;
            while (end < mark.rows().size()
                    && mark.rows().get(end) == mark.rows().get(end - 1) + 1) {
                end++;
            }
            double top = mark.rows().get(i) - 1.5;
            double bottom = mark.rows().get(end - 1) - 0.5;
            double[] xs = {from, to, to, from, from};
            double[] ys = {top, top, bottom, bottom, top};
            chart.line(xs, ys, Palette.WHITE, 2.4).line(xs, ys, Palette.INK, 1.1);
            i = end;
        }
    }

    private void numbers(Canvas canvas, double row) {
        Labels labels = new Labels(canvas);
        for (FindingMark mark : marks) {
            double from = x(mark.fromS());
            if (mark.rows().isEmpty()) {
                canvas.box(from, TOP_PT - 7, Math.max(2, x(mark.toS()) - from), 2, Palette.INK);
            }
            double y =
                    mark.rows().isEmpty() ? TOP_PT - 6 : TOP_PT + (mark.rows().get(0) - 0.5) * row;
            String number = Integer.toString(mark.number());
            // A number that would lie on another steps aside to the right.
            for (int step = 0; step < 6; step++) {
                if (labels.plate(number, Math.max(LEFT_PT + 5, from + 5) + step * 11, y, NUMBER, Palette.INK)) {
                    break;
                }
            }
        }
    }

    /** Draws the legend on the baseline y. */
    public static void legend(Canvas canvas, double y, Messages messages) {
        double x = LEFT_PT;
        for (int i = 0; i < DeviationClasses.count(); i++) {
            ClassHatch.swatch(canvas, x, y - 7.5, i);
            String name = messages.text(DeviationClasses.shortName(i));
            canvas.text(name, x + 13, y, Palette.SMALL, Align.LEFT);
            x += 13 + canvas.width(name, Palette.SMALL) + 9;
        }
        canvas.swatch(x, y - 7.5, MapColors.NOT_EVALUATED);
        canvas.text(messages.text("words.map.notEvaluated"), x + 13, y, Palette.SMALL, Align.LEFT);
    }
}
