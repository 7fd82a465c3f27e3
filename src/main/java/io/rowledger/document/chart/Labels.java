package io.rowledger.document.chart;

import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Canvas.Ink;
import java.util.ArrayList;
import java.util.List;

/** Labels that never overlap: a label that would touch an earlier one is left out. */
public final class Labels {
    private static final double PAD = 1.5;

    private record Box(double left, double top, double right, double bottom) {
        boolean overlaps(Box other) {
            return left < other.right && right > other.left && top < other.bottom && bottom > other.top;
        }
    }

    private final Canvas canvas;
    private final List<Box> taken = new ArrayList<>();

    public Labels(Canvas canvas) {
        this.canvas = canvas;
    }

    /** Draws text on a small plate centered at (x, y); returns false and draws nothing if there is no room. */
    public boolean plate(String text, double x, double y, Ink ink, int plateRgb) {
        double width = canvas.width(text, ink) + 2 * PAD;
        double height = ink.sizePt() + PAD;
        Box box = new Box(x - width / 2, y - height / 2, x + width / 2, y + height / 2);
        if (taken.stream().anyMatch(box::overlaps)) {
            return false;
        }
        taken.add(box);
        canvas.box(box.left, box.top, width, height, plateRgb);
        canvas.text(text, x, y + ink.sizePt() * 0.36, ink, Align.CENTER);
        return true;
    }
}
