package io.rowledger.document.pdf;

import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.PdfContentByte;
import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Outline;
import java.awt.Color;

/** A canvas on a PDF page: mirrors y and moves the origin to the top left corner of the chart's box. */
final class PdfCanvas implements Canvas {
    private final PdfContentByte page;
    private final ReportFonts fonts;
    private final double leftPt;
    private final double topPt;

    /** Top left corner of the chart, points from the bottom left corner of the page. */
    PdfCanvas(PdfContentByte page, ReportFonts fonts, double leftPt, double topPt) {
        this.page = page;
        this.fonts = fonts;
        this.leftPt = leftPt;
        this.topPt = topPt;
        page.setLineCap(PdfContentByte.LINE_CAP_BUTT);
        page.setLineJoin(PdfContentByte.LINE_JOIN_ROUND);
        page.setLineDash(0);
    }

    @Override
    public void fill(Outline path, int rgb) {
        page.setColorFill(new Color(rgb));
        path.walk(new Pen());
        page.eoFill();
    }

    @Override
    public void stroke(Outline path, int rgb, double widthPt) {
        page.setColorStroke(new Color(rgb));
        page.setLineWidth((float) widthPt);
        path.walk(new Pen());
        page.stroke();
    }

    @Override
    public void text(String text, double x, double y, Ink ink, Align align) {
        double width = align == Align.LEFT ? 0 : width(text, ink);
        double left = align == Align.LEFT ? x : align == Align.RIGHT ? x - width : x - width / 2;
        page.beginText();
        page.setColorFill(new Color(ink.rgb()));
        page.setFontAndSize(font(ink), (float) ink.sizePt());
        page.setTextMatrix((float) (leftPt + left), (float) (topPt - y));
        page.showText(fonts.missing().boxed(text));
        page.endText();
    }

    @Override
    public double width(String text, Ink ink) {
        return font(ink).getWidthPoint(fonts.missing().boxed(text), (float) ink.sizePt());
    }

    @Override
    public void clip(double x, double y, double width, double height) {
        page.saveState();
        page.rectangle((float) (leftPt + x), (float) (topPt - y - height), (float) width, (float) height);
        page.clip();
        page.newPath();
    }

    @Override
    public void unclip() {
        page.restoreState();
    }

    private BaseFont font(Ink ink) {
        return fonts.of(ink.bold());
    }

    /** Writes a path into the page's content. */
    private final class Pen implements Outline.Walker {
        @Override
        public void move(double x, double y) {
            page.moveTo((float) (leftPt + x), (float) (topPt - y));
        }

        @Override
        public void line(double x, double y) {
            page.lineTo((float) (leftPt + x), (float) (topPt - y));
        }

        @Override
        public void box(double x, double y, double width, double height) {
            page.rectangle((float) (leftPt + x), (float) (topPt - y - height), (float) width, (float) height);
        }

        @Override
        public void close() {
            page.closePath();
        }
    }
}
