package io.rowledger.report.map;

import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Canvas.Ink;
import io.rowledger.document.chart.Labels;
import io.rowledger.document.chart.Outline;
import io.rowledger.document.chart.Palette;
import io.rowledger.document.text.Messages;
import io.rowledger.field.KeepOut;
import io.rowledger.setback.Setback;
import io.rowledger.setback.Setbacks;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * Places to keep away from on a map: their setbacks hatched and outlined, the places themselves drawn strong, names
 * beside. Told apart by line and hatch in ink alone, so that it needs no color.
 */
public final class KeepOutMarks {
    /** Between two hatch lines. */
    private static final double HATCH_PT = 4;

    private static final Hatch HATCH = new Hatch(true, HATCH_PT, Palette.INK, 0.35);
    private static final double EDGE_PT = 0.8;
    private static final double PLACE_PT = 1.6;
    private static final double DOT_PT = 1.8;
    /** The map grows by at most this share of its size to show a setback beside the field. */
    private static final double BESIDE = 0.1;

    private static final Ink NAME = new Ink(6, true, Palette.INK);

    private KeepOutMarks() {}

    /** The ground of a map, grown a little where a setback reaches beyond it. */
    public static Envelope ground(Envelope ground, @Nullable Setbacks setbacks) {
        Envelope out = new Envelope(ground);
        if (setbacks == null) {
            return out;
        }
        Envelope most = new Envelope(ground);
        most.expandBy(BESIDE * Math.max(ground.getWidth(), ground.getHeight()));
        for (Setback setback : setbacks.places()) {
            Envelope box = shown(setback.keepOut());
            if (box.intersects(ground)) {
                out.expandToInclude(box.intersection(most));
            }
        }
        return out;
    }

    /** Draws all that lies on the map; names go first to the labels, so that they stay. */
    public static void draw(Canvas canvas, MapFrame frame, Setbacks setbacks, Labels labels) {
        canvas.clip(frame.left(), frame.top(), frame.width(), frame.height());
        for (Setback setback : setbacks.places()) {
            KeepOut keepOut = setback.keepOut();
            if (onMap(frame, keepOut)) {
                HATCH.fill(
                        canvas,
                        frame.outline(keepOut.ground()),
                        frame.left(),
                        frame.top(),
                        frame.left() + frame.width(),
                        frame.top() + frame.height());
                canvas.stroke(frame.outline(keepOut.ground()), Palette.INK, EDGE_PT);
                place(canvas, frame, keepOut.place());
            }
        }
        canvas.unclip();
        for (Setback setback : setbacks.places()) {
            if (onMap(frame, setback.keepOut())) {
                name(frame, setback.keepOut(), labels);
            }
        }
    }

    /** The hatch with its words, 12 points high, its top left corner at (x, y). */
    public static void legend(Canvas canvas, double x, double y, Messages messages) {
        canvas.box(x, y, 10, 9, Palette.WHITE);
        HATCH.fill(canvas, new Outline().box(x, y, 10, 9), x, y, x + 10, y + 9);
        canvas.stroke(new Outline().box(x, y, 10, 9), Palette.INK, EDGE_PT);
        canvas.text(messages.text("words.map.setback"), x + 15, y + 7.5, Palette.LABEL, Align.LEFT);
    }

    private static Envelope shown(KeepOut keepOut) {
        Envelope box = new Envelope(keepOut.place().getEnvelopeInternal());
        box.expandToInclude(keepOut.ground().getEnvelopeInternal());
        return box;
    }

    private static boolean onMap(MapFrame frame, KeepOut keepOut) {
        Envelope box = shown(keepOut);
        return frame.x(box.getMaxX()) > frame.left()
                && frame.x(box.getMinX()) < frame.left() + frame.width()
                && frame.y(box.getMinY()) > frame.top()
                && frame.y(box.getMaxY()) < frame.top() + frame.height();
    }

    private static void name(MapFrame frame, KeepOut keepOut, Labels labels) {
        Envelope box = shown(keepOut);
        double x0 = Math.max(frame.left(), frame.x(box.getMinX()));
        double x1 = Math.min(frame.left() + frame.width(), frame.x(box.getMaxX()));
        double y0 = Math.max(frame.top(), frame.y(box.getMaxY()));
        double y1 = Math.min(frame.top() + frame.height(), frame.y(box.getMinY()));
        double x = (x0 + x1) / 2;
        for (double y : List.of(y0 - 5, y1 + 5, (y0 + y1) / 2)) {
            if (y > frame.top() + 4
                    && y < frame.top() + frame.height() - 4
                    && labels.plate(keepOut.name(), x, y, NAME, Palette.WHITE)) {
                return;
            }
        }
    }

    private static void place(Canvas canvas, MapFrame frame, Geometry place) {
        for (int i = 0; i < place.getNumGeometries(); i++) {
            Geometry part = place.getGeometryN(i);
            if (part.getDimension() == 2) {
                canvas.stroke(frame.outline(part), Palette.INK, PLACE_PT);
            } else if (part.getDimension() == 1) {
                Outline path = new Outline();
                boolean first = true;
                for (Coordinate c : part.getCoordinates()) {
                    path = first ? path.move(frame.x(c.x), frame.y(c.y)) : path.line(frame.x(c.x), frame.y(c.y));
                    first = false;
                }
                canvas.stroke(path, Palette.INK, PLACE_PT);
            } else {
                Coordinate c = part.getCoordinate();
                canvas.fill(new Outline().dot(frame.x(c.x), frame.y(c.y), DOT_PT), Palette.INK);
            }
        }
    }
}
