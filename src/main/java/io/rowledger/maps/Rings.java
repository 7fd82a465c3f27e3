package io.rowledger.maps;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.algorithm.RayCrossingCounter;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * Assembles polygons with holes from rings in any order. In a shapefile, outlines run clockwise and holes
 * counterclockwise. A counterclockwise ring outside every outline counts as an outline too.
 */
final class Rings {
    private Rings() {}

    /** One outline and its holes. */
    private static final class Outline {
        final double[] ring;
        final Envelope box;
        final double areaDeg2;
        final List<double[]> rings = new ArrayList<>();

        Outline(double[] ring) {
            this.ring = ring;
            this.box = box(ring);
            this.areaDeg2 = Math.abs(clockwiseTwiceArea(ring));
            rings.add(ring);
        }
    }

    static List<MapShape> polygons(List<double[]> rings) {
        List<Outline> outlines = new ArrayList<>();
        List<double[]> others = new ArrayList<>();
        for (double[] ring : rings) {
            if (clockwiseTwiceArea(ring) > 0) {
                outlines.add(new Outline(ring));
            } else {
                others.add(ring);
            }
        }
        STRtree index = new STRtree();
        outlines.forEach(outline -> index.insert(outline.box, outline));
        List<Outline> all = new ArrayList<>(outlines);
        for (double[] ring : others) {
            Outline around = outlines.isEmpty() ? null : smallestAround(ring, index);
            if (around == null) {
                all.add(new Outline(ring));
            } else {
                around.rings.add(ring);
            }
        }
        return all.stream()
                .map(outline -> new MapShape(MapShape.Kind.POLYGON, outline.rings))
                .toList();
    }

    private static @Nullable Outline smallestAround(double[] ring, STRtree index) {
        Envelope box = box(ring);
        Outline best = null;
        for (Object found : index.query(box)) {
            Outline outline = (Outline) found;
            boolean smaller = best == null || outline.areaDeg2 < best.areaDeg2;
            if (smaller && outline.box.covers(box) && holds(outline.ring, ring)) {
                best = outline;
            }
        }
        return best;
    }

    /** Decided by the first corner off the outline itself. */
    private static boolean holds(double[] outline, double[] ring) {
        for (int i = 0; i < ring.length; i += 2) {
            int where = locate(outline, ring[i], ring[i + 1]);
            if (where != Location.BOUNDARY) {
                return where == Location.INTERIOR;
            }
        }
        return true;
    }

    private static int locate(double[] outline, double x, double y) {
        RayCrossingCounter counter = new RayCrossingCounter(new Coordinate(x, y));
        for (int i = 2; i < outline.length; i += 2) {
            counter.countSegment(
                    new Coordinate(outline[i - 2], outline[i - 1]), new Coordinate(outline[i], outline[i + 1]));
        }
        return counter.getLocation();
    }

    private static Envelope box(double[] ring) {
        Envelope box = new Envelope();
        for (int i = 0; i < ring.length; i += 2) {
            box.expandToInclude(ring[i], ring[i + 1]);
        }
        return box;
    }

    /** Shoelace about the first corner, positive clockwise. */
    private static double clockwiseTwiceArea(double[] ring) {
        double sum = 0;
        for (int i = 2; i + 3 < ring.length; i += 2) {
            double x0 = ring[i] - ring[0];
            double y0 = ring[i + 1] - ring[1];
            double x1 = ring[i + 2] - ring[0];
            double y1 = ring[i + 3] - ring[1];
            sum += x1 * y0 - x0 * y1;
        }
        return sum;
    }
}
