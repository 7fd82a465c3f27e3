package io.rowledger.report.map;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Outline;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.text.Messages;
import io.rowledger.track.PathBreak;
import java.util.List;

/**
 * Gaps and jumps of the positions on a map, where the bar was lowered: a line with bars at its ends over a gap that was left
 * open, dots where the path was carried across a gap, a diamond where the position jumped. Told apart by shape, not by color.
 */
final class PositionMarks {
    /** Longest gap that is drawn, s: over a longer one the bar may have gone anywhere. */
    private static final double MAX_LINE_S = 60;

    private static final double HALO_PT = 2.6;
    private static final double LINE_PT = 1.1;
    private static final double BAR_PT = 2.5;
    private static final double DOT_PT = 0.7;
    private static final double DOT_APART_PT = 2.4;
    private static final double DIAMOND_PT = 2.6;

    private PositionMarks() {}

    /** True if any of them is drawn, so that the map needs a legend. */
    static boolean any(List<PathBreak> breaks) {
        return breaks.stream().anyMatch(PositionMarks::isMarked);
    }

    private static boolean isMarked(PathBreak each) {
        return each.lowered() && (each.kind() == PathBreak.Kind.SHIFTED || each.durationS() <= MAX_LINE_S);
    }

    /** Draws the marks. */
    static void draw(Canvas canvas, MapFrame frame, List<PathBreak> breaks) {
        canvas.clip(frame.left(), frame.top(), frame.width(), frame.height());
        for (PathBreak each : breaks) {
            if (!isMarked(each)) {
                continue;
            }
            double x0 = frame.x(each.fromEastM());
            double y0 = frame.y(each.fromNorthM());
            double x1 = frame.x(each.toEastM());
            double y1 = frame.y(each.toNorthM());
            if (each.kind() == PathBreak.Kind.GAP) {
                barred(canvas, x0, y0, x1, y1);
            } else if (each.kind() == PathBreak.Kind.BRIDGED) {
                dotted(canvas, x0, y0, x1, y1);
            } else {
                diamond(canvas, (x0 + x1) / 2, (y0 + y1) / 2);
            }
        }
        canvas.unclip();
    }

    private static void barred(Canvas canvas, double x0, double y0, double x1, double y1) {
        double length = Math.hypot(x1 - x0, y1 - y0);
        double acrossX = length > 0 ? -(y1 - y0) / length * BAR_PT : 0;
        double acrossY = length > 0 ? (x1 - x0) / length * BAR_PT : BAR_PT;
        Outline path = new Outline()
                .move(x0, y0)
                .line(x1, y1)
                .move(x0 - acrossX, y0 - acrossY)
                .line(x0 + acrossX, y0 + acrossY)
                .move(x1 - acrossX, y1 - acrossY)
                .line(x1 + acrossX, y1 + acrossY);
        canvas.stroke(path, Palette.WHITE, HALO_PT);
        canvas.stroke(path, Palette.INK, LINE_PT);
    }

    private static void dotted(Canvas canvas, double x0, double y0, double x1, double y1) {
        int gaps = Math.max(1, (int) (Math.hypot(x1 - x0, y1 - y0) / DOT_APART_PT));
        Outline path = new Outline();
        for (int i = 0; i <= gaps; i++) {
            double u = (double) i / gaps;
            path.dot(x0 + u * (x1 - x0), y0 + u * (y1 - y0), DOT_PT);
        }
        canvas.stroke(path, Palette.WHITE, 1);
        canvas.fill(path, Palette.INK);
    }

    private static void diamond(Canvas canvas, double x, double y) {
        Outline path = new Outline()
                .move(x - DIAMOND_PT, y)
                .line(x, y - DIAMOND_PT)
                .line(x + DIAMOND_PT, y)
                .line(x, y + DIAMOND_PT)
                .close();
        canvas.fill(path, Palette.WHITE);
        canvas.stroke(path, Palette.INK, LINE_PT);
    }

    /** Draws the legend of the marks on the map from (x, y) downward and returns the y below it. */
    static double legend(Canvas canvas, List<PathBreak> breaks, double x, double y, Messages messages) {
        double at = y;
        for (PathBreak.Kind kind : PathBreak.Kind.values()) {
            if (breaks.stream().noneMatch(each -> each.kind() == kind && isMarked(each))) {
                continue;
            }
            String key =
                    switch (kind) {
                        case GAP -> "words.map.gapOpen";
                        case BRIDGED -> "words.map.gapCrossed";
                        case SHIFTED -> "words.map.shifted";
                    };
            switch (kind) {
                case GAP -> barred(canvas, x, at + 4.5, x + 10, at + 4.5);
                case BRIDGED -> dotted(canvas, x, at + 4.5, x + 10, at + 4.5);
                case SHIFTED -> diamond(canvas, x + 5, at + 4.5);
            }
            canvas.text(messages.text(key), x + 15, at + 7.5, Palette.LABEL, Align.LEFT);
            at += 12;
        }
        return at;
    }
}
