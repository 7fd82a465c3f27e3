package io.rowledger.coverage;

import io.rowledger.field.Boundary;
import io.rowledger.geo.Jts;
import io.rowledger.geo.Unions;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/**
 * Ground that got nothing.
 *
 * <p>With a boundary: the boundary less the covered ground. Without one: the gaps the covered ground encloses, and the
 * gaps narrower than one and a half row spacings that are open at an end. The latter are what a closing fills (grow the
 * covered ground by half that width, shrink it again); where a closed mouth encloses wider ground behind it, that
 * is an enclosed gap too. Corners are mitred, so that the closing does not round off what it meets.
 */
final class SkipFinder {
    /** Half of one and a half: between the widths of one and of two rows, so that noise does not decide on either. */
    private static final double CLOSING_SPACINGS = 0.75;
    /** Below this many row spacings across, what a closing fills at a corner is the corner's shape and no gap. */
    private static final double MIN_GAP_SPACINGS = 4;
    /** Mitres longer than this times the distance are cut off: only at corners sharper than 23 degrees. */
    private static final double MITRE_LIMIT = 5;
    /** What a closing leaves along a curved edge is rounding when thinner than this, m. */
    private static final double MAX_ROUNDING_M = 1e-3;

    private SkipFinder() {}

    static Geometry of(Geometry covered, @Nullable Boundary boundary, double rowSpacingM) {
        if (covered.isEmpty()) {
            return boundary == null ? covered : boundary.area();
        }
        if (boundary != null) {
            return Jts.areal(Jts.difference(boundary.area(), covered));
        }
        Geometry filled = withoutHoles(covered);
        List<Geometry> skips = new ArrayList<>();
        skips.add(Jts.areal(Jts.difference(filled, covered)));
        skips.addAll(openGaps(filled, rowSpacingM));
        return Unions.union(skips, 1);
    }

    /** The ground within the outer rings; an island within a hole is within the outer ring already. */
    private static Geometry withoutHoles(Geometry geometry) {
        List<Polygon> shells = new ArrayList<>();
        for (Polygon polygon : Jts.polygons(geometry)) {
            shells.add(Jts.FACTORY.createPolygon(polygon.getExteriorRing().getCoordinateSequence()));
        }
        return Unions.union(shells, 1);
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
     * Grown and shrunk again. Shrinking a much indented outline with mitres can turn inside out; it is known by being
     * larger than what was shrunk, and then round corners, which cannot, are taken instead.
     */
    private static Geometry closed(Geometry filled, double distanceM) {
        Geometry grown = mitred(filled, distanceM);
        Geometry closed = mitred(grown, -distanceM);
        boolean sane = closed.getArea() <= grown.getArea()
                && closed.getArea() >= filled.getArea() - grown.getLength() * MAX_ROUNDING_M;
        return sane ? closed : filled.buffer(distanceM).buffer(-distanceM);
    }

    /** Grown (or shrunk, for a negative distance) with mitred corners and no simplification of its own. */
    static Geometry mitred(Geometry geometry, double distanceM) {
        BufferParameters how =
                new BufferParameters(2, BufferParameters.CAP_FLAT, BufferParameters.JOIN_MITRE, MITRE_LIMIT);
        how.setSimplifyFactor(0);
        return BufferOp.bufferOp(geometry, distanceM, how);
    }
}
