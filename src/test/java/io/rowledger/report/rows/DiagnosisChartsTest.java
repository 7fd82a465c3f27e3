package io.rowledger.report.rows;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.diagnose.OnsetWindow;
import io.rowledger.document.chart.Outline;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.chart.TestCanvas;
import io.rowledger.document.text.Messages;
import io.rowledger.report.findings.FindingMark;
import io.rowledger.report.findings.RowPicture;
import io.rowledger.report.map.DeviationClasses;
import io.rowledger.report.map.DeviationPicture;
import io.rowledger.report.map.MapColors;
import io.rowledger.track.Pass;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class DiagnosisChartsTest {
    /** 2026-06-01, s since 1970. */
    private static final double DAY_S = 1_780_272_000;

    /** The plotting library rounds the plot's area to sixteenths of a point. */
    private static final double UNIT_PT = 1 / 16.0;

    private static final UnitFormat METRIC = new UnitFormat(UnitSystem.METRIC, ZoneOffset.UTC);
    private static final Messages MESSAGES = Messages.english(METRIC);

    private static final WorkClock CLOCK = new WorkClock(List.of(new Pass(1, 0, 1, DAY_S, DAY_S + 100, 200, 0)));

    /** Remembers boxes by their color, and how high and low lines of a color went. */
    private static final class Boxes extends TestCanvas {
        final Map<Integer, List<double[]>> filled = new HashMap<>();
        final Map<Integer, double[]> lineRange = new HashMap<>();

        @Override
        public void fill(Outline path, int rgb) {
            path.walk(walker(filled.computeIfAbsent(rgb, unused -> new ArrayList<>()), new double[2]));
        }

        @Override
        public void stroke(Outline path, int rgb, double widthPt) {
            double[] range = lineRange.computeIfAbsent(
                    rgb, unused -> new double[] {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY});
            path.walk(walker(new ArrayList<>(), range));
        }

        private static Outline.Walker walker(List<double[]> boxes, double[] range) {
            return new Outline.Walker() {
                @Override
                public void move(double x, double y) {
                    line(x, y);
                }

                @Override
                public void line(double x, double y) {
                    range[0] = Math.min(range[0], y);
                    range[1] = Math.max(range[1], y);
                }

                @Override
                public void box(double x, double y, double width, double height) {
                    boxes.add(new double[] {x, y, width, height});
                }

                @Override
                public void close() {}
            };
        }
    }

    /** Two rows, two passes of two columns of 10 s: row 2 plugged in the second pass, its last column not evaluated. */
    private static RowPicture picture() {
        return new RowPicture(
                new double[] {DAY_S, DAY_S + 10, DAY_S + 60, DAY_S + 70},
                new double[] {DAY_S + 10, DAY_S + 20, DAY_S + 70, DAY_S + 80},
                new int[] {1, 1, 2, 2},
                new float[][] {{0, 0, 0.01f, 0}, {0, 0, -0.98f, Float.NaN}});
    }

    @Test
    void deviation_missing_time_and_passes_are_drawn_apart() {
        Boxes canvas = new Boxes();
        new DeviationPicture(picture(), List.of(), Messages.english(METRIC)).paint(canvas, 225.2, 156);
        // 225.2 less 24 for the row numbers and 1.2 between the passes leaves 50 a column; rows are 50 high.
        List<double[]> plugged = canvas.filled.get(DeviationClasses.color(0)).stream()
                .filter(box -> box[2] > 20)
                .toList();
        assertEquals(1, plugged.size());
        double[] box = plugged.get(0);
        assertEquals(24 + 100 + 1.2, box[0], UNIT_PT);
        assertEquals(20 + 50, box[1], UNIT_PT);
        assertEquals(50, box[2], UNIT_PT);
        assertEquals(50, box[3], UNIT_PT);
        List<double[]> missing = canvas.filled.get(MapColors.NOT_EVALUATED).stream()
                .filter(one -> one[2] > 20)
                .toList();
        assertEquals(1, missing.size());
        assertEquals(24 + 150 + 1.2, missing.get(0)[0], UNIT_PT);
        // A run of one color is one box, but never across a pass: row 1 has two, row 2 one before its fault.
        long healthy = canvas.filled.get(DeviationClasses.color(3)).stream()
                .filter(one -> one[2] > 99)
                .count();
        assertEquals(3, healthy, "three runs");
        assertTrue(
                canvas.texts.containsAll(List.of("1", "2", "00:00", "00:01", "off or not evaluated")),
                "" + canvas.texts);
    }

    @Test
    void colors_of_the_picture_are_those_of_the_rate_map_and_none_stands_for_missing() {
        assertTrue(IntStream.range(0, DeviationClasses.count())
                .noneMatch(i -> DeviationClasses.color(i) == MapColors.NOT_EVALUATED));
        assertEquals(7, DeviationClasses.count());
    }

    @Test
    void a_finding_between_two_passes_is_framed_from_the_next_pass_on() {
        Boxes canvas = new Boxes();
        new DeviationPicture(
                        picture(),
                        List.of(new FindingMark(3, List.of(2), DAY_S + 40, DAY_S + 80)),
                        Messages.english(METRIC))
                .paint(canvas, 225.2, 156);
        assertTrue(canvas.texts.contains("3"), "" + canvas.texts);
    }

    private static OnsetWindow window(int row, double flow, double peers) {
        double[] time = {DAY_S, DAY_S + 1, DAY_S + 2, DAY_S + 3};
        double[] flows = {flow, flow, 0, 0};
        double[] implied = {peers, peers, peers, peers};
        double[] unknown = {Double.NaN, Double.NaN, Double.NaN, Double.NaN};
        return new OnsetWindow(0, row, DAY_S + 2, time, flows, implied, unknown, new double[] {2, 2, 2, 2});
    }

    /** The other rows are NaN if the finding concerns the whole bar; the flow stays in its panel all the same. */
    @Test
    void the_flow_of_the_whole_bar_stays_inside_the_chart() {
        Boxes canvas = new Boxes();
        new OnsetChart(window(0, 0.8, Double.NaN), CLOCK, MESSAGES).paint(canvas, 400, 112);
        double[] range = canvas.lineRange.get(Palette.VERMILLION);
        assertTrue(range[0] > 4 && range[1] < 112, Arrays.toString(range));
        assertTrue(canvas.texts.contains(MESSAGES.text("rows.onset.allRows")), "" + canvas.texts);
        assertTrue(canvas.texts.stream()
                .noneMatch(text -> text.equals(MESSAGES.text("rows.onset.peers"))
                        || text.equals(MESSAGES.text("rows.onset.target"))));
    }

    @Test
    void the_onset_chart_names_its_lines_and_its_onset() {
        Boxes canvas = new Boxes();
        new OnsetChart(window(7, 0.06, 0.06), CLOCK, MESSAGES).paint(canvas, 400, 112);
        assertTrue(
                canvas.texts.containsAll(
                        List.of("row 7", MESSAGES.text("rows.onset.peers"), "onset 00:00:02", "L/min", "km/h")),
                "" + canvas.texts);
        // 0.06 L/s are 3.6 L/min: the scale marks 2 L/min steps up to 4.0 × 1.12.
        assertTrue(canvas.texts.contains("2"), "" + canvas.texts);
    }

    @Test
    void too_short_a_window_says_so() {
        Boxes canvas = new Boxes();
        double[] one = {1};
        new OnsetChart(new OnsetWindow(0, 1, 1, one, one, one, one, one), CLOCK, MESSAGES).paint(canvas, 400, 112);
        assertEquals(List.of(MESSAGES.text("rows.onset.tooFew")), canvas.texts);
    }
}
