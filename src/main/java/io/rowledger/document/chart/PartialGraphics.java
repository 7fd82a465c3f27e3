package io.rowledger.document.chart;

import java.awt.Color;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.GraphicsConfiguration;
import java.awt.Image;
import java.awt.Rectangle;
import java.awt.Shape;
import java.awt.font.GlyphVector;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.awt.image.BufferedImageOp;
import java.awt.image.ImageObserver;
import java.awt.image.RenderedImage;
import java.awt.image.renderable.RenderableImage;
import java.text.AttributedCharacterIterator;

/** A {@link Graphics2D} whose less common operations all throw {@link UnsupportedOperationException}. */
abstract class PartialGraphics extends Graphics2D {
    static UnsupportedOperationException unsupported() {
        return new UnsupportedOperationException("not drawn on paper");
    }

    @Override
    public Graphics create() {
        throw unsupported();
    }

    @Override
    public void setPaintMode() {
        throw unsupported();
    }

    @Override
    public void setXORMode(Color other) {
        throw unsupported();
    }

    @Override
    public void setBackground(Color background) {
        throw unsupported();
    }

    @Override
    public Color getBackground() {
        throw unsupported();
    }

    @Override
    public void translate(int x, int y) {
        throw unsupported();
    }

    @Override
    public void translate(double x, double y) {
        throw unsupported();
    }

    @Override
    public void rotate(double angle) {
        throw unsupported();
    }

    @Override
    public void rotate(double angle, double x, double y) {
        throw unsupported();
    }

    @Override
    public void scale(double x, double y) {
        throw unsupported();
    }

    @Override
    public void shear(double x, double y) {
        throw unsupported();
    }

    @Override
    public boolean hit(Rectangle box, Shape shape, boolean onStroke) {
        throw unsupported();
    }

    @Override
    public GraphicsConfiguration getDeviceConfiguration() {
        throw unsupported();
    }

    @Override
    public void copyArea(int x, int y, int width, int height, int dx, int dy) {
        throw unsupported();
    }

    @Override
    public void clearRect(int x, int y, int width, int height) {
        throw unsupported();
    }

    @Override
    public void drawRoundRect(int x, int y, int width, int height, int arcWidth, int arcHeight) {
        throw unsupported();
    }

    @Override
    public void fillRoundRect(int x, int y, int width, int height, int arcWidth, int arcHeight) {
        throw unsupported();
    }

    @Override
    public void drawOval(int x, int y, int width, int height) {
        throw unsupported();
    }

    @Override
    public void fillOval(int x, int y, int width, int height) {
        throw unsupported();
    }

    @Override
    public void drawArc(int x, int y, int width, int height, int startAngle, int arcAngle) {
        throw unsupported();
    }

    @Override
    public void fillArc(int x, int y, int width, int height, int startAngle, int arcAngle) {
        throw unsupported();
    }

    @Override
    public void drawPolyline(int[] x, int[] y, int n) {
        throw unsupported();
    }

    @Override
    public void drawPolygon(int[] x, int[] y, int n) {
        throw unsupported();
    }

    @Override
    public void fillPolygon(int[] x, int[] y, int n) {
        throw unsupported();
    }

    @Override
    public void drawString(AttributedCharacterIterator text, int x, int y) {
        throw unsupported();
    }

    @Override
    public void drawString(AttributedCharacterIterator text, float x, float y) {
        throw unsupported();
    }

    @Override
    public void drawGlyphVector(GlyphVector glyphs, float x, float y) {
        throw unsupported();
    }

    @Override
    public boolean drawImage(Image image, AffineTransform transform, ImageObserver observer) {
        throw unsupported();
    }

    @Override
    public void drawImage(BufferedImage image, BufferedImageOp filter, int x, int y) {
        throw unsupported();
    }

    @Override
    public void drawRenderedImage(RenderedImage image, AffineTransform transform) {
        throw unsupported();
    }

    @Override
    public void drawRenderableImage(RenderableImage image, AffineTransform transform) {
        throw unsupported();
    }

    @Override
    public boolean drawImage(Image image, int x, int y, ImageObserver observer) {
        throw unsupported();
    }

    @Override
    public boolean drawImage(Image image, int x, int y, int width, int height, ImageObserver observer) {
        throw unsupported();
    }

    @Override
    public boolean drawImage(Image image, int x, int y, Color background, ImageObserver observer) {
        throw unsupported();
    }

    @Override
    public boolean drawImage(
            Image image, int x, int y, int width, int height, Color background, ImageObserver observer) {
        throw unsupported();
    }

    @Override
    public boolean drawImage(
            Image image,
            int toX1,
            int toY1,
            int toX2,
            int toY2,
            int fromX1,
            int fromY1,
            int fromX2,
            int fromY2,
            ImageObserver observer) {
        throw unsupported();
    }

    @Override
    public boolean drawImage(
            Image image,
            int toX1,
            int toY1,
            int toX2,
            int toY2,
            int fromX1,
            int fromY1,
            int fromX2,
            int fromY2,
            Color background,
            ImageObserver observer) {
        throw unsupported();
    }
}
