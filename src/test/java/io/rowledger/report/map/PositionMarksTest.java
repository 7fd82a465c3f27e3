package io.rowledger.report.map;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.chart.Outline;
import io.rowledger.document.text.Messages;
import io.rowledger.track.PathBreak;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;

/** Marks where positions can't be trusted. The frame shows 100 m on 102 pt: 1 pt a meter, with a margin of 1 m. */
class PositionMarksTest {
    private static final Messages MESSAGES = Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC));

    private static final MapFrame FRAME = new MapFrame(new Envelope(0, 100, 0, 100), 0, 0, 102, 102);

    private static PathBreak lasting(PathBreak.Kind kind, double seconds, boolean lowered) {
        return new PathBreak(kind, 1000, 1000 + seconds, 10, 20, 30, 20, lowered);
    }

    private static List<double[]> corners(Outline path) {
        List<double[]> corners = new ArrayList<>();
        path.walk(new Outline.Walker() {
            @Override
            public void move(double x, double y) {
                corners.add(new double[] {x, y});
            }

            @Override
            public void line(double x, double y) {
                corners.add(new double[] {x, y});
            }

            @Override
            public void box(double x, double y, double width, double height) {}

            @Override
            public void close() {}
        });
        return corners;
    }

    @Test
    void a_stretch_without_a_fix_is_a_line_from_the_last_fix_to_the_next() {
        RecordingCanvas canvas = new RecordingCanvas();
        PositionMarks.draw(canvas, FRAME, List.of(lasting(PathBreak.Kind.GAP, 8, true)));
        assertEquals(2, canvas.strokes.size());
        List<double[]> corners = corners(canvas.strokes.get(1));
        // 10 m east of the map's west edge and 1 m of margin; 80 m south of its north edge and 1 m.
        assertEquals(11, corners.get(0)[0], 1e-9);
        assertEquals(81, corners.get(0)[1], 1e-9);
        assertEquals(31, corners.get(1)[0], 1e-9);
        assertEquals(81, corners.get(1)[1], 1e-9);
    }

    @Test
    void a_shift_is_a_diamond_half_way() {
        RecordingCanvas canvas = new RecordingCanvas();
        PositionMarks.draw(canvas, FRAME, List.of(lasting(PathBreak.Kind.SHIFTED, 0.2, true)));
        assertEquals(1, canvas.strokes.size());
        List<double[]> corners = corners(canvas.strokes.get(0));
        assertEquals(21, (corners.get(0)[0] + corners.get(2)[0]) / 2, 1e-9);
        assertEquals(81, (corners.get(1)[1] + corners.get(3)[1]) / 2, 1e-9);
    }

    @Test
    void a_lifted_bar_and_a_long_pause_are_not_marked() {
        List<PathBreak> breaks = List.of(
                lasting(PathBreak.Kind.GAP, 8, false),
                lasting(PathBreak.Kind.SHIFTED, 0.2, false),
                lasting(PathBreak.Kind.GAP, 3600, true));
        RecordingCanvas canvas = new RecordingCanvas();
        PositionMarks.draw(canvas, FRAME, breaks);
        assertEquals(0, canvas.strokes.size());
        assertFalse(PositionMarks.any(breaks));
        assertTrue(PositionMarks.any(List.of(lasting(PathBreak.Kind.GAP, 8, true))));
    }

    @Test
    void the_legend_explains_the_marks_there_are() {
        RecordingCanvas canvas = new RecordingCanvas();
        List<PathBreak> two = List.of(
                lasting(PathBreak.Kind.BRIDGED, 3, true),
                lasting(PathBreak.Kind.SHIFTED, 0.2, true),
                lasting(PathBreak.Kind.GAP, 8, false));
        assertEquals(124, PositionMarks.legend(canvas, two, 0, 100, MESSAGES), 1e-9);
        assertEquals(List.of(MESSAGES.text("words.map.gapCrossed"), MESSAGES.text("words.map.shifted")), canvas.texts);
    }
}
