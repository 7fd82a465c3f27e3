package io.rowledger.document.chart;

import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Canvas.Ink;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.AbstractXYItemRenderer;
import org.jfree.chart.renderer.xy.StandardXYBarPainter;
import org.jfree.chart.renderer.xy.XYBarRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYDataset;

/**
 * A plot on two axes, drawn by JFreeChart's {@link XYPlot} in layers: what is added later lies on top. Text and colors are
 * ours: a key and a unit above the plot, a caption below it.
 */
public final class XyChart implements Chart {
    /** Around the plot, points: room for the labels of the axes, the key and the caption. */
    public record Margins(double left, double top, double right, double bottom) {
        /** With a caption below. */
        public static final Margins CAPTIONED = new Margins(30, 14, 0, 22);
        /** Without one. */
        public static final Margins PLAIN = new Margins(34, 14, 2, 13);
    }

    /** Between the two sides of the area that a plot fills and the text that belongs to it, pt. */
    private static final double SMALL_GAP_PT = 7;

    private record Layer(XYDataset data, AbstractXYItemRenderer renderer) {}

    private record Label(double x, double y, String text, Ink ink, Align align) {}

    private record Key(String text, int rgb, double widthPt, boolean swatch) {}

    private final Scale x;
    private final Scale y;
    private final Margins margins;
    private final List<Layer> layers = new ArrayList<>();
    private final List<Label> labels = new ArrayList<>();
    private final List<Key> keys = new ArrayList<>();
    private String unit = "";
    private String caption = "";
    private boolean xLine;

    /** An empty plot on these axes. */
    public XyChart(Scale x, Scale y, Margins margins) {
        this.x = x;
        this.y = y;
        this.margins = margins;
    }

    /** Boxes from (x0, y0) to (x1, y1); a box with a NaN is left out. */
    public XyChart boxes(double[] x0, double[] x1, double[] y0, double[] y1, int rgb) {
        if (x0.length == 0) {
            return this;
        }
        XYBarRenderer renderer = new XYBarRenderer();
        renderer.setBarPainter(new StandardXYBarPainter());
        renderer.setShadowVisible(false);
        renderer.setDrawBarOutline(false);
        renderer.setUseYInterval(true);
        renderer.setSeriesPaint(0, new Color(rgb), false);
        layers.add(new Layer(Columns.boxes(x0, x1, y0, y1), renderer));
        return this;
    }

    /** One box. */
    public XyChart box(double x0, double x1, double y0, double y1, int rgb) {
        return boxes(new double[] {x0}, new double[] {x1}, new double[] {y0}, new double[] {y1}, rgb);
    }

    /** A band across the whole plot. */
    public XyChart band(double y0, double y1, int rgb) {
        return box(x.low(), x.high(), y0, y1, rgb);
    }

    /** A line through the points; it breaks where a coordinate is NaN. */
    public XyChart line(double[] xs, double[] ys, int rgb, double widthPt) {
        if (xs.length == 0) {
            return this;
        }
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        renderer.setDrawSeriesLineAsPath(true);
        renderer.setSeriesPaint(0, new Color(rgb), false);
        renderer.setSeriesStroke(0, stroke(widthPt), false);
        layers.add(new Layer(Columns.points(xs, ys), renderer));
        return this;
    }

    /** A straight line between two points. */
    public XyChart segment(double x0, double y0, double x1, double y1, int rgb, double widthPt) {
        return line(new double[] {x0, x1}, new double[] {y0, y1}, rgb, widthPt);
    }

    /** A line across the whole plot. */
    public XyChart across(double value, int rgb, double widthPt) {
        return segment(x.low(), value, x.high(), value, rgb, widthPt);
    }

    /** A line from bottom to top. */
    public XyChart upright(double value, int rgb, double widthPt) {
        return segment(value, y.low(), value, y.high(), rgb, widthPt);
    }

    /** Filled dots. */
    public XyChart dots(double[] xs, double[] ys, int rgb, double radiusPt) {
        if (xs.length == 0) {
            return this;
        }
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
        double radius = radiusPt * ChartGraphics.UNITS_PER_PT;
        Shape dot = new Ellipse2D.Double(-radius, -radius, 2 * radius, 2 * radius);
        renderer.setSeriesShape(0, dot, false);
        renderer.setSeriesPaint(0, new Color(rgb), false);
        renderer.setUseOutlinePaint(false);
        layers.add(new Layer(Columns.points(xs, ys), renderer));
        return this;
    }

    /** Text beside a point of the plot. */
    public XyChart label(double atX, double atY, String text, Ink ink, Align align) {
        labels.add(new Label(atX, atY, text, ink, align));
        return this;
    }

