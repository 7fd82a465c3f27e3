package io.rowledger.report.sections;

import io.rowledger.coverage.CoverageDefect;
import io.rowledger.geo.Jts;
import io.rowledger.track.Pass;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * Both ends of a skip or overlap, in the direction in which the first pass beside it was driven.
 *
 * <p>An end is a point inside the outermost twentieth of the outline along its longest direction, the direction of its two
 * corners that lie farthest apart.
 *
 * @param startEastM east of the end that was reached first, m
 * @param startNorthM north of it, m
 * @param endEastM east of the other end, m
 * @param endNorthM north of it, m
 * @param lengthM distance between the two farthest corners, m
 * @param widthM area ÷ length, m
 */
public record PlaceEnds(
        double startEastM, double startNorthM, double endEastM, double endNorthM, double lengthM, double widthM) {
    /** Fraction of the length in which an end lies. */
    private static final double END_SHARE = 0.05;
    /** Length from which a single point no longer tells a driver where a place begins and ends, m; common practice, no source. */
    private static final double MIN_LONG_M = 30;
    /** Length over width from which a place is a stretch and not a patch. */
    private static final double MIN_SLENDERNESS = 3;

    /** The ends of a place. */
    public static PlaceEnds of(CoverageDefect place, List<Pass> passes) {
        // JTS 1.20 sorts the coordinates that it is given in place.
        Coordinate[] hull = place.polygon().copy().convexHull().getCoordinates();
        Coordinate from = hull[0];
        Coordinate to = hull[0];
        for (int i = 0; i < hull.length; i++) {
            for (int j = i + 1; j < hull.length; j++) {
                if (hull[i].distance(hull[j]) > from.distance(to)) {
                    from = hull[i];
                    to = hull[j];
                }
            }
        }
        double lengthM = from.distance(to);
        if (lengthM <= 0) {
            return new PlaceEnds(place.eastM(), place.northM(), place.eastM(), place.northM(), 0, 0);
        }
        double eastward = (to.x - from.x) / lengthM;
        double northward = (to.y - from.y) / lengthM;
        double headingRad = heading(place, passes);
        boolean along = eastward * Math.sin(headingRad) + northward * Math.cos(headingRad) >= 0;
        double angle = Math.atan2(along ? northward : -northward, along ? eastward : -eastward);
        Coordinate start = end(place.polygon(), angle, true);
        Coordinate end = end(place.polygon(), angle, false);
        return new PlaceEnds(start.x, start.y, end.x, end.y, lengthM, place.areaM2() / lengthM);
    }

    private static double heading(CoverageDefect place, List<Pass> passes) {
        int number = place.passes().isEmpty() ? 0 : place.passes().get(0);
        return number < 1 || number > passes.size() ? 0 : passes.get(number - 1).headingRad();
    }

    /** A point inside the first or last twentieth of a polygon along a direction, rad counterclockwise from east. */
    private static Coordinate end(Polygon polygon, double angle, boolean first) {
        Geometry turned = AffineTransformation.rotationInstance(-angle).transform(polygon);
        Envelope box = turned.getEnvelopeInternal();
        double part = END_SHARE * box.getWidth();
        Envelope slice = first
                ? new Envelope(box.getMinX(), box.getMinX() + part, box.getMinY() - 1, box.getMaxY() + 1)
                : new Envelope(box.getMaxX() - part, box.getMaxX(), box.getMinY() - 1, box.getMaxY() + 1);
        Geometry piece = Jts.intersection(turned, Jts.FACTORY.toGeometry(slice));
        Point inside = piece.isEmpty() ? turned.getInteriorPoint() : piece.getInteriorPoint();
        return AffineTransformation.rotationInstance(angle).transform(inside).getCoordinate();
    }

    /** True for a stretch that a driver has to follow: one point doesn't tell where it ends. */
    public boolean isLong() {
        return lengthM >= MIN_LONG_M && lengthM >= MIN_SLENDERNESS * widthM;
    }

    /** The same stretch driven the other way. */
    public PlaceEnds reversed() {
        return new PlaceEnds(endEastM, endNorthM, startEastM, startNorthM, lengthM, widthM);
    }
}
