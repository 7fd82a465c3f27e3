package io.rowledger.report.map;

import io.rowledger.document.chart.Axis;
import io.rowledger.document.chart.Canvas;
import io.rowledger.document.chart.Canvas.Align;
import io.rowledger.document.chart.Outline;
import io.rowledger.document.chart.Palette;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/** Fits a piece of the job's plane into a box on paper, north up, one scale both ways. */
public final class MapFrame {
    /** Corners closer than this on paper are left out: a fifth of a hair line. */
    private static final double MIN_CORNER_PT = 0.15;
    /** The scale bar is a round length of at most this share of the map. */
    private static final double SCALE_SHARE = 0.3;

    private final double westM;
    private final double northM;
    private final double ptPerM;
    private final double leftPt;
    private final double topPt;
    private final double widthPt;
    private final double heightPt;

    public MapFrame(Envelope ground, double leftPt, double topPt, double widthPt, double heightPt) {
        double margin = 0.01 * Math.max(Math.max(ground.getWidth(), ground.getHeight()), 1);
        Envelope wide = new Envelope(ground);
        wide.expandBy(margin);
        this.ptPerM = Math.min(widthPt / wide.getWidth(), heightPt / wide.getHeight());
        this.leftPt = leftPt + (widthPt - wide.getWidth() * ptPerM) / 2;
        this.topPt = topPt + (heightPt - wide.getHeight() * ptPerM) / 2;
        this.westM = wide.getMinX();
        this.northM = wide.getMaxY();
        this.widthPt = wide.getWidth() * ptPerM;
        this.heightPt = wide.getHeight() * ptPerM;
    }

    public double x(double eastM) {
        return leftPt + (eastM - westM) * ptPerM;
    }

    public double y(double atNorthM) {
        return topPt + (northM - atNorthM) * ptPerM;
    }

    /** East of a place on paper, m. */
    double eastM(double x) {
        return westM + (x - leftPt) / ptPerM;
    }

    /** North of a place on paper, m. */
    double northM(double y) {
        return northM - (y - topPt) / ptPerM;
    }

    double pt(double lengthM) {
        return lengthM * ptPerM;
    }

    public double left() {
        return leftPt;
    }

    public double top() {
        return topPt;
    }

    public double width() {
        return widthPt;
    }

    public double height() {
        return heightPt;
    }

    /** Outlines of all polygons in a geometry, thinned to what paper shows. */
    public Outline outline(Geometry geometry) {
        Outline path = new Outline();
        for (int i = 0; i < geometry.getNumGeometries(); i++) {
            if (geometry.getGeometryN(i) instanceof Polygon polygon && !polygon.isEmpty()) {
                ring(path, polygon.getExteriorRing());
                for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
                    ring(path, polygon.getInteriorRingN(h));
                }
            }
        }
        return path;
    }

    private void ring(Outline path, LineString ring) {
        Coordinate[] corners = ring.getCoordinates();
        double lastX = 0;
        double lastY = 0;
        for (int i = 0; i < corners.length - 1; i++) {
            double x = x(corners[i].x);
            double y = y(corners[i].y);
            if (i == 0) {
                path.move(x, y);
            } else if (Math.abs(x - lastX) + Math.abs(y - lastY) >= MIN_CORNER_PT) {
                path.line(x, y);
            } else {
                continue;
            }
            lastX = x;
            lastY = y;
        }
        path.close();
    }

    /** A bar of a round length with its label above, its left end at (x, y); at most {@code maxPt} long. */
    public void scaleBar(Canvas canvas, double x, double y, double maxPt, UnitFormat f) {
        double most = QuantityKind.LENGTH.from(Math.min(maxPt, SCALE_SHARE * widthPt * 3) / ptPerM, f.system());
        double round = Axis.roundDown(most);
        double roundM = QuantityKind.LENGTH.toSi(round, f.system());
        double length = pt(roundM);
        canvas.text(f.fixed(round, 0) + "\u00a0" + f.unit(QuantityKind.LENGTH), x, y - 3, Palette.LABEL, Align.LEFT);
        canvas.box(x, y, length / 2, 2.5, Palette.INK);
        canvas.box(x + length / 2, y, length / 2, 2.5, 0xffffff);
        canvas.stroke(new Outline().box(x, y, length, 2.5), Palette.INK, 0.5);
    }

    /** An arrow to the north, its tip at (x, y). */
    public static void northArrow(Canvas canvas, double x, double y) {
        canvas.fill(
                new Outline().move(x, y).line(x + 4.5, y + 14).line(x, y + 11).close(), Palette.INK);
        canvas.stroke(
                new Outline()
                        .move(x, y)
                        .line(x - 4.5, y + 14)
                        .line(x, y + 11)
                        .line(x, y)
                        .close(),
                Palette.INK,
                0.5);
        canvas.text("N", x, y + 22, Palette.STRONG, Align.CENTER);
    }
}
