package io.rowledger.report.map;

import io.rowledger.document.chart.Outline;
import io.rowledger.document.chart.TestCanvas;
import java.util.ArrayList;
import java.util.List;

/** Remembers what was drawn. */
final class RecordingCanvas extends TestCanvas {
    final List<Outline> strokes = new ArrayList<>();
    double widest;

    @Override
    public void fill(Outline path, int rgb) {
        measure(path);
    }

    @Override
    public void stroke(Outline path, int rgb, double widthPt) {
        strokes.add(path);
        measure(path);
    }

    private void measure(Outline path) {
        path.walk(new Outline.Walker() {
            @Override
            public void move(double x, double y) {}

            @Override
            public void line(double x, double y) {}

            @Override
            public void box(double x, double y, double width, double height) {
                widest = Math.max(widest, width);
            }

            @Override
            public void close() {}
        });
    }
}
