package io.rowledger.report.map;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Outline;
import java.util.ArrayList;
import java.util.List;

/** Remembers what was drawn. Letters are half as wide as they are high. */
final class RecordingCanvas implements Canvas {
    final List<String> texts = new ArrayList<>();
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

    @Override
    public void text(String text, double x, double y, Ink ink, Align align) {
        texts.add(text);
    }

    @Override
    public double width(String text, Ink ink) {
        return text.length() * ink.sizePt() / 2;
    }

    @Override
    public void clip(double x, double y, double width, double height) {}

    @Override
    public void unclip() {}
}
