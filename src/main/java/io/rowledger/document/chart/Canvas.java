package io.rowledger.document.chart;

/**
 * What a chart draws on: points (1/72 inch), x to the right, y down, origin at the top left of the chart's own box.
 * Colors are 0xRRGGBB.
 */
public interface Canvas {
    /** Fills all outlines of the path at once (even-odd, so that holes stay open). */
    void fill(Outline path, int rgb);

    /** Draws along the path. */
    void stroke(Outline path, int rgb, double widthPt);

    /** Writes one line of text with its baseline at y; the align says which part of it stands at x. */
    void text(String text, double x, double y, Ink ink, Align align);

    /** Width of a line of text, points. */
    double width(String text, Ink ink);

    /** Until {@link #unclip}, nothing is drawn outside this box. */
    void clip(double x, double y, double width, double height);

    /** Ends the last {@link #clip}. */
    void unclip();

    /** Which part of the text stands at x. */
    enum Align {
        LEFT,
        CENTER,
        RIGHT
    }

    /**
     * How text looks.
     *
     * @param sizePt font size, points
     * @param bold weight
     * @param rgb color
     */
    record Ink(double sizePt, boolean bold, int rgb) {}

    /** Fills a box. */
    default void box(double x, double y, double width, double height, int rgb) {
        fill(new Outline().box(x, y, width, height), rgb);
    }

    /** Draws the 10 by 9 points of a color in a legend, its top left corner at (x, y). */
    default void swatch(double x, double y, int rgb) {
        box(x, y, 10, 9, rgb);
        stroke(new Outline().box(x, y, 10, 9), Palette.SOFT, 0.3);
    }

    /** Draws a straight line. */
    default void line(double x0, double y0, double x1, double y1, int rgb, double widthPt) {
        stroke(new Outline().move(x0, y0).line(x1, y1), rgb, widthPt);
    }
}
