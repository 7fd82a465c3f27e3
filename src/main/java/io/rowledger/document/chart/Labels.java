package io.rowledger.document.chart;

import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Canvas.Ink;
import java.util.ArrayList;
import java.util.List;

/** Labels that never lie on one another: the first to come stays, a later one that would touch it is left out. */
public final class Labels {
    private static final double PAD = 1.5;

    private final Canvas canvas;
    private final List<double[]> taken = new ArrayList<>();

    public Labels(Canvas canvas) {
        this.canvas = canvas;
    }

    /** Puts text in a small plate centred at (x, y); false where there is no room. */
    public boolean plate(String text, double x, double y, Ink ink, int plateRgb) {
        double width = canvas.width(text, ink) + 2 * PAD;
        double height = ink.sizePt() + PAD;
        double[] box = {x - width / 2, y - height / 2, x + width / 2, y + height / 2};
        for (double[] other : taken) {
            if (box[0] < other[2] && box[2] > other[0] && box[1] < other[3] && box[3] > other[1]) {
                return false;
            }
        }
        taken.add(box);
        canvas.box(box[0], box[1], width, height, plateRgb);
        canvas.text(text, x, y + ink.sizePt() * 0.36, ink, Align.CENTER);
        return true;
    }
}
