package io.rowledger.geo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/** Overlays of polygons on the grid give polygons only, also where parts of the result collapse to lines and points. */
class OverlayTest {
    private static final Polygon BOX = polygon(-1, -1, -1, 1, 1, 1, 1, -1);

    /** A polygon of (east, north) pairs, m. */
    private static Polygon polygon(double... xy) {
        Coordinate[] ring = new Coordinate[xy.length / 2 + 1];
        for (int i = 0; i < xy.length / 2; i++) {
            ring[i] = new Coordinate(Jts.onGrid(xy[2 * i]), Jts.onGrid(xy[2 * i + 1]));
        }
        ring[ring.length - 1] = ring[0].copy();
        return Jts.FACTORY.createPolygon(ring);
    }

    @Test
    void polygons_that_share_an_area_and_a_line_meet_in_the_area() {
        // An L and a box above its foot: they share the square (0, 1) to (1, 2) and the line (1, 1) to (2, 1).
        Polygon ell = polygon(0, 0, 0, 2, 1, 2, 1, 1, 2, 1, 2, 0);
        Polygon box = polygon(0, 1, 0, 2, 2, 2, 2, 1);
        Geometry both = Jts.intersection(ell, box);
        assertEquals(2, both.getDimension());
        assertEquals(1, Jts.difference(both, BOX).getArea(), 1e-9);
        assertEquals(1, both.getArea(), 1e-9);
    }

    @Test
    void polygons_that_touch_in_a_line_have_nothing_in_common() {
        assertTrue(Jts.intersection(BOX, polygon(1, -1, 1, 1, 2, 1, 2, -1)).isEmpty());
    }

    /** 1,600 squares of 0.25 m², a strip of 10 m by 51 m over nine of their rows and half of two more: 9 · 10 + 2 · 5 m². */
    @Test
    void of_many_parts_those_away_from_the_other_polygon_change_nothing() {
        List<Polygon> squares = new ArrayList<>();
        for (int east = 0; east < 40; east++) {
            for (int north = 0; north < 40; north++) {
                squares.add(polygon(east, north, east, north + 0.5, east + 0.5, north + 0.5, east + 0.5, north));
            }
        }
        Geometry parts = Jts.collect(squares);
        Polygon strip = polygon(-1, 10.25, -1, 20.25, 50, 20.25, 50, 10.25);
        assertEquals(100, Jts.intersection(strip, parts).getArea(), 1e-9);
        assertEquals(100, Jts.intersection(parts, strip).getArea(), 1e-9);
        assertEquals(410, Jts.difference(strip, parts).getArea(), 1e-9);
        assertEquals(300, Jts.difference(parts, strip).getArea(), 1e-9);
        assertTrue(
                Jts.intersection(parts, polygon(-9, -9, -9, -8, -8, -8, -8, -9)).isEmpty());
    }

    /** Triangles of a few grid widths: rounding to the grid collapses parts of most results. */
    @Test
    void what_an_overlay_returns_can_be_overlaid_again() {
        Random random = new Random(11);
        int overlays = 0;
        for (int i = 0; i < 20_000; i++) {
            Polygon a = triangle(random);
            Polygon b = triangle(random);
            if (!a.isValid() || !b.isValid()) {
                continue;
            }
            overlays++;
            for (Geometry result : new Geometry[] {Jts.difference(a, b), Jts.intersection(a, b)}) {
                // Snapping moves an edge by half a grid width at most.
                double toleranceM2 = result.getLength() * Jts.GRID_M / 2 + 1e-12;
                assertEquals(result.getArea(), Jts.intersection(result, BOX).getArea(), toleranceM2);
                assertEquals(0, Jts.difference(result, BOX).getArea(), 1e-12);
            }
        }
        assertTrue(overlays > 10_000, overlays + " pairs");
    }

    private static Polygon triangle(Random random) {
        double[] xy = new double[6];
        for (int i = 0; i < xy.length; i++) {
            xy[i] = random.nextInt(8) * Jts.GRID_M;
        }
        return polygon(xy);
    }
}
