package io.rowledger.setback;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageOptions;
import io.rowledger.coverage.Coverages;
import io.rowledger.coverage.Drive;
import io.rowledger.coverage.strips.StripPolygon;
import io.rowledger.field.KeepOut;
import io.rowledger.field.KeepOutReader;
import io.rowledger.field.KeepOuts;
import io.rowledger.geo.Jts;
import io.rowledger.rate.Delivery;
import io.rowledger.rig.Product;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/** What lies within a setback, by hand, and the clipping kernel against JTS. */
@Tag("slow")
class SetbacksTest {
    private static final double RATE = 0.05;

    /** UAN 32-0-0 at 11.06 lb/gal = 1.325 280 kg/L: 0.424 090 kg N a liter (Mississippi State Univ. Ext. P1466). */
    private static final Product UAN =
            new Product("uan", "UAN 32-0-0", 1.325280, 0.32, 0, 0, Double.NaN, Double.NaN, 0);

    private static Geometry point(double e, double n) {
        return Jts.FACTORY.createPoint(new Coordinate(e, n));
    }

    private static Geometry ring(double... en) {
        Coordinate[] c = new Coordinate[en.length / 2 + 1];
        for (int i = 0; i < en.length / 2; i++) {
            c[i] = new Coordinate(en[2 * i], en[2 * i + 1]);
        }
        c[c.length - 1] = c[0].copy();
        return Jts.FACTORY.createPolygon(c);
    }

    private static KeepOut keepOut(Geometry place, double setbackM) {
        return new KeepOut(1, "Well", setbackM, place, KeepOutReader.within(place, setbackM), false);
    }

    private static Setback of(Drive drive, KeepOut keepOut) {
        Poses poses = drive.poses();
        Track track = drive.track(poses);
        Strips strips = drive.strips(poses);
        Delivery delivery = drive.delivery();
        Coverage coverage = Coverages.of(track, strips, delivery, null, CoverageOptions.defaults(1));
        return Setbacks.of(
                        new KeepOuts("keep-out.geojson", List.of(keepOut)),
                        strips,
                        delivery,
                        coverage.strips(),
                        List.of(UAN),
                        1)
                .places()
                .get(0);
    }

    /** Four rows of 1 m, northward along east = 0 from north −20 to 20. */
    private static Drive northward() {
        return new Drive(4, 1).rate(RATE).lift(0, -20, 0).lower().ahead(40);
    }

