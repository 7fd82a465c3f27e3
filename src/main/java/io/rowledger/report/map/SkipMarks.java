package io.rowledger.report.map;

import io.rowledger.coverage.CoverageDefect;
import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Outline;
import io.rowledger.document.chart.Palette;
import java.util.List;

/** Skips on a map: white with a dark outline, which no class of a rate has; a skip too thin to see is drawn wider. */
public final class SkipMarks {
    /** Width below which a skip would vanish on paper, points. */
    static final double MIN_WIDTH_PT = 2;

    /** Length from which a thin skip is drawn wider, points: shorter ones would look like more than they are. */
    private static final double MIN_LENGTH_PT = 12;

    private static final double LINE_PT = 0.9;
    private static final double SMALL_LINE_PT = 0.6;

    private SkipMarks() {}

    /**
     * Draws skips. Those of at least half a row's width are never thinner than can be seen; gaps between passes that are thinner
     * keep their width, so that they don't look like a row.
     *
     * @return true if any is drawn wider than it is
     */
    public static boolean draw(Canvas canvas, MapFrame frame, List<CoverageDefect> skips, double rowWidthM) {
        boolean widened = false;
        for (CoverageDefect skip : skips) {
            Outline outline = frame.outline(skip.polygon());
            double halfRing = skip.polygon().getLength() / 2;
            double widthPt = frame.pt(skip.areaM2() / halfRing);
            boolean thin = widthPt < MIN_WIDTH_PT
                    && frame.pt(halfRing) > MIN_LENGTH_PT
                    && 2 * skip.areaM2() / halfRing >= rowWidthM;
            widened |= thin;
            canvas.fill(outline, thin ? Palette.INK : Palette.WHITE);
            canvas.stroke(outline, Palette.INK, thin ? Math.max(LINE_PT, MIN_WIDTH_PT - widthPt) : SMALL_LINE_PT);
        }
        return widened;
    }

    /** The mark in a legend, 10 by 9 points, its top left corner at (x, y). */
    public static void swatch(Canvas canvas, double x, double y) {
        canvas.box(x, y, 10, 9, Palette.WHITE);
        canvas.stroke(
                new Outline().box(x + LINE_PT / 2, y + LINE_PT / 2, 10 - LINE_PT, 9 - LINE_PT), Palette.INK, LINE_PT);
    }
}
