package io.rowledger.document.chart;

import io.rowledger.document.chart.Canvas.Ink;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.font.FontRenderContext;
import java.awt.font.LineMetrics;

/**
 * The report's font as the plotting library sees it. Widths come from the canvas and heights from the font's size, so that no
 * font of the machine is ever looked up.
 */
final class ChartFont extends Font {
    private static final long serialVersionUID = 1L;
    /** Height of Liberation Sans above and below the baseline, ems, from its OS/2 table (typographic ascender, descender). */
    private static final float ASCENT_EM = 0.728f;

    private static final float DESCENT_EM = 0.210f;

    final transient Ink ink;

    /** The font of this ink; its size is in chart units. */
    ChartFont(Ink ink) {
        super("Report", ink.bold() ? Font.BOLD : Font.PLAIN, (int)
                Math.round(ink.sizePt() * ChartGraphics.UNITS_PER_PT));
        this.ink = ink;
    }

    private float units(double ems) {
        return (float) (ems * ink.sizePt() * ChartGraphics.UNITS_PER_PT);
    }

    @Override
    public LineMetrics getLineMetrics(String text, FontRenderContext context) {
        return new Line(text.length());
    }

    /** Measures lines of this font on a canvas. */
    FontMetrics on(Canvas canvas) {
        return new Metrics(this, canvas);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ChartFont font && font.ink.equals(ink);
    }

    @Override
    public int hashCode() {
        return ink.hashCode();
    }

    /** Height of a line, chart units. */
    private final class Line extends LineMetrics {
        private final int characters;

        Line(int characters) {
            this.characters = characters;
        }

        @Override
        public int getNumChars() {
            return characters;
        }

        @Override
        public float getAscent() {
            return units(ASCENT_EM);
        }

        @Override
        public float getDescent() {
            return units(DESCENT_EM);
        }

        @Override
        public float getLeading() {
            return 0;
        }

        @Override
        public float getHeight() {
            return units(ASCENT_EM + DESCENT_EM);
        }

        @Override
        public int getBaselineIndex() {
            return Font.ROMAN_BASELINE;
        }

        @Override
        public float[] getBaselineOffsets() {
            return new float[3];
        }

        @Override
        public float getStrikethroughOffset() {
            return 0;
        }

        @Override
        public float getStrikethroughThickness() {
            return 0;
        }

        @Override
        public float getUnderlineOffset() {
            return 0;
        }

        @Override
        public float getUnderlineThickness() {
            return 0;
        }
    }

    /** Widths of text, chart units. */
    private static final class Metrics extends FontMetrics {
        private static final long serialVersionUID = 1L;

        private final transient ChartFont chartFont;
        private final transient Canvas canvas;

        Metrics(ChartFont font, Canvas canvas) {
            super(font);
            this.chartFont = font;
            this.canvas = canvas;
        }

        @Override
        public int stringWidth(String text) {
            return (int) Math.round(canvas.width(text, chartFont.ink) * ChartGraphics.UNITS_PER_PT);
        }

        @Override
        public int getAscent() {
            return Math.round(chartFont.units(ASCENT_EM));
        }

        @Override
        public int getDescent() {
            return Math.round(chartFont.units(DESCENT_EM));
        }
    }
}
