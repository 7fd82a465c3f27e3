package io.rowledger.geo;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.geom.TopologyException;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.precision.GeometryPrecisionReducer;

/**
 * Polygons in the job's plane with the JTS library: precision grid, factory, overlays.
 *
 * <p>Every vertex lies on a grid of 0.1 mm. On a common grid the overlay of valid polygons cannot fail and leaves no
 * rounding slivers between strips that share an edge. A vertex moves by at most 0.07 mm, without bias:
 * on a field of 64 ha with 35 km of strip edges the covered area moves by less than 0.1 m².
 */
public final class Jts {
    /** Side of the grid that vertices lie on, m. */
    public static final double GRID_M = 1e-4;

    /** The grid as a JTS precision model. */
    public static final PrecisionModel GRID = new PrecisionModel(1 / GRID_M);

    /** Factory of all geometries of the program. */
    public static final GeometryFactory FACTORY = new GeometryFactory(GRID);

    /**
     * Number of corners of one geometry from which on an overlay takes lines in random order. Areas of the result don't depend
     * on it; the corner that a ring begins with does, so that smaller geometries are overlaid as they come.
     */
    private static final int MIN_SHUFFLED_CORNERS = 50_000;

    /**
     * Number of polygons of one geometry from which on an overlay takes those near the other one alone: for a strip of a field
     * with a boundary of 30,000 parts, a few hundred.
     */
    private static final int MIN_PICKED_PARTS = 1000;

    /** Distance of bounding boxes up to which a polygon is near, m: many grid widths, so that rounding can't matter. */
    private static final double NEAR_M = 100 * GRID_M;

    private Jts() {}

    /** Returns the nearest coordinate on the grid, m. */
    public static double onGrid(double m) {
        return GRID.makePrecise(m);
    }

    /** Returns the polygons of the area in both. */
    public static Geometry intersection(Geometry a, Geometry b) {
        Geometry nearA = near(a, b);
        return overlay(nearA, near(b, nearA), OverlayNG.INTERSECTION);
    }

    /** Returns the polygons of the area in a and not in b. */
    public static Geometry difference(Geometry a, Geometry b) {
        return overlay(a, near(b, a), OverlayNG.DIFFERENCE);
    }

    /** Returns a geometry without the polygons away from the other one, or as it is if it has few. */
    private static Geometry near(Geometry geometry, Geometry other) {
        if (geometry.getNumGeometries() < MIN_PICKED_PARTS) {
            return geometry;
        }
        Envelope box = other.getEnvelopeInternal().copy();
        if (!box.isNull()) {
            box.expandBy(NEAR_M);
        }
        List<Polygon> near = polygons(geometry);
        near.removeIf(polygon -> !box.intersects(polygon.getEnvelopeInternal()));
        return collect(near);
    }

    /**
     * Overlay on the grid, without the lines and points that parts of a result collapse to: an overlay refuses them beside
     * polygons.
     *
     * <p>It can fail for a buffer whose vertices were snapped to the grid afterwards, so that it intersects itself, and for
     * polygons of a few grid widths. Then both are repaired and overlaid in floating point, and the result is snapped.
     */
    private static Geometry overlay(Geometry a, Geometry b, int what) {
        try {
            return areal(onGrid(a, b, what));
        } catch (TopologyException failedOnGrid) {
            return overlayRepaired(repaired(a), repaired(b), what);
        }
    }

    private static Geometry overlayRepaired(Geometry a, Geometry b, int what) {
        try {
            return areal(onGrid(a, b, what));
        } catch (TopologyException failedOnGrid) {
            return areal(GeometryPrecisionReducer.reduce(areal(OverlayNGRobust.overlay(a, b, what)), GRID));
        }
    }

    private static Geometry onGrid(Geometry a, Geometry b, int what) {
        return Math.max(a.getNumPoints(), b.getNumPoints()) < MIN_SHUFFLED_CORNERS
                ? OverlayNG.overlay(a, b, what, GRID)
                : OverlayNG.overlay(a, b, what, GRID, new ShuffledNoder(GRID));
    }

