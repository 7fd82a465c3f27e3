package io.rowledger.document.chart;

import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Canvas.Ink;
import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Composite;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Paint;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Lets the plotting library draw on a {@link Canvas}: solid colors, strokes without dashes, rectangular clips and horizontal
 * text. Everything else is refused, so that nothing can go missing on paper. Coordinates are chart units, a sixteenth of a
 * point, because the library rounds plot areas to whole units and draws no bar thinner than one.
 */
final class ChartGraphics extends PartialGraphics {
    /** Chart units in a point. */
    static final double UNITS_PER_PT = 16;

    /** Largest distance of a polygon from the curve it stands for, chart units. */
    private static final double FLATNESS = 0.5;

    private static final FontRenderContext FONT_CONTEXT = new FontRenderContext(null, true, true);

    private final Canvas canvas;
    private final RenderingHints hints = new RenderingHints(new HashMap<>());
    private Color color = Color.BLACK;
    private BasicStroke stroke = new BasicStroke(1);
    private Font font = new ChartFont(Palette.LABEL);
    private @Nullable Rectangle2D clip;
    private Composite composite = AlphaComposite.SrcOver;

    ChartGraphics(Canvas canvas) {
        this.canvas = canvas;
    }

    private static double pt(double units) {
        return units / UNITS_PER_PT;
    }

    private int rgb() {
        return color.getRGB() & 0xffffff;
    }

    private static Outline outline(Shape shape) {
        Outline outline = new Outline();
        if (shape instanceof Rectangle2D box) {
            return outline.box(pt(box.getX()), pt(box.getY()), pt(box.getWidth()), pt(box.getHeight()));
        }
        double[] corner = new double[6];
        for (PathIterator path = shape.getPathIterator(null, FLATNESS); !path.isDone(); path.next()) {
            switch (path.currentSegment(corner)) {
                case PathIterator.SEG_MOVETO -> outline.move(pt(corner[0]), pt(corner[1]));
                case PathIterator.SEG_LINETO -> outline.line(pt(corner[0]), pt(corner[1]));
                default -> outline.close();
            }
        }
        return outline;
    }

    @Override
    public void draw(Shape shape) {
        Outline outline = outline(shape);
        if (!outline.isEmpty()) {
            canvas.stroke(outline, rgb(), pt(stroke.getLineWidth()));
        }
    }

    @Override
    public void fill(Shape shape) {
        Outline outline = outline(shape);
        if (!outline.isEmpty()) {
            canvas.fill(outline, rgb());
        }
    }

    @Override
    public void drawString(String text, float x, float y) {
        if (!(font instanceof ChartFont chartFont)) {
            throw unsupported();
        }
        Ink ink = chartFont.ink;
        canvas.text(text, pt(x), pt(y), new Ink(ink.sizePt(), ink.bold(), rgb()), Align.LEFT);
    }

    @Override
    public void drawString(String text, int x, int y) {
        drawString(text, (float) x, (float) y);
    }

    @Override
    public void drawLine(int x1, int y1, int x2, int y2) {
        canvas.line(pt(x1), pt(y1), pt(x2), pt(y2), rgb(), pt(stroke.getLineWidth()));
    }

    @Override
    public void fillRect(int x, int y, int width, int height) {
        fill(new Rectangle(x, y, width, height));
    }

    @Override
    public void setPaint(Paint paint) {
        if (!(paint instanceof Color solid)) {
            throw unsupported();
        }
        color = solid;
    }

    @Override
    public Paint getPaint() {
        return color;
    }

    @Override
    public void setColor(Color solid) {
        color = solid;
    }

    @Override
    public Color getColor() {
        return color;
    }

    @Override
    public void setStroke(Stroke line) {
        if (!(line instanceof BasicStroke basic) || basic.getDashArray() != null) {
            throw unsupported();
        }
        stroke = basic;
    }

    @Override
    public Stroke getStroke() {
        return stroke;
    }

    @Override
    public void setFont(Font newFont) {
        font = newFont;
    }

    @Override
    public Font getFont() {
        return font;
    }

    @Override
    public FontMetrics getFontMetrics(Font of) {
        if (!(of instanceof ChartFont chartFont)) {
            throw unsupported();
        }
        return chartFont.on(canvas);
    }

    @Override
    public FontRenderContext getFontRenderContext() {
        return FONT_CONTEXT;
    }

    @Override
    public void clip(Shape shape) {
        Rectangle2D bounds = shape.getBounds2D();
        setClip(clip == null ? bounds : clip.createIntersection(bounds));
    }

    @Override
    public void setClip(@Nullable Shape shape) {
        if (clip != null) {
            canvas.unclip();
        }
        clip = shape == null ? null : shape.getBounds2D();
        if (clip != null) {
            canvas.clip(pt(clip.getX()), pt(clip.getY()), pt(clip.getWidth()), pt(clip.getHeight()));
        }
    }

    @Override
    public void setClip(int x, int y, int width, int height) {
        setClip(new Rectangle(x, y, width, height));
    }

    @Override
    public void clipRect(int x, int y, int width, int height) {
        clip(new Rectangle(x, y, width, height));
    }

    @Override
    public @Nullable Shape getClip() {
        return clip;
    }

    @Override
    public @Nullable Rectangle getClipBounds() {
        return clip == null ? null : clip.getBounds();
    }

    @Override
    public void setComposite(Composite newComposite) {
        composite = newComposite;
    }

    @Override
    public Composite getComposite() {
        return composite;
    }

    @Override
    public void setRenderingHint(RenderingHints.Key key, @Nullable Object value) {
        if (value == null) {
            hints.remove(key);
        } else {
            hints.put(key, value);
        }
    }

    @Override
    public @Nullable Object getRenderingHint(RenderingHints.Key key) {
        return hints.get(key);
    }

    @Override
    public void setRenderingHints(Map<?, ?> all) {
        hints.clear();
        hints.putAll(all);
    }

    @Override
    public void addRenderingHints(Map<?, ?> more) {
        hints.putAll(more);
    }

    @Override
    public RenderingHints getRenderingHints() {
        return hints;
    }

    @Override
    public AffineTransform getTransform() {
        return new AffineTransform();
    }

    @Override
    public void setTransform(AffineTransform transform) {
        if (!transform.isIdentity()) {
            throw unsupported();
        }
    }

    @Override
    public void transform(AffineTransform transform) {
        setTransform(transform);
    }

    @Override
    public void dispose() {}
}
