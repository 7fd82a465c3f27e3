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
 * How often the lines of a shape cross or lie on each other. Repairing takes time and memory by that number, and a line
 * that runs over itself again and again has one by the square of its corners: minutes for a file of 200 kB.
 */
final class SelfIntersections implements SegmentIntersector {
    /**
     * A drawn outline crosses itself a few times, one that was driven some hundred times where the machine stood. A
     * scribble of 200 corners, below this, was read and repaired in 1.6 s by the clock, cold, on a busy machine.
     */
    static final int MOST = 10_000;

    private final LineIntersector intersector = new RobustLineIntersector();
    private int found;

    private SelfIntersections() {}

    /** Refuses a feature with a shape whose lines cross more than {@link #MOST} times. */
    static void requireFew(MapFeatures source, MapFeature feature) {
        for (MapShape shape : feature.shapes()) {
            if (count(shape) > MOST) {
                throw source.fault(feature, "lines that cross or lie on each other more than " + MOST + " times")
                        .expected("an outline or a line drawn once")
                        .hint("draw it again, or thin out its points where the machine stood");
            }
        }
    }

    /** Crossings, at most {@link #MOST} and one. Parts of a feature may lie side by side as often as they like. */
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
        return found > MOST;
    }
}
