package io.rowledger.coverage.grid;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageOptions;
import io.rowledger.coverage.Drive;
import io.rowledger.coverage.grid.StripDeposit.Frame;
import io.rowledger.rate.Delivery;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** The grid's kernel against polygon overlay cell by cell, and its totals against the log. */
class ReceivedGridTest {
    /** JTS with plain doubles, so that the expected areas are not on the program's own grid. */
    private static final GeometryFactory PLAIN = new GeometryFactory();

    private static final int N = 16;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void cell_areas_of_random_quadrangles_equal_the_polygon_overlay(long seed) {
        Random random = new Random(seed);
        double[][] expected = new double[N][N];
        AreaAccumulator grid = new AreaAccumulator(N, N);
        for (int q = 0; q < 60; q++) {
            // Corners at rising angles around a point: simple, convex or not; clockwise.
            double x = 4 + 8 * random.nextDouble();
            double y = 4 + 8 * random.nextDouble();
            Coordinate[] ring = new Coordinate[5];
            for (int i = 0; i < 4; i++) {
                double angle = -(i + 0.9 * random.nextDouble()) * Math.PI / 2;
                double radius = 0.05 + 3.9 * random.nextDouble() * random.nextDouble();
                ring[i] = new Coordinate(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
            }
            if (q % 5 == 0) {
                ring[0].y = Math.rint(ring[0].y);
                ring[1].x = Math.rint(ring[1].x);
            }
            ring[4] = ring[0].copy();
            double weight = random.nextGaussian();
            Geometry polygon = PLAIN.createPolygon(ring);
            if (!polygon.isValid()) {
                continue;
            }
            double sign = org.locationtech.jts.algorithm.Area.ofRingSigned(ring) > 0 ? 1 : -1;
            for (int i = 0; i < 4; i++) {
                grid.edge(ring[i].x, ring[i].y, ring[i + 1].x, ring[i + 1].y, weight);
            }
            addTo(expected, polygon, sign * weight);
        }
        double[] line = new double[N];
        for (int row = 0; row < N; row++) {
            grid.readRow(row, line);
            assertArrayEquals(expected[row], line, 1e-9);
        }
    }

    private static void addTo(double[][] cells, Geometry polygon, double weight) {
        Envelope box = polygon.getEnvelopeInternal();
        for (int row = (int) box.getMinY(); row <= Math.min(N - 1, (int) box.getMaxY()); row++) {
            for (int col = (int) box.getMinX(); col <= Math.min(N - 1, (int) box.getMaxX()); col++) {
                Geometry cell = PLAIN.toGeometry(new Envelope(col, col + 1, row, row + 1));
                cells[row][col] += weight * cell.intersection(polygon).getArea();
            }
        }
    }

    /** The example of the package's documentation. */
    @Test
    void a_strip_between_grid_lines_gives_its_cells_their_share_by_area() {
        ReceivedGrid grid = new Drive(-0.5, 0.5)
                .lift(0.75, 0, 0)
                .lower()
                .rate(0.02)
                .ahead(2)
                .coverage()
                .grid();
        int first = (int) Math.round((0 - grid.north0M()) / 0.5) * grid.cols() + (int) Math.round(-grid.east0M() / 0.5);
        for (int row = 0; row < 4; row++) {
            assertEquals(0.0025, grid.volumeL()[0][first + row * grid.cols()], 1e-9);
            assertEquals(0.005, grid.volumeL()[0][first + row * grid.cols() + 1], 1e-9);
        }
    }

    @Test
    void strips_of_a_bent_pass_put_their_volume_where_polygon_overlay_does() {
        Drive d = new Drive(-1.5, -0.7, 0.1, 1.3)
                .lift(3, 2, 0.1)
                .lower()
                .rate(0.01)
                .arc(4, 0.5)
                .rows(false, 2)
                .rate(0.03)
                .arc(4, -0.9)
                .rows(true, 2)
                .arc(3, 0.2);
        Poses poses = d.poses();
        Delivery delivery = d.delivery();
        Strips strips = d.strips(poses);
        double[][] expected = new double[N][N];
        for (int k = 0; k < poses.steps(); k++) {
            for (int r = 0; r < 3; r++) {
                if (poses.pass(k) > 0) {
                    Geometry quad = quad(poses, k, strips.leftM(r), strips.rightM(r));
                    addTo(expected, quad, delivery.flowLPerS(0, r, k) * poses.durationS(k) / quad.getArea());
                }
            }
        }
        AreaAccumulator grid = new AreaAccumulator(N, N);
        new StripDeposit(strips, new Frame(0, 0, 1), grid)
                .deposit(0, poses.steps(), (r, k, areaM2) -> delivery.flowLPerS(0, r, k) * poses.durationS(k));
        double[] line = new double[N];
        for (int row = 0; row < N; row++) {
            grid.readRow(row, line);
            assertArrayEquals(expected[row], line, 1e-9);
        }
    }

    private static Geometry quad(Poses poses, int k, double left, double right) {
        return PLAIN.createPolygon(new Coordinate[] {
            new Coordinate(poses.eastM(k, left), poses.northM(k, left)),
            new Coordinate(poses.eastM(k + 1, left), poses.northM(k + 1, left)),
            new Coordinate(poses.eastM(k + 1, right), poses.northM(k + 1, right)),
            new Coordinate(poses.eastM(k, right), poses.northM(k, right)),
            new Coordinate(poses.eastM(k, left), poses.northM(k, left))
        });
    }

    @Test
    void a_tight_turn_keeps_every_litre_and_no_cell_goes_below_nothing() {
        // The pivot runs through a band, stands still for a while, and moves along the bar.
        Drive d = new Drive(7, 0.762).lift(0, 0, 0.2).lower().ahead(12);
        d.arc(0.9, 1.4).arc(2.2, 2.0).arc(0, 0.8).arc(0.4, -1.1).ahead(9);
        Poses poses = d.poses();
        Delivery delivery = d.delivery();
        double litres = 0;
        for (int k = 0; k < poses.steps(); k++) {
            for (int r = 0; r < 7; r++) {
                litres += poses.pass(k) == 0 ? 0 : delivery.flowLPerS(0, r, k) * poses.durationS(k);
            }
        }
        Coverage c = d.coverage();
        assertEquals(litres, c.received().get(0).logVolumeL(), 1e-9);
        assertEquals(litres, c.received().get(0).gridVolumeL(), 1e-6 * litres);
        for (float v : c.grid().volumeL()[0]) {
            assertTrue(v >= 0, "a cell with " + v + " L");
        }
        double covered = 0;
        for (float a : c.grid().coveredM2()) {
            assertTrue(a >= 0 && a <= 0.25f + 1e-6f, "a cell with " + a + " m² covered");
            covered += a;
        }
        assertEquals(c.coveredAreaM2(), covered, 1e-4);
    }

    @Test
    void statistics_of_two_halves_with_different_rates_follow_by_hand() {
        // 100 m at target, 100 m at 0.7 of it; cells are cut by the border between them.
        Drive d = new Drive(6, 1.0).lift(0, 0, 0).lower().ahead(100).rate(0.014).ahead(100);
        ReceivedStatistics s = d.coverage().received().get(0);
        assertEquals(0.017, s.meanRateLPerM2(), 1e-9);
        // Two equal halves at 1 and 0.7: standard deviation 0.15 about a mean of 0.85.
        assertEquals(100 * 0.15 / 0.85, s.cvPct(), 0.05);
        assertEquals(50, s.within5Pct(), 0.3);
        assertEquals(50, s.within20Pct(), 0.3);
        assertEquals(50, s.underPct(), 0.3);
        assertEquals(0, s.overPct(), 1e-9);
        assertEquals(600, s.histogramM2()[20], 4);
        assertEquals(600, s.histogramM2()[14], 4);
    }

    @Test
    void a_target_that_changes_is_judged_place_by_place() {
        Drive d = new Drive(6, 1.0)
                .lift(0, 0, 0)
                .lower()
                .ahead(100)
                .target(0.01)
                .rate(0.01)
                .ahead(100);
        ReceivedStatistics s = d.coverage().received().get(0);
        assertEquals(100, s.within5Pct(), 1e-6);
        assertEquals(1200, s.histogramM2()[20], 1e-3);
    }

    @Test
    void without_a_target_nothing_is_judged() {
        Coverage c = new Drive(6, 1.0)
                .target(Double.NaN)
                .lift(0, 0, 0)
                .lower()
                .ahead(10)
                .coverage();
        assertTrue(Double.isNaN(c.received().get(0).within5Pct()));
        assertTrue(Float.isNaN(c.grid().targetL()[0][0]));
        assertEquals(0.02, c.received().get(0).meanRateLPerM2(), 1e-9);
    }

    @Test
    void too_many_cells_make_the_cell_larger() {
        Drive d = new Drive(6, 1.0).lift(0, 0, 0).lower().ahead(100);
        Coverage c = d.coverage(null, new CoverageOptions(0.5, 0.005, 1, 1000, 2, 0.15));
        assertEquals(1.0, c.grid().cellM());
        assertEquals(12, c.received().get(0).gridVolumeL(), 1e-5);
    }
}