    private static Geometry repaired(Geometry geometry) {
        return geometry.isValid() ? geometry : GeometryPrecisionReducer.reduce(GeometryFixer.fix(geometry), GRID);
    }

    /** Returns the polygons of a geometry; lines and points that an overlay may return beside them are left out. */
    public static List<Polygon> polygons(Geometry geometry) {
        List<Polygon> out = new ArrayList<>(geometry.getNumGeometries());
        for (int i = 0; i < geometry.getNumGeometries(); i++) {
            Geometry part = geometry.getGeometryN(i);
            if (part instanceof Polygon polygon && !polygon.isEmpty()) {
                out.add(polygon);
            }
        }
        return out;
    }

    /** Returns the polygons of a geometry as one polygon or multipolygon, without lines and points. */
    public static Geometry areal(Geometry geometry) {
        return collect(polygons(geometry));
    }

    /** Returns disjoint polygons as one polygon or multipolygon. */
    public static Geometry collect(List<Polygon> polygons) {
        return polygons.size() == 1 ? polygons.get(0) : FACTORY.createMultiPolygon(polygons.toArray(new Polygon[0]));
    }

    /** Returns the rings of a polygon, the shell first. */
    public static List<LineString> rings(Polygon polygon) {
        List<LineString> out = new ArrayList<>(1 + polygon.getNumInteriorRing());
        out.add(polygon.getExteriorRing());
        for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
            out.add(polygon.getInteriorRingN(i));
        }
        return out;
    }

    /** Returns twice the area of a ring, m², positive clockwise; shoelace formula about the first vertex. */
    public static double clockwiseTwiceArea(LineString ring) {
        CoordinateSequence c = ring.getCoordinateSequence();
        double x0 = c.getX(0);
        double y0 = c.getY(0);
        double sum = 0;
        for (int i = 1; i + 1 < c.size(); i++) {
            sum += (c.getX(i + 1) - x0) * (c.getY(i) - y0) - (c.getX(i) - x0) * (c.getY(i + 1) - y0);
        }
        return sum;
    }

    /**
     * Returns true if a line parallel to the left side of one of the two strips separates them; then they have no area in
     * common. False means that they may or may not overlap.
     *
     * <p>Separating axis test with two axes, cheap next to an overlay. It finds nearly all disjoint pairs of long strips
     * whose bounding boxes meet because the rows are not parallel to an axis.
     */
    public static boolean separated(Polygon a, Polygon b) {
        CoordinateSequence first = a.getExteriorRing().getCoordinateSequence();
        CoordinateSequence second = b.getExteriorRing().getCoordinateSequence();
        return separated(first, second) || separated(second, first);
    }

    private static boolean separated(CoordinateSequence a, CoordinateSequence b) {
        // A strip's ring goes up its left side and down its right side, so the middle vertex ends the left side.
        int half = Math.max(1, a.size() / 2 - 1);
        double axisX = a.getY(half) - a.getY(0);
        double axisY = a.getX(0) - a.getX(half);
        double leastA = Double.POSITIVE_INFINITY;
        double mostA = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < a.size(); i++) {
            double at = a.getX(i) * axisX + a.getY(i) * axisY;
            leastA = Math.min(leastA, at);
            mostA = Math.max(mostA, at);
        }
        double leastB = Double.POSITIVE_INFINITY;
        double mostB = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < b.size(); i++) {
            double at = b.getX(i) * axisX + b.getY(i) * axisY;
            leastB = Math.min(leastB, at);
            mostB = Math.max(mostB, at);
        }
        return mostA < leastB || mostB < leastA;
    }

    /** Returns twice the area over the perimeter, m: the width of a long thin polygon, half the side of a square. */
    public static double meanWidthM(Polygon polygon) {
        double perimeterM = polygon.getLength();
        return perimeterM == 0 ? 0 : 2 * polygon.getArea() / perimeterM;
    }
}
