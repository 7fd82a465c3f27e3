package io.rowledger.coverage.grid;

import io.rowledger.coverage.grid.StripDeposit.Frame;
import io.rowledger.geo.Jts;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/** Accumulates the area of polygons by grid cell, m². */
public final class GroundDeposit {
    private GroundDeposit() {}

    /** Adds the area of a geometry that lies within the grid, m². */
    public static void add(Geometry ground, Frame frame, AreaAccumulator grid) {
        add(ground, 1, frame, grid);
    }

    /** Adds an amount per m², spread evenly over a geometry that lies within the grid. */
    public static void add(Geometry ground, double perM2, Frame frame, AreaAccumulator grid) {
        double cellM2 = frame.cellM() * frame.cellM() * perM2;
        for (Polygon polygon : Jts.polygons(ground)) {
            boolean shell = true;
            for (LineString ring : Jts.rings(polygon)) {
                boolean clockwise = Jts.clockwiseTwiceArea(ring) > 0;
                addRing(ring, clockwise == shell ? cellM2 : -cellM2, frame, grid);
                shell = false;
            }
        }
    }

    private static void addRing(LineString ring, double weight, Frame frame, AreaAccumulator grid) {
        CoordinateSequence c = ring.getCoordinateSequence();
        double perCell = 1 / frame.cellM();
        for (int i = 1; i < c.size(); i++) {
            grid.edge(
                    (c.getX(i - 1) - frame.east0M()) * perCell,
                    (c.getY(i - 1) - frame.north0M()) * perCell,
                    (c.getX(i) - frame.east0M()) * perCell,
                    (c.getY(i) - frame.north0M()) * perCell,
                    weight);
        }
    }
}
