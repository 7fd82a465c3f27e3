package io.rowledger.coverage.strips;

import io.rowledger.geo.Heading;
import io.rowledger.geo.Jts;
import io.rowledger.geo.Unions;
import io.rowledger.track.Poses;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;

/** Outline of the ground that an interval of the bar passes over between two poses. */
public final class StripOutline {
    /**
     * Cosine of the largest angle between a bar line and the chunk's mean heading for which {@link #advances} is
     * decided.
     */
    private static final double MIN_ADVANCE_COS = Math.cos(Math.toRadians(20));

    private StripOutline() {}

    /**
     * Poses of a strip's vertices.
     *
     * @param both poses of both sides
     * @param left poses of the left side: the same and some that lie on the lines between
     * @param right poses of the right side, likewise
     */
    public record Sides(int[] both, int[] left, int[] right) {}

    /**
     * Returns the outline, up the left edge and down the right one: mostly one polygon. If an edge folds back (the
     * inner end of the bar in a tight turn), the union of the quadrangles between successive poses, which can be
     * several polygons.
     */
    public static List<Polygon> polygons(StripEdges edges, Sides sides, double leftM, double rightM) {
        int[] vertices = sides.both;
        List<Coordinate> ring = new ArrayList<>(sides.left.length + sides.right.length + 1);
        for (int i : sides.left) {
            add(ring, edges.corner(i, leftM));
        }
        for (int v = sides.right.length - 1; v >= 0; v--) {
            add(ring, edges.corner(sides.right[v], rightM));
        }
        if (ring.get(0).equals2D(ring.get(ring.size() - 1))) {
            ring.remove(ring.size() - 1);
        }
        if (ring.size() < 3) {
            return List.of();
        }
        ring.add(ring.get(0).copy());
        Polygon polygon = Jts.FACTORY.createPolygon(ring.toArray(new Coordinate[0]));
        if (advances(edges, vertices, leftM, rightM) || polygon.isValid()) {
            return polygon.getArea() > 0 ? List.of(polygon) : List.of();
        }
        return folded(edges, vertices, leftM, rightM);
    }

    /**
     * Returns true if both edges and all bar lines advance in one direction, which makes the outline simple; false is
     * undecided.
     */
    static boolean advances(StripEdges edges, int[] vertices, double leftM, double rightM) {
        Poses poses = edges.poses();
        int first = vertices[0];
        int last = vertices[vertices.length - 1];
        double middle =
                poses.barHeadingRad(first) + Heading.wrap(poses.barHeadingRad(last) - poses.barHeadingRad(first)) / 2;
        double sin = Math.sin(middle);
        double cos = Math.cos(middle);
        for (int v = 0; v < vertices.length; v++) {
            int i = vertices[v];
            // The bar's right vector is (cos θ, −sin θ), so its heading's vector is (sin θ, cos θ).
            if (Math.sin(poses.barHeadingRad(i)) * sin + Math.cos(poses.barHeadingRad(i)) * cos < MIN_ADVANCE_COS) {
                return false;
            }
            if (v > 0 && (!forward(edges, vertices[v - 1], i, leftM) || !forward(edges, vertices[v - 1], i, rightM))) {
                return false;
            }
        }
        return true;
    }

    /** Returns true if a point of the bar moves within 45 degrees of the bar's heading. */
    private static boolean forward(StripEdges edges, int from, int to, double yM) {
        Coordinate a = edges.corner(from, yM);
        Coordinate b = edges.corner(to, yM);
        double de = b.x - a.x;
        double dn = b.y - a.y;
        double sin = Math.sin(edges.poses().barHeadingRad(from));
        double cos = Math.cos(edges.poses().barHeadingRad(from));
        // Steps shorter than the grid can point anywhere after rounding: they do not pass.
        return de * sin + dn * cos > Math.abs(de * cos - dn * sin) + 2 * Jts.GRID_M;
    }

    private static List<Polygon> folded(StripEdges edges, int[] vertices, double leftM, double rightM) {
        List<Geometry> quads = new ArrayList<>();
        for (int v = 1; v < vertices.length; v++) {
            Coordinate[] ring = {
                edges.corner(vertices[v - 1], leftM),
                edges.corner(vertices[v], leftM),
                edges.corner(vertices[v], rightM),
                edges.corner(vertices[v - 1], rightM),
                edges.corner(vertices[v - 1], leftM)
            };
            Geometry quad = GeometryFixer.fix(Jts.FACTORY.createPolygon(ring));
            if (quad.getArea() > 0) {
                quads.add(Jts.areal(quad));
            }
        }
        List<Polygon> out = new ArrayList<>(Jts.polygons(Unions.union(quads, 1)));
        out.sort((a, b) -> Arrays.compare(key(a), key(b)));
        return out;
    }

    private static double[] key(Polygon polygon) {
        Coordinate c = polygon.getInteriorPoint().getCoordinate();
        return new double[] {-polygon.getArea(), c.x, c.y};
    }

    private static void add(List<Coordinate> ring, Coordinate c) {
        if (ring.isEmpty() || !ring.get(ring.size() - 1).equals2D(c)) {
            ring.add(c);
        }
    }
}