    /** What a line's color means, above the plot. */
    public XyChart key(String text, int rgb, double widthPt) {
        keys.add(new Key(text, rgb, widthPt, false));
        return this;
    }

    /** What a filled color means, above the plot. */
    public XyChart swatch(String text, int rgb) {
        keys.add(new Key(text, rgb, 0, true));
        return this;
    }

    /** The unit of the upright axis, above it. */
    public XyChart unit(String text) {
        unit = text;
        return this;
    }

    /** What the axis below counts. */
    public XyChart caption(String text) {
        caption = text;
        return this;
    }

    /** Draws the axis below with its marks. */
    public XyChart lineBelow() {
        xLine = true;
        return this;
    }

    @Override
    public void paint(Canvas canvas, double widthPt, double heightPt) {
        paint(canvas, 0, 0, widthPt, heightPt);
    }

    /** Draws the chart into the box at (left, top). */
    public void paint(Canvas canvas, double leftPt, double topPt, double widthPt, double heightPt) {
        XYPlot plot = plot();
        double u = ChartGraphics.UNITS_PER_PT;
        Rectangle2D area = new Rectangle2D.Double(leftPt * u, topPt * u, widthPt * u, heightPt * u);
        plot.draw(new ChartGraphics(canvas), area, null, null, null);
        double plotLeft = leftPt + margins.left;
        double plotRight = leftPt + widthPt - margins.right;
        double plotTop = topPt + margins.top;
        double plotBottom = topPt + heightPt - margins.bottom;
        for (Label label : labels) {
            double toX = plotLeft + (label.x - x.low()) / (x.high() - x.low()) * (plotRight - plotLeft);
            double share = (label.y - y.low()) / (y.high() - y.low());
            double toY =
                    y.down() ? plotTop + share * (plotBottom - plotTop) : plotBottom - share * (plotBottom - plotTop);
            canvas.text(label.text, toX, toY, label.ink, label.align);
        }
        canvas.text(unit, leftPt, topPt + SMALL_GAP_PT, Palette.SMALL, Align.LEFT);
        canvas.text(caption, (plotLeft + plotRight) / 2, topPt + heightPt - 3, Palette.SMALL, Align.CENTER);
        keys(canvas, plotRight, topPt);
    }

    /** The key, right-aligned in the line of the unit. */
    private void keys(Canvas canvas, double right, double topPt) {
        double width = 0;
        for (Key key : keys) {
            width += 15 + canvas.width(key.text, Palette.LABEL) + 12;
        }
        double at = right - width + 12;
        for (Key key : keys) {
            if (key.swatch) {
                canvas.swatch(at + 1, topPt - 0.5, key.rgb);
            } else {
                canvas.line(at, topPt + 4.6, at + 12, topPt + 4.6, key.rgb, key.widthPt);
            }
            canvas.text(key.text, at + 15, topPt + SMALL_GAP_PT, Palette.LABEL, Align.LEFT);
            at += 15 + canvas.width(key.text, Palette.LABEL) + 12;
        }
    }

    private XYPlot plot() {
        XYPlot plot = new XYPlot(null, new ScaleAxis(x, xLine), new ScaleAxis(y, false), null);
        double u = ChartGraphics.UNITS_PER_PT;
        plot.setInsets(RectangleInsets.ZERO_INSETS, false);
        plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
        plot.setOutlineVisible(false);
        plot.setBackgroundPaint(null);
        plot.setDomainGridlinesVisible(x.grid());
        plot.setRangeGridlinesVisible(y.grid());
        plot.setRangeGridlinePaint(new Color(Palette.GRID));
        plot.setRangeGridlineStroke(stroke(0.4));
        plot.setDomainGridlinePaint(new Color(Palette.GRID));
        plot.setDomainGridlineStroke(stroke(0.4));
        plot.setDatasetRenderingOrder(DatasetRenderingOrder.FORWARD);
        AxisSpace across = new AxisSpace();
        across.setLeft(margins.left * u);
        across.setRight(margins.right * u);
        plot.setFixedRangeAxisSpace(across, false);
        AxisSpace upright = new AxisSpace();
        upright.setTop(margins.top * u);
        upright.setBottom(margins.bottom * u);
        plot.setFixedDomainAxisSpace(upright, false);
        for (int i = 0; i < layers.size(); i++) {
            plot.setDataset(i, layers.get(i).data());
            plot.setRenderer(i, layers.get(i).renderer(), false);
        }
        return plot;
    }

    private static BasicStroke stroke(double widthPt) {
        return new BasicStroke(
                (float) (widthPt * ChartGraphics.UNITS_PER_PT), BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
    }

    /** An array of one repeated value. */
    public static double[] repeated(double value, int n) {
        double[] all = new double[n];
        Arrays.fill(all, value);
        return all;
    }
}
