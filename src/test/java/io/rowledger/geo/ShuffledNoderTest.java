package io.rowledger.geo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;

/** A long outline that crosses the edge of the work at nearly every corner. */
class ShuffledNoderTest {
    private static final double WIDTH_M = 400;
    private static final double HEIGHT_M = 100;

    /** A rectangle whose lower edge goes up and down by 3 cm with every corner. */
    private static Polygon wavy(int corners) {
        List<Coordinate> ring = new ArrayList<>();
        for (int i = 0; i <= corners; i++) {
            ring.add(new Coordinate(Jts.onGrid(WIDTH_M * i / corners), i % 2 == 0 ? -0.03 : 0.03));
        }
        ring.add(new Coordinate(WIDTH_M, HEIGHT_M));
        ring.add(new Coordinate(0, HEIGHT_M));
        ring.add(ring.get(0).copy());
        return Jts.FACTORY.createPolygon(ring.toArray(new Coordinate[0]));
    }

    private static Polygon straight() {
        return Jts.FACTORY.createPolygon(new Coordinate[] {
            new Coordinate(0, 0),
            new Coordinate(WIDTH_M, 0),
            new Coordinate(WIDTH_M, HEIGHT_M),
            new Coordinate(0, HEIGHT_M),
            new Coordinate(0, 0)
        });
    }

    @ParameterizedTest
    @ValueSource(ints = {OverlayNG.INTERSECTION, OverlayNG.UNION, OverlayNG.DIFFERENCE, OverlayNG.SYMDIFFERENCE})
    void the_order_of_lines_changes_no_corner(int what) {
        Geometry plain = OverlayNG.overlay(wavy(3_000), straight(), what, Jts.GRID);
        Geometry shuffled = OverlayNG.overlay(wavy(3_000), straight(), what, Jts.GRID, new ShuffledNoder(Jts.GRID));
        assertTrue(plain.getNumPoints() > 3_000, plain.getNumPoints() + " corners");
        assertTrue(plain.norm().equalsExact(shuffled.norm()));
    }

    @Test
    void half_the_waves_lie_above_the_line() {
        // Each wave above the line is a triangle 3 cm high; all of them stand side by side on half of the width.
        double wavesM2 = 0.5 * (WIDTH_M / 2) * 0.03;
        Geometry above =
                OverlayNG.overlay(straight(), wavy(4_000), OverlayNG.DIFFERENCE, Jts.GRID, new ShuffledNoder(Jts.GRID));
        // Corners lie within half a grid width.
        assertEquals(wavesM2, above.getArea(), WIDTH_M * Jts.GRID_M / 2);
    }
}
