package io.rowledger.page;

import io.rowledger.geo.Jts;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/** Corners of outlines, one ring after the other, m east and north; they go into the columns because there they take a fifth. */
final class Outlines {
    /** Outlines are for the eye: a centimeter. */
    private static final double QUANTUM_M = 0.01;

    private final List<Coordinate> corners = new ArrayList<>();

    /** Appends the rings of a geometry without their closing corners; returns the number of corners of each, none for null. */
    List<Integer> add(@Nullable Geometry geometry) {
        List<Integer> counts = new ArrayList<>();
        if (geometry != null) {
            for (Polygon polygon : Jts.polygons(geometry)) {
                for (LineString ring : Jts.rings(polygon)) {
                    Coordinate[] closed = ring.getCoordinates();
                    corners.addAll(List.of(closed).subList(0, closed.length - 1));
                    counts.add(closed.length - 1);
                }
            }
        }
        return counts;
    }

    /** Appends the corners to the columns. */
    void addTo(ColumnBlock block) {
        block.add("outline.east", corners.size(), QUANTUM_M, 1, i -> corners.get(i).x);
        block.add("outline.north", corners.size(), QUANTUM_M, 1, i -> corners.get(i).y);
    }
}
