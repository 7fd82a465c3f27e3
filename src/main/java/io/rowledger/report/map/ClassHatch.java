package io.rowledger.report.map;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Outline;
import io.rowledger.document.chart.Palette;
import org.jspecify.annotations.Nullable;

/**
 * Hatching of the classes of deviation: lines that fall to the right where too little was put down, lines that rise where too
 * much was, the closer the farther off. Without color both sides of a diverging scale look alike; the lines tell them apart.
 */
final class ClassHatch {
    /** Distance of the lines, points, by the number of classes from the target, from 1. */
    private static final double[] APART_PT = {4.2, 3.2, 2.4};

    private static final double LINE_PT = 0.35;
    /** Fills darker than this take white lines: half of the largest sum of red, green and blue. */
    private static final int DARK = 3 * 255 / 2;

    private ClassHatch() {}

    /** The hatch of a class; null on target. */
    static @Nullable Hatch of(int i) {
        int away = Math.abs(i - DeviationClasses.ON_TARGET);
        if (away == 0) {
            return null;
        }
        int rgb = DeviationClasses.color(i);
        boolean dark = (rgb >> 16 & 255) + (rgb >> 8 & 255) + (rgb & 255) < DARK;
        return new Hatch(
                i > DeviationClasses.ON_TARGET,
                APART_PT[Math.min(away, APART_PT.length) - 1],
                dark ? Palette.WHITE : Palette.INK,
                LINE_PT);
    }

    /** A class's color with its hatch, 10 by 9 points, its top left corner at (x, y). */
    static void swatch(Canvas canvas, double x, double y, int i) {
        canvas.swatch(x, y, DeviationClasses.color(i));
        Hatch hatch = of(i);
        if (hatch != null) {
            hatch.fill(canvas, new Outline().box(x, y, 10, 9), x, y, x + 10, y + 9);
        }
    }

    /** Fills an outline in the color of a class with its hatch, within a box of the paper. */
    static void fill(Canvas canvas, Outline outline, int i, double left, double top, double right, double bottom) {
        canvas.fill(outline, DeviationClasses.color(i));
        Hatch hatch = of(i);
        if (hatch != null) {
            hatch.fill(canvas, outline, left, top, right, bottom);
        }
    }
}