    /** Area a chord at distance h from the middle cuts off a circle of radius r (CRC Standard Mathematical Tables, "Circle"). */
    private static double segmentM2(double r, double h) {
        return r * r * Math.acos(h / r) - h * Math.sqrt(r * r - h * h);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 3, 10.668, 30.48, 150})
    void the_ground_around_a_point_is_a_disc(double radiusM) {
        double discM2 = Math.PI * radiusM * radiusM;
        assertEquals(discM2, KeepOutReader.within(point(12, -7), radiusM).getArea(), 0.0005 * discM2);
    }

    @Test
    void the_ground_along_a_bent_line_is_strips_and_discs() {
        // A line of two legs, 40 m and 30 m, at a right angle: both legs' strips less the square they share at the
        // inside
        // of the bend, two half discs at the ends, a quarter disc at the outside of the bend.
        double r = 5;
        Geometry line = Jts.FACTORY.createLineString(
                new Coordinate[] {new Coordinate(0, 0), new Coordinate(40, 0), new Coordinate(40, 30)});
        double expectedM2 = 2 * r * (40 + 30) - r * r + Math.PI * r * r * 1.25;
        assertEquals(expectedM2, KeepOutReader.within(line, r).getArea(), 0.0005 * expectedM2);
    }

    @Test
    void a_bar_driven_past_a_point_puts_the_segment_of_the_circle_inside() {
        Setback s = of(northward(), keepOut(point(5, 3), 4));
        double areaM2 = segmentM2(4, 3);
        assertEquals(RATE * areaM2, s.volumeL()[0], 0.001 * RATE * areaM2);
        assertEquals(areaM2, s.coveredM2(), 0.001 * areaM2);
        assertEquals(RATE * areaM2 * 0.424090, s.nitrogenKg()[0], 0.001 * RATE * areaM2 * 0.42409);
        assertEquals(3, s.closestM(), 1e-3);
        assertEquals(List.of(4), s.rows());
        assertEquals(List.of(1), s.passes());
        // The chord is 2 √(16 − 9) = 5.29 m long, from north 0.354 to 5.646; at 2 m/s from −20, in steps of half a
        // meter.
        assertEquals((20 + 3 - Math.sqrt(7)) / 2, s.firstS(), 0.25);
        assertEquals((20 + 3 + Math.sqrt(7)) / 2, s.lastS(), 0.25);
        Setback.Worst worst = s.worst();
        assertNotNull(worst);
        assertEquals(1, worst.pass());
        assertEquals(4, worst.row());
        assertEquals(3, worst.northM(), 0.5);
        assertTrue(worst.eastM() > 1 && worst.eastM() < 2, "outside the ground inside: " + worst);
    }

    @Test
    void a_bar_driven_over_a_point_puts_the_disc_less_two_segments_inside() {
        Setback s = of(northward(), keepOut(point(0, 1), 3));
        double areaM2 = Math.PI * 9 - 2 * segmentM2(3, 2);
        assertEquals(RATE * areaM2, s.volumeL()[0], 0.001 * RATE * areaM2);
        assertEquals(0, s.closestM());
        assertEquals(List.of(1, 2, 3, 4), s.rows());
    }

    @Test
    void a_second_visit_adds_volume_but_no_ground() {
        Drive twice = northward().lift(0, -20, 0).lower().ahead(40);
        Setback s = of(twice, keepOut(point(0, 1), 1.5));
        double areaM2 = Math.PI * 2.25;
        assertEquals(2 * RATE * areaM2, s.volumeL()[0], 0.002 * RATE * areaM2);
        assertEquals(areaM2, s.coveredM2(), 0.001 * areaM2);
        assertEquals(List.of(1, 2), s.passes());
    }

    @Test
    void the_inside_of_a_polygon_counts_even_with_a_setback_of_zero() {
        Setback s = of(northward(), keepOut(ring(0.5, -4, 9, -4, 9, 6, 0.5, 6), 0));
        assertEquals(RATE * 1.5 * 10, s.volumeL()[0], 1e-6);
        assertEquals(15, s.coveredM2(), 1e-6);
        assertEquals(0, s.closestM());
        assertEquals(List.of(3, 4), s.rows());
    }

    @Test
    void a_field_that_lies_inside_as_a_whole_gives_all_it_got() {
        Setback s = of(northward(), keepOut(ring(-50, -50, -50, 50, 50, 50, 50, -50), 3));
        assertEquals(RATE * 160, s.volumeL()[0], 1e-9);
        assertEquals(160, s.coveredM2(), 1e-6);
        assertEquals(0, s.closestM(), "inside a polygon is on it");
    }

    @Test
    void nothing_inside_still_says_how_near_the_bar_came() {
        Setback s = of(northward(), keepOut(point(7.5, 0), 5));
        assertEquals(0, s.totalVolumeL());
        assertEquals(0, s.totalNitrogenKg());
        assertEquals(0, s.coveredM2());
        assertEquals(5.5, s.closestM(), 1e-3);
        assertFalse(s.anythingInside());
        assertNull(s.worst());
        assertTrue(s.rows().isEmpty() && s.passes().isEmpty());
        assertTrue(Double.isNaN(s.firstS()));
    }

    @Test
    void rows_shut_off_inside_the_setback_apply_nothing_there() {
        // Rows 3 and 4 are off from north −5 to 5; the point lies 3 m right of the bar's middle, the disc reaches row
        // 3.
        Drive drive = new Drive(4, 1)
                .rate(RATE)
                .lift(0, -20, 0)
                .lower()
                .ahead(15)
                .rows(false, 3, 4)
                .ahead(10)
                .rows(true, 3, 4)
                .ahead(15);
        Setback s = of(drive, keepOut(point(3, 0), 2.9));
        assertFalse(s.anythingInside());
        assertEquals(0, s.volumeL()[0]);
        assertEquals(3, s.closestM(), 1e-3);
    }

    @Test
    void a_turn_inside_a_setback_gives_the_disc_its_share() {
        // A mounted bar 4 m wide turns about a point 10 m to its right: a quarter ring from 8 to 12 m. At constant flow
        // per row each row's volume is spread over its own arc; a disc around the centre holds whole rows up to 10 m.
        Drive drive = new Drive(4, 1).rate(RATE).lift(0, 0, 0).lower().arc(10 * Math.PI / 2, Math.PI / 2);
        Setback s = of(drive, keepOut(point(10, 0), 10));
        double volumeL = 2 * RATE * 1 * 10 * Math.PI / 2;
        assertEquals(volumeL, s.volumeL()[0], 0.002 * volumeL);
        assertEquals(Math.PI / 4 * (100 - 64), s.coveredM2(), 0.002 * 28.3);
        assertEquals(8, s.closestM(), 0.01);
        assertEquals(List.of(3, 4), s.rows().stream().filter(r -> r > 2).toList());
    }

    @Test
    void a_row_that_pivots_about_the_place_leaves_its_whole_volume_there() {
        // The bar turns about its own right end: row 4 goes hardly forward, and the setback holds all of rows 3 and 4.
        Drive drive = new Drive(4, 1).rate(RATE).lift(0, 0, 0).lower().arc(2 * Math.PI, Math.PI);
        Setback s = of(drive, keepOut(point(2, 0), 2));
        double flowedL = RATE * 2 * Math.PI;
        assertEquals(2 * flowedL, s.volumeL()[0], 0.01 * flowedL);
    }

    @Test
    void the_clipped_area_of_random_quads_agrees_with_jts() {
        Random random = new Random(4);
        for (int i = 0; i < 400; i++) {
            Geometry area = KeepOutReader.within(
                    Jts.FACTORY.createLineString(new Coordinate[] {
                        new Coordinate(random.nextDouble() * 20, random.nextDouble() * 20),
                        new Coordinate(random.nextDouble() * 20, random.nextDouble() * 20),
                        new Coordinate(random.nextDouble() * 20, random.nextDouble() * 20)
                    }),
                    1 + random.nextDouble() * 4);
            if (i % 2 == 0) {
                area = area.difference(point(10, 10).buffer(2.5));
            }
            double e0 = random.nextDouble() * 20;
            double n0 = random.nextDouble() * 20;
            double turn = random.nextDouble() * 7;
            double[] e = new double[4];
            double[] n = new double[4];
            double[][] corners = {{-2, -1}, {-2 + random.nextDouble(), 1.5}, {2, 1}, {2.5, -1}};
            for (int c = 0; c < 4; c++) {
                e[c] = e0 + corners[c][0] * Math.cos(turn) + corners[c][1] * Math.sin(turn);
                n[c] = n0 - corners[c][0] * Math.sin(turn) + corners[c][1] * Math.cos(turn);
            }
            Polygon quad = (Polygon) ring(e[0], n[0], e[1], n[1], e[2], n[2], e[3], n[3]);
            ClippedArea clipped = new ClippedArea(area);
            double expectedM2 = quad.intersection(area).getArea();
            // The factory's grid of 0.1 mm moves JTS's own corners: 12 m of edges times a tenth of a millimeter.
            assertEquals(expectedM2, clipped.inside(e, n), 2e-3, "quad " + i);
            assertEquals(
                    -clipped.inside(e, n),
                    clipped.inside(new double[] {e[3], e[2], e[1], e[0]}, new double[] {n[3], n[2], n[1], n[0]}),
                    1e-9);
        }
    }

    @Test
    void one_thread_and_eight_give_the_same_figures() {
        Drive drive = new Drive(6, 0.76).rate(RATE).lift(0, 0, 0.3);
        for (int i = 0; i < 6; i++) {
            drive.lift(i * 4, 0, 0.3).lower().arc(60, 0.4 * (i % 3));
        }
        Poses poses = drive.poses();
        Strips strips = drive.strips(poses);
        Delivery delivery = drive.delivery();
        List<StripPolygon> covered = Coverages.of(
                        drive.track(poses), strips, delivery, null, CoverageOptions.defaults(1))
                .strips();
        List<KeepOut> places = new ArrayList<>();
        Random random = new Random(9);
        for (int i = 0; i < 30; i++) {
            places.add(keepOut(point(random.nextDouble() * 60, random.nextDouble() * 60), 1 + random.nextDouble() * 9));
        }
        KeepOuts keepOuts = new KeepOuts("keep-out.geojson", places);
        Setbacks one = Setbacks.of(keepOuts, strips, delivery, covered, List.of(UAN), 1);
        Setbacks eight = Setbacks.of(keepOuts, strips, delivery, covered, List.of(UAN), 8);
        assertTrue(one.touched().size() > 5, one.touched().size() + " touched");
        for (int i = 0; i < places.size(); i++) {
            assertArrayEquals(
                    one.places().get(i).volumeL(), eight.places().get(i).volumeL());
            assertEquals(one.places().get(i).worst(), eight.places().get(i).worst());
            assertEquals(one.places().get(i).coveredM2(), eight.places().get(i).coveredM2());
            assertEquals(one.places().get(i).closestM(), eight.places().get(i).closestM());
        }
    }

    @Test
    void the_closest_approach_is_that_of_every_strip_held_against_the_place() {
        Drive drive = new Drive(6, 0.76).rate(RATE);
        for (int i = 0; i < 5; i++) {
            drive.lift(i * 5, 0, 0.2)
                    .lower()
                    .arc(30, 0.3)
                    .rows(false, 1, 2)
                    .arc(25, -0.5)
                    .rows(true, 1, 2);
        }
        Poses poses = drive.poses();
        Strips strips = drive.strips(poses);
        Delivery delivery = drive.delivery();
        StepBlocks blocks = new StepBlocks(strips);
        Random random = new Random(12);
        int apart = 0;
        for (int i = 0; i < 40; i++) {
            double e = random.nextDouble() * 90 - 30;
            double n = random.nextDouble() * 120 - 30;
            // Points, banks that slant across the field's box, triangles that may hold all of it.
            Geometry place = i % 3 == 0
                    ? point(e, n)
                    : i % 3 == 1
                            ? Jts.FACTORY.createLineString(
                                    new Coordinate[] {new Coordinate(e, n), new Coordinate(-40, 90 - i)})
                            : ring(e, n, e + 3 * i, n + 5, e, n + 3 * i);
            double leastM = Double.POSITIVE_INFINITY;
            for (int k = 0; k < poses.steps(); k++) {
                for (int r = 0; r < strips.rows(); r++) {
                    if (delivery.delivering(r, k)) {
                        double left = strips.leftM(r);
                        double right = strips.rightM(r);
                        Geometry quad = ring(
                                poses.eastM(k, left),
                                poses.northM(k, left),
                                poses.eastM(k + 1, left),
                                poses.northM(k + 1, left),
                                poses.eastM(k + 1, right),
                                poses.northM(k + 1, right),
                                poses.eastM(k, right),
                                poses.northM(k, right));
                        leastM = Math.min(leastM, quad.distance(place));
                    }
                }
            }
            apart += leastM > 0 ? 1 : 0;
            assertEquals(leastM, ClosestApproach.closestM(place, strips, delivery, blocks), 1e-9, "place " + i);
        }
        assertTrue(apart > 5 && apart < 35, apart + " places apart");
    }
}
