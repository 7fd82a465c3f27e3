package io.rowledger.coverage;

import io.rowledger.field.Boundary;
import io.rowledger.geo.Jts;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.algorithm.PointLocation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.hprtree.HPRtree;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/**
 * Finds ground that no delivering strip covers.
 *
 * <p>With a boundary: the boundary less the covered ground. Without one: gaps enclosed by covered ground, and gaps open
 * at an end that are narrower than one and a half row spacings. The latter are what a morphological closing fills (the
 * covered ground grown by half that width and shrunk again); wider ground behind such a gap is enclosed then and counts
 * as well. Corners are mitred, so that the closing doesn't round them.
 */
final class SkipFinder {
    /**
     * Distance of the closing in row spacings: half of 1.5, between the widths of one and two rows, so that noise
     * doesn't decide.
     */
    private static final double CLOSING_SPACINGS = 0.75;
    /** Smallest diameter of an open gap in row spacings; smaller ones are fillings of corners. */
    private static final double MIN_GAP_SPACINGS = 4;
    /** Limit of the mitre length in units of the distance; cuts off corners sharper than 23 degrees. */
    private static final double MITRE_LIMIT = 5;
    /** Largest mean width of what a closing leaves along a curved edge by rounding, m. */
    private static final double MAX_ROUNDING_M = 1e-3;

    private SkipFinder() {}

    /** Returns the skips; with nothing covered, the whole boundary, or nothing without a boundary. */
    static Geometry of(Geometry covered, @Nullable Boundary boundary, double rowSpacingM) {
        if (covered.isEmpty()) {
            return boundary == null ? covered : boundary.area();
        }
        if (boundary != null) {
            return Jts.difference(boundary.area(), covered);
        }
        Geometry filled = withoutHoles(covered);
        List<Polygon> skips = holes(covered);
        skips.addAll(openGaps(filled, rowSpacingM));
        // Holes lie inside the filled ground, gaps outside: they touch at points at most, so that no union is needed.
        return Jts.collect(skips);
    }

    /** Returns the ground in the holes: as they are, or without what is covered in them. */
    private static List<Polygon> holes(Geometry covered) {
        List<Polygon> polygons = Jts.polygons(covered);
        HPRtree tree = new HPRtree();
        polygons.forEach(polygon -> tree.insert(polygon.getEnvelopeInternal(), polygon));
        List<Polygon> holes = new ArrayList<>();
        for (Polygon polygon : polygons) {
            for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
                Polygon hole =
                        Jts.FACTORY.createPolygon(polygon.getInteriorRingN(h).getCoordinateSequence());
                List<Polygon> inside = new ArrayList<>();
                tree.query(hole.getEnvelopeInternal(), item -> {
                    Polygon other = (Polygon) item;
                    if (hole.getEnvelopeInternal().covers(other.getEnvelopeInternal())) {
                        inside.add(other);
                    }
                });
                holes.addAll(
                        inside.isEmpty() ? List.of(hole) : Jts.polygons(Jts.difference(hole, Jts.collect(inside))));
            }
        }
        return holes;
    }

    /**
     * Returns the union of the shells; the geometry itself if none of its polygons has a hole. Polygons of one geometry touch at
     * points at most: a shell lies apart from another or in a hole of its polygon, where the union swallows it.
     */
    private static Geometry withoutHoles(Geometry geometry) {
        if (!hasHoles(geometry)) {
            return geometry;
        }
        List<Polygon> polygons = Jts.polygons(geometry);
        HPRtree holed = new HPRtree();
        for (int i = 0; i < polygons.size(); i++) {
            if (polygons.get(i).getNumInteriorRing() > 0) {
                holed.insert(polygons.get(i).getEnvelopeInternal(), i);
            }
        }
        List<Polygon> shells = new ArrayList<>();
        for (int i = 0; i < polygons.size(); i++) {
            int self = i;
            Polygon polygon = polygons.get(i);
            boolean[] swallowed = {false};
            holed.query(polygon.getEnvelopeInternal(), item -> {
                int other = (Integer) item;
                swallowed[0] |=
                        other != self && isInside(polygon, polygons.get(other).getExteriorRing());
            });
            if (!swallowed[0]) {
                shells.add(Jts.FACTORY.createPolygon(polygon.getExteriorRing().getCoordinateSequence()));
            }
        }
        return Jts.collect(shells);
    }

    /** Returns true if a polygon lies inside a ring that it does not cross. */
    private static boolean isInside(Polygon polygon, LinearRing ring) {
        if (!ring.getEnvelopeInternal().covers(polygon.getEnvelopeInternal())) {
            return false;
        }
        for (Coordinate corner : polygon.getExteriorRing().getCoordinates()) {
            int where = PointLocation.locateInRing(corner, ring.getCoordinates());
            if (where != Location.BOUNDARY) {
                return where == Location.INTERIOR;
            }
        }
        return true;
    }

    private static boolean hasHoles(Geometry geometry) {
        return Jts.polygons(geometry).stream().anyMatch(polygon -> polygon.getNumInteriorRing() > 0);
    }

    private static List<Polygon> openGaps(Geometry filled, double rowSpacingM) {
        Geometry closed = withoutHoles(closed(filled, CLOSING_SPACINGS * rowSpacingM));
        List<Polygon> out = new ArrayList<>();
        for (Polygon gap : Jts.polygons(Jts.difference(closed, filled))) {
            double acrossM = gap.getEnvelopeInternal().getDiameter();
            if (acrossM > MIN_GAP_SPACINGS * rowSpacingM && Jts.meanWidthM(gap) > MAX_ROUNDING_M) {
                out.add(gap);
            }
        }
        return out;
    }

    /**
     * Returns the morphological closing. Shrinking a very irregular outline with mitres can invert it, which shows in
     * an area that is too large or too small; round joins are used then.
     */
    private static Geometry closed(Geometry filled, double distanceM) {
        Geometry grown = mitred(filled, distanceM);
        Geometry closed = mitred(grown, -distanceM);
        boolean sane = closed.getArea() <= grown.getArea()
                && closed.getArea() >= filled.getArea() - grown.getLength() * MAX_ROUNDING_M;
        return sane ? closed : filled.buffer(distanceM).buffer(-distanceM);
    }

    /** Returns the geometry grown (negative: shrunk) by a distance, with mitred corners and without simplification. */
    static Geometry mitred(Geometry geometry, double distanceM) {
        BufferParameters how =
                new BufferParameters(2, BufferParameters.CAP_FLAT, BufferParameters.JOIN_MITRE, MITRE_LIMIT);
        how.setSimplifyFactor(0);
        return BufferOp.bufferOp(geometry, distanceM, how);
    }
}
