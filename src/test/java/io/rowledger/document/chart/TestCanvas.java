package io.rowledger.document.chart;

import java.util.ArrayList;
import java.util.List;

/** A canvas for tests: keeps the texts and clips nothing. Letters are half as wide as they are high. */
public abstract class TestCanvas implements Canvas {
    /** What was written, in order. */
    public final List<String> texts = new ArrayList<>();

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
