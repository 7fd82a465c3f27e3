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
import java.util.ArrayList;
import java.util.Arrays;
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

    private static final double HATCH_LINE_PT = 0.35;
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
                hatch(canvas, frame, keepOut.ground());
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
        for (double at = 2; at < 19; at += HATCH_PT) {
            canvas.line(
                    x + Math.max(0, at - 9),
                    y + Math.min(9, at),
                    x + Math.min(10, at),
                    y + Math.max(0, at - 10),
                    Palette.INK,
                    HATCH_LINE_PT);
        }
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

    /** Hatches ground with lines at 45 degrees, clipped to its edges by counting crossings. */
    private static void hatch(Canvas canvas, MapFrame frame, Geometry ground) {
        Outline path = new Outline();
        List<Edge> edges = edges(frame, ground);
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (Edge edge : edges) {
            least = Math.min(least, Math.min(edge.x0 + edge.y0, edge.x1 + edge.y1));
            most = Math.max(most, Math.max(edge.x0 + edge.y0, edge.x1 + edge.y1));
        }
        least = Math.max(least, frame.left() + frame.top());
        most = Math.min(most, frame.left() + frame.width() + frame.top() + frame.height());
        double[] at = new double[edges.size()];
        for (double sum = Math.ceil(least / HATCH_PT) * HATCH_PT; sum < most; sum += HATCH_PT) {
            int found = 0;
            for (Edge edge : edges) {
                double a = edge.x0 + edge.y0 - sum;
                double b = edge.x1 + edge.y1 - sum;
                if (a > 0 != b > 0) {
                    at[found++] = edge.x0 + a / (a - b) * (edge.x1 - edge.x0);
                }
            }
            Arrays.sort(at, 0, found);
            for (int i = 0; i + 1 < found; i += 2) {
                path.move(at[i], sum - at[i]).line(at[i + 1], sum - at[i + 1]);
            }
        }
        if (!path.isEmpty()) {
            canvas.stroke(path, Palette.INK, HATCH_LINE_PT);
        }
    }

    /** An edge of a ring on paper, points. */
    private record Edge(double x0, double y0, double x1, double y1) {}

    private static List<Edge> edges(MapFrame frame, Geometry ground) {
        List<Edge> edges = new ArrayList<>();
        frame.outline(ground).walk(new Outline.Walker() {
            private double startX;
            private double startY;
            private double lastX;
            private double lastY;

            @Override
            public void move(double x, double y) {
                startX = x;
                startY = y;
                lastX = x;
                lastY = y;
            }

            @Override
            public void line(double x, double y) {
                edges.add(new Edge(lastX, lastY, x, y));
                lastX = x;
                lastY = y;
            }

            @Override
            public void box(double x, double y, double width, double height) {}

            @Override
            public void close() {
                line(startX, startY);
            }
        });
        return edges;
    }
}
