package io.rowledger.document.chart;

/** Something that can be drawn into a box of any sensible size. */
@FunctionalInterface
public interface Chart {
    /** Draws itself into (0, 0) to (width, height), points. */
    void paint(Canvas canvas, double widthPt, double heightPt);
}
