package io.rowledger.coverage.sections;

import io.rowledger.geo.Jts;
import io.rowledger.track.Poses;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/**
 * Intervals of the bar's line that lie over given polygons: the polygons' edges are intersected with the line, and the
 * intervals between entering and leaving merged.
 */
final class BarCut {
    /** Closed rings one after the other, east and north alternating. */
    private final double[] xy;
    /** Start of each ring in {@link #xy}, and the end. */
    private final int[] ring;
    /** Start of each polygon's rings in {@link #ring}, and the end. */
    private final int[] polygon;

    private double[] cuts = new double[16];
    private double[] from = new double[16];
    private double[] to = new double[16];
    private int parts;

    BarCut(List<Polygon> ground) {
        List<LineString> rings =
                ground.stream().flatMap(p -> Jts.rings(p).stream()).toList();
        polygon = new int[ground.size() + 1];
        for (int i = 0; i < ground.size(); i++) {
            polygon[i + 1] = polygon[i] + 1 + ground.get(i).getNumInteriorRing();
        }
        ring = new int[rings.size() + 1];
        xy = new double[2 * rings.stream().mapToInt(LineString::getNumPoints).sum()];
        int n = 0;
        for (int i = 0; i < rings.size(); i++) {
            CoordinateSequence c = rings.get(i).getCoordinateSequence();
            for (int v = 0; v < c.size(); v++) {
                xy[n++] = c.getX(v);
                xy[n++] = c.getY(v);
            }
            ring[i + 1] = n;
        }
    }

    /** Intersects the polygons with the bar's line in the middle of step k; returns false if they don't meet. */
    boolean at(Poses poses, int k) {
        double e = (poses.eastM(k, 0) + poses.eastM(k + 1, 0)) / 2;
        double n = (poses.northM(k, 0) + poses.northM(k + 1, 0)) / 2;
        double re = (poses.eastM(k, 1) + poses.eastM(k + 1, 1)) / 2 - e;
        double rn = (poses.northM(k, 1) + poses.northM(k + 1, 1)) / 2 - n;
        double length2 = re * re + rn * rn;
        parts = 0;
        for (int p = 0; p + 1 < polygon.length; p++) {
            int found = 0;
            for (int i = polygon[p]; i < polygon[p + 1]; i++) {
                found = cutRing(ring[i], ring[i + 1], new double[] {e, n, re / length2, rn / length2}, found);
            }
            Arrays.sort(cuts, 0, found);
            for (int c = 0; c + 1 < found; c += 2) {
                add(cuts[c], cuts[c + 1]);
            }
        }
        join();
        return parts > 0;
    }

    /**
     * Appends the intersections of a ring with the line through (e, n) along (re, rn), m right of the bar's center;
     * returns their number.
     */
    private int cutRing(int begin, int end, double[] line, int found) {
        double x0 = xy[begin] - line[0];
        double y0 = xy[begin + 1] - line[1];
        // Ahead of the line: the component along the bar's heading, which is its right vector turned to the left.
        double ahead0 = y0 * line[2] - x0 * line[3];
        for (int i = begin + 2; i < end; i += 2) {
            double x1 = xy[i] - line[0];
            double y1 = xy[i + 1] - line[1];
            double ahead1 = y1 * line[2] - x1 * line[3];
            if (ahead0 >= 0 != ahead1 >= 0) {
                double t = ahead0 / (ahead0 - ahead1);
                if (found == cuts.length) {
                    cuts = Arrays.copyOf(cuts, 2 * found);
                }
                cuts[found++] = (x0 + t * (x1 - x0)) * line[2] + (y0 + t * (y1 - y0)) * line[3];
            }
            x0 = x1;
            y0 = y1;
            ahead0 = ahead1;
        }
        return found;
    }

    /** Inserts an interval, ordered by start. */
    private void add(double start, double end) {
        if (parts == from.length) {
            from = Arrays.copyOf(from, 2 * parts);
            to = Arrays.copyOf(to, 2 * parts);
        }
        int at = parts++;
        while (at > 0 && from[at - 1] > start) {
            from[at] = from[at - 1];
            to[at] = to[at - 1];
            at--;
        }
        from[at] = start;
        to[at] = end;
    }

    private void join() {
        int kept = 0;
        for (int i = 0; i < parts; i++) {
            if (kept > 0 && from[i] <= to[kept - 1]) {
                to[kept - 1] = Math.max(to[kept - 1], to[i]);
            } else {
                from[kept] = from[i];
                to[kept++] = to[i];
            }
        }
        parts = kept;
    }

    /** Returns the length of [left, right] of the bar over the polygons, m. */
    double lengthM(double leftM, double rightM) {
        double sum = 0;
        for (int i = 0; i < parts && from[i] < rightM; i++) {
            sum += Math.max(0, Math.min(rightM, to[i]) - Math.max(leftM, from[i]));
        }
        return sum;
    }
}
