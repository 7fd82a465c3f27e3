package io.rowledger.report.map;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Outline;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;

/**
 * A chart as a printer without color prints it: pixels, four a point, as lightness L* of CIE 15 (2004), 8.2.1.1, from the relative
 * luminance Y of sRGB (IEC 61966-2-1): L* = 116 f(Y) - 16 with f the cube root above (6/29)³. Text is left out.
 */
public final class GrayCanvas implements Canvas {
    static final int PIXELS = 4;

    private final BufferedImage image;
    private final Graphics2D pen;

    GrayCanvas(int widthPt, int heightPt) {
        image = new BufferedImage(widthPt * PIXELS, heightPt * PIXELS, BufferedImage.TYPE_INT_RGB);
        pen = image.createGraphics();
        pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        pen.setColor(Color.WHITE);
        pen.fillRect(0, 0, image.getWidth(), image.getHeight());
        pen.scale(PIXELS, PIXELS);
    }

    /** L* of the pixel under a point of the chart. */
    double lightness(double x, double y) {
        int rgb = image.getRGB((int) (x * PIXELS), (int) (y * PIXELS));
        return lightness(rgb);
    }

    /** L* of a color, 0xRRGGBB. */
    public static double lightness(int rgb) {
        double y = 0.2126 * linear(rgb >> 16 & 255) + 0.7152 * linear(rgb >> 8 & 255) + 0.0722 * linear(rgb & 255);
        double f = y > Math.pow(6.0 / 29, 3) ? Math.cbrt(y) : y * Math.pow(29.0 / 6, 2) / 3 + 4.0 / 29;
        return 116 * f - 16;
    }

    private static double linear(int channel) {
        double c = channel / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    @Override
    public void fill(Outline path, int rgb) {
        pen.setColor(new Color(rgb));
        pen.fill(shape(path));
    }

    @Override
    public void stroke(Outline path, int rgb, double widthPt) {
        pen.setColor(new Color(rgb));
        pen.setStroke(new BasicStroke((float) widthPt));
        pen.draw(shape(path));
    }

    private static Shape shape(Outline path) {
        Path2D.Double shape = new Path2D.Double(Path2D.WIND_EVEN_ODD);
        path.walk(new Outline.Walker() {
            @Override
            public void move(double x, double y) {
                shape.moveTo(x, y);
            }

            @Override
            public void line(double x, double y) {
                shape.lineTo(x, y);
            }

            @Override
            public void box(double x, double y, double width, double height) {
                shape.moveTo(x, y);
                shape.lineTo(x + width, y);
                shape.lineTo(x + width, y + height);
                shape.lineTo(x, y + height);
                shape.closePath();
            }

            @Override
            public void close() {
                shape.closePath();
            }
        });
        return shape;
    }

    @Override
    public void text(String text, double x, double y, Ink ink, Align align) {}

    @Override
    public double width(String text, Ink ink) {
        return text.length() * ink.sizePt() / 2;
    }

    @Override
    public void clip(double x, double y, double width, double height) {
        pen.setClip(new java.awt.geom.Rectangle2D.Double(x, y, width, height));
    }

    @Override
    public void unclip() {
        pen.setClip(null);
    }
}
