package io.rowledger.report.sections;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.coverage.CoverageDefect;
import io.rowledger.coverage.CoverageDefect.Cause;
import io.rowledger.geo.Jts;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;

/** Where a driver finds the ends of a long place. */
class PlaceEndsTest {
    private static final int CORNERS = 56;

    /** A slim ellipse, 60 m long and 0.6 m wide, in so many corners that are off by up to 15 mm, turned by an angle. */
    private static Polygon slim(double angleRad, SplittableRandom random) {
        Coordinate[] ring = new Coordinate[CORNERS + 1];
        for (int i = 0; i < CORNERS; i++) {
            double t = 2 * Math.PI * i / CORNERS;
            double across = 0.3 * Math.cos(t) + random.nextDouble(-0.015, 0.015);
            double along = 30 * Math.sin(t);
            ring[i] = new Coordinate(
                    across * Math.cos(angleRad) - along * Math.sin(angleRad),
                    across * Math.sin(angleRad) + along * Math.cos(angleRad));
        }
        ring[CORNERS] = ring[0].copy();
        return Jts.FACTORY.createPolygon(ring);
    }

    /** The hull of such a polygon is made from all of its corners at some angles, and was then sorted in place. */
    @Test
    void the_ends_are_found_without_touching_the_place() {
        SplittableRandom random = new SplittableRandom(5);
        for (int degrees = 0; degrees < 180; degrees++) {
            Polygon slim = slim(Math.toRadians(degrees), random);
            Coordinate[] before = slim.copy().getCoordinates();
            CoverageDefect place =
                    new CoverageDefect(1, slim, slim.getArea(), 0, 0, List.of(), List.of(), Cause.GAP_BETWEEN_PASSES);
            PlaceEnds ends = PlaceEnds.of(place, List.of());
            assertEquals(60, ends.lengthM(), 0.1);
            assertTrue(ends.isLong());
            assertArrayEquals(before, slim.getCoordinates());
        }
    }
}
