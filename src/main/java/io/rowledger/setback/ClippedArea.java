package io.rowledger.setback;

import io.rowledger.geo.Jts;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/**
 * Area of a quadrangle's part inside a fixed area, on primitives: every ring of the area is clipped by triangles
 * (Sutherland and Hodgman, "Reentrant polygon clipping", Comm. ACM 17 (1974) 32-42). If a clipped ring falls into
 * parts, the method connects them along the triangle's edge in both directions, which adds no area.
 *
 * <p>A quadrangle is the sum of the two signed triangles on a diagonal, so concave and reversed ones need no special
 * case.
 */
final class ClippedArea {
    private final double originE;
    private final double originN;
    private final List<double[]> rings = new ArrayList<>();
    private final List<Double> signs = new ArrayList<>();
    private double[] from = new double[64];
    private double[] to = new double[64];
    private double momentE;
    private double momentN;

    /** Prepares an area in the job's plane. */
    ClippedArea(Geometry area) {
        this.originE = area.getEnvelopeInternal().getMinX();
        this.originN = area.getEnvelopeInternal().getMinY();
        for (Polygon polygon : Jts.polygons(area)) {
            boolean shell = true;
            for (LineString ring : Jts.rings(polygon)) {
                CoordinateSequence c = ring.getCoordinateSequence();
                double[] xy = new double[2 * (c.size() - 1)];
                for (int i = 0; i < c.size() - 1; i++) {
                    xy[2 * i] = c.getX(i) - originE;
                    xy[2 * i + 1] = c.getY(i) - originN;
                }
                boolean clockwise = Jts.clockwiseTwiceArea(ring) > 0;
                rings.add(xy);
                signs.add(clockwise == shell ? -1.0 : 1.0);
                shell = false;
            }
        }
    }

    /**
     * Returns the signed area of the part inside, m², positive for corners in clockwise order.
     *
     * @param e east of the four corners, m
     * @param n north of the four corners, m
     */
    double inside(double[] e, double[] n) {
        momentE = 0;
        momentN = 0;
        return triangle(e, n, 0, 1, 2) + triangle(e, n, 0, 2, 3);
    }

    /** Returns the east of the centroid of the last part inside, m. */
    double centerEastM(double areaM2) {
        return originE + momentE / areaM2;
    }

    /** Returns the north of the centroid of the last part inside, m. */
    double centerNorthM(double areaM2) {
        return originN + momentN / areaM2;
    }

    /** Returns true if the point lies in the area. */
    boolean holds(double eastM, double northM) {
        double x = eastM - originE;
        double y = northM - originN;
        boolean in = false;
        for (double[] r : rings) {
            for (int i = 0, j = r.length - 2; i < r.length; j = i, i += 2) {
                if (r[i + 1] > y != r[j + 1] > y && x < r[i] + (y - r[i + 1]) / (r[j + 1] - r[i + 1]) * (r[j] - r[i])) {
                    in = !in;
                }
            }
        }
        return in;
    }

    private double triangle(double[] e, double[] n, int a, int b, int c) {
        double ax = e[a] - originE;
        double ay = n[a] - originN;
        double bx = e[b] - originE;
        double by = n[b] - originN;
        double cx = e[c] - originE;
        double cy = n[c] - originN;
        double twice = (cx - ax) * (by - ay) - (bx - ax) * (cy - ay);
        if (twice == 0) {
            return 0;
        }
        double sign = twice > 0 ? 1 : -1;
        double sum = 0;
        for (int i = 0; i < rings.size(); i++) {
            int size = load(rings.get(i));
            // The inside lies right of a clockwise edge.
            size = clip(size, ax, ay, bx, by, sign);
            size = clip(size, bx, by, cx, cy, sign);
            size = clip(size, cx, cy, ax, ay, sign);
            sum += area(size, sign * signs.get(i));
        }
        return sum;
    }

    private int load(double[] ring) {
        if (from.length < ring.length) {
            from = new double[ring.length];
        }
        System.arraycopy(ring, 0, from, 0, ring.length);
        return ring.length;
    }

    /** Keeps the part right of the line from p to q (left for a negative sign). */
    private int clip(int size, double px, double py, double qx, double qy, double sign) {
        if (to.length < 2 * size + 8) {
            to = new double[4 * size + 8];
        }
        int out = 0;
        double dx = (qx - px) * sign;
        double dy = (qy - py) * sign;
        for (int i = 0, j = size - 2; i < size; j = i, i += 2) {
            double sideI = (from[i] - px) * dy - (from[i + 1] - py) * dx;
            double sideJ = (from[j] - px) * dy - (from[j + 1] - py) * dx;
            if (sideI >= 0 != sideJ >= 0) {
                double t = sideJ / (sideJ - sideI);
                to[out++] = from[j] + t * (from[i] - from[j]);
                to[out++] = from[j + 1] + t * (from[i + 1] - from[j + 1]);
            }
            if (sideI >= 0) {
                to[out++] = from[i];
                to[out++] = from[i + 1];
            }
        }
        double[] swap = from;
        from = to;
        to = swap;
        return out;
    }

    /**
     * Returns the shoelace area of the clipped ring, positive counterclockwise, times the sign; adds to the moments.
     */
    private double area(int size, double sign) {
        double twice = 0;
        double sixE = 0;
        double sixN = 0;
        for (int i = 0, j = size - 2; i < size; j = i, i += 2) {
            double cross = from[j] * from[i + 1] - from[i] * from[j + 1];
            twice += cross;
            sixE += cross * (from[j] + from[i]);
            sixN += cross * (from[j + 1] + from[i + 1]);
        }
        momentE += sign * sixE / 6;
        momentN += sign * sixN / 6;
        return sign * twice / 2;
    }
}
