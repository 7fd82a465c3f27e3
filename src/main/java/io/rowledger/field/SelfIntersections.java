package io.rowledger.field;

import io.rowledger.maps.MapFeature;
import io.rowledger.maps.MapFeatures;
import io.rowledger.maps.MapShape;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.LineIntersector;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.noding.BasicSegmentString;
import org.locationtech.jts.noding.MCIndexNoder;
import org.locationtech.jts.noding.SegmentIntersector;
import org.locationtech.jts.noding.SegmentString;

/**
 * Counts self-intersections of a shape. Repairing a shape takes time and memory proportional to that number, and a line
 * drawn over itself again and again has as many as the square of its corners: minutes for a file of 200 kB.
 */
final class SelfIntersections implements SegmentIntersector {
    /**
     * Largest number of self-intersections. A drawn outline has a few, a driven one some hundred where the machine stood;
     * repairing a scribble of 200 corners, below this limit, took 1.6 s.
     */
    static final int MAX_CROSSINGS = 10_000;

    private final LineIntersector intersector = new RobustLineIntersector();
    private int found;

    private SelfIntersections() {}

    /** Refuses a feature with a shape whose lines cross more than {@link #MAX_CROSSINGS} times. */
    static void requireFew(MapFeatures source, MapFeature feature) {
        for (MapShape shape : feature.shapes()) {
            if (count(shape) > MAX_CROSSINGS) {
                throw source.fault(
                                feature, "lines that cross or lie on each other more than " + MAX_CROSSINGS + " times")
                        .expected("an outline or a line drawn once")
                        .hint("draw it again, or thin out its points where the machine stood");
            }
        }
    }

    /** Number of self-intersections, at most {@link #MAX_CROSSINGS} + 1. Several parts of a feature may touch freely. */
    static int count(MapShape shape) {
        if (shape.kind() == MapShape.Kind.POINT) {
            return 0;
        }
        List<SegmentString> lines = new ArrayList<>(
                shape.parts().stream().map(SelfIntersections::line).toList());
        SelfIntersections crossings = new SelfIntersections();
        new MCIndexNoder(crossings).computeNodes(lines);
        return crossings.found;
    }

    private static SegmentString line(double[] lonLat) {
        Coordinate[] corners = new Coordinate[lonLat.length / 2];
        for (int i = 0; i < corners.length; i++) {
            corners[i] = new Coordinate(lonLat[2 * i], lonLat[2 * i + 1]);
        }
        return new BasicSegmentString(corners, null);
    }

    @Override
    public void processIntersections(SegmentString a, int i, SegmentString b, int j) {
        if (isDone() || (a == b && Math.abs(i - j) <= 1)) {
            return;
        }
        Coordinate a0 = a.getCoordinate(i);
        Coordinate a1 = a.getCoordinate(i + 1);
        Coordinate b0 = b.getCoordinate(j);
        Coordinate b1 = b.getCoordinate(j + 1);
        if (a0.equals2D(a1) || b0.equals2D(b1)) {
            return;
        }
        intersector.computeIntersection(a0, a1, b0, b1);
        found += intersector.hasIntersection() ? 1 : 0;
    }

    @Override
    public boolean isDone() {
        return found > MAX_CROSSINGS;
    }
}
