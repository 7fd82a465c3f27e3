package io.rowledger.document.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.chart.XyChart.Margins;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.awt.Color;
import java.awt.GradientPaint;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class XyChartTest {
    private static final UnitFormat METRIC = new UnitFormat(UnitSystem.METRIC, ZoneOffset.UTC);
    /** The plotting library rounds the plot's area to sixteenths of a point. */
    private static final double UNIT_PT = 1 / 16.0;

    /** Writes down what is drawn: boxes with their color, line starts and corners, texts. */
    private static final class Notes extends TestCanvas {
        final List<double[]> boxes = new ArrayList<>();
        final List<List<double[]>> lines = new ArrayList<>();

        @Override
        public void fill(Outline path, int rgb) {
            path.walk(new Pen(rgb));
        }

        @Override
        public void stroke(Outline path, int rgb, double widthPt) {
            path.walk(new Pen(rgb));
        }

        private final class Pen implements Outline.Walker {
            private final int rgb;

            Pen(int rgb) {
                this.rgb = rgb;
            }

            @Override
            public void move(double x, double y) {
                lines.add(new ArrayList<>(List.of(new double[] {x, y, rgb})));
            }

            @Override
            public void line(double x, double y) {
                lines.get(lines.size() - 1).add(new double[] {x, y, rgb});
            }

            @Override
            public void box(double x, double y, double width, double height) {
                boxes.add(new double[] {x, y, width, height, rgb});
            }

            @Override
            public void close() {}
        }

        List<List<double[]>> linesOf(int rgb) {
            return lines.stream().filter(line -> line.get(0)[2] == rgb).toList();
        }
    }

    private static Scale plain(double low, double high) {
        return new Scale(low, high, List.of(), false, false);
    }

    /** By hand: a plot of 100 by 50 pt for 0 to 10 across and 0 to 5 up; 2 to 4 and 0 to 3 are 20 to 40 and 30 pt high. */
    @Test
    void boxes_and_lines_stand_where_the_scales_put_them() {
        Notes canvas = new Notes();
        new XyChart(plain(0, 10), plain(0, 5), new Margins(30, 14, 0, 22))
                .box(2, 4, 0, 3, 0x010203)
                .line(new double[] {0, 5, 6, 10}, new double[] {0, 5, Double.NaN, 1}, 0x040506, 1)
                .paint(canvas, 130, 86);
        double[] box = canvas.boxes.get(0);
        assertEquals(50, box[0], UNIT_PT);
        assertEquals(14 + 20, box[1], UNIT_PT);
        assertEquals(20, box[2], UNIT_PT);
        assertEquals(30, box[3], UNIT_PT);
        assertEquals(0x010203, box[4]);
        List<List<double[]>> drawn = canvas.linesOf(0x040506);
        assertEquals(2, drawn.get(0).size(), "the line breaks at the unknown value");
        assertEquals(80, drawn.get(0).get(1)[0], UNIT_PT);
        assertEquals(14, drawn.get(0).get(1)[1], UNIT_PT);
    }

    /** A scale that runs downward has its low end on top. */
    @Test
    void a_downward_scale_begins_at_the_top() {
        Notes canvas = new Notes();
        new XyChart(plain(0, 10), Scale.slots(1, 5).downward(), new Margins(0, 0, 0, 0))
                .box(0, 10, -0.5, 0.5, 0x010203)
                .paint(canvas, 100, 50);
        assertEquals(0, canvas.boxes.get(0)[1], UNIT_PT);
        assertEquals(10, canvas.boxes.get(0)[3], UNIT_PT);
    }

    /** 48 numbers of up to 7 pt and 4 pt between them don't fit into 200 pt: every fourth does, 12 × 11 = 132 pt. */
    @Test
    void labels_that_would_touch_are_thinned() {
        Notes canvas = new Notes();
        new XyChart(Scale.slots(1, 48), plain(0, 1), Margins.CAPTIONED).paint(canvas, 230, 100);
        assertTrue(canvas.texts.containsAll(List.of("1", "5", "9", "45")), "" + canvas.texts);
        assertTrue(!canvas.texts.contains("2") && !canvas.texts.contains("3"), "" + canvas.texts);
    }

    @Test
    void a_scale_has_round_marks_and_signs() {
        Scale scale = Scale.round(-53, 12, 5, true, METRIC);
        assertEquals(-60, scale.low(), 1e-9);
        assertEquals(20, scale.high(), 1e-9);
        assertEquals(
                List.of("\u221260", "\u221240", "\u221220", "0", "+20"),
                scale.ticks().stream().map(Scale.Tick::label).toList());
    }

    @Test
    void what_paper_cannot_show_is_refused() {
        ChartGraphics graphics = new ChartGraphics(new Notes());
        assertThrows(
                UnsupportedOperationException.class,
                () -> graphics.setPaint(new GradientPaint(0, 0, Color.RED, 1, 1, Color.BLUE)));
        assertThrows(UnsupportedOperationException.class, () -> graphics.rotate(1));
    }
}
