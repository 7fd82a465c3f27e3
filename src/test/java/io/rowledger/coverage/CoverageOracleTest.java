package io.rowledger.coverage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.geo.Jts;
import io.rowledger.rate.Delivery;
import io.rowledger.track.Poses;
import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Envelope;

/** Random strips measured by two that know nothing of the product: counting fine samples, and java.awt.geom.Area. */
class CoverageOracleTest {
    private static final double SAMPLE_M = 0.05;

    /** Passes at random places and directions, gently bent, with rows that go off and on. */
    private static Drive random(long seed, boolean rowsGoOff) {
        Random random = new Random(seed);
        Drive d = new Drive(6, 0.762);
        for (int pass = 0; pass < 5; pass++) {
            // Heads for the middle from anywhere around it, so that passes meet.
            double from = random.nextDouble() * 2 * Math.PI;
            d.lift(
                    15 - 15 * Math.sin(from) + 4 * random.nextDouble(),
                    15 - 15 * Math.cos(from) + 4 * random.nextDouble(),
                    from);
            d.lower();
            for (int part = 0; part < 4; part++) {
                if (rowsGoOff) {
                    d.rows(random.nextBoolean(), 1 + random.nextInt(6));
                }
                d.arc(4 + 6 * random.nextDouble(), 0.4 * (random.nextDouble() - 0.5));
            }
            for (int r = 1; r <= 6; r++) {
                d.rows(true, r);
            }
        }
        return d;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void covered_ground_and_overlap_agree_with_counting_samples(long seed) {
        Drive d = random(seed, true);
        Coverage c = d.coverage();
        byte[] visits = visits(d, c);
        int covered = 0;
        int overlap = 0;
        for (byte v : visits) {
            covered += v >= 1 ? 1 : 0;
            overlap += v >= 2 ? 1 : 0;
        }
        // Some 400 m of outline cut cells of 0.05 m: the sum of so many random parts is good to a few tenths of a m².
        assertEquals(covered * SAMPLE_M * SAMPLE_M, c.coveredAreaM2(), 1.0);
        assertEquals(overlap * SAMPLE_M * SAMPLE_M, c.overlapAreaM2(), 1.0);
        assertTrue(overlap > 4000, "only " + overlap + " samples of overlap: nothing to check");
    }

    /** Tight turns: the pivot lies on the bar, runs along it, and the bar jitters where it stands. */
    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23, 24, 25, 26})
    void ground_covered_in_tight_turns_agrees_with_counting_samples(long seed) {
        Random random = new Random(seed);
        Drive d = new Drive(6, 0.762).lift(0, 0, random.nextDouble()).lower();
        for (int part = 0; part < 6; part++) {
            d.arc(3 + 3 * random.nextDouble(), 0.3 * (random.nextDouble() - 0.5));
            d.arc(2 * random.nextDouble(), 3 * (random.nextDouble() - 0.5));
            for (int i = 0; i < 5; i++) {
                d.arc(0.004, 0.004 * (random.nextDouble() - 0.5));
            }
            d.rows(random.nextBoolean(), 1 + random.nextInt(6));
        }
        Coverage c = d.coverage();
        int covered = 0;
        for (byte v : visits(d, c)) {
            covered += v >= 1 ? 1 : 0;
        }
        assertEquals(covered * SAMPLE_M * SAMPLE_M, c.coveredAreaM2(), 0.6);
        assertTrue(c.covered().isValid());
        assertTrue(c.overlapAreaM2() <= c.coveredAreaM2());
        assertEquals(
                0,
                Jts.difference(Jts.collect(polygonsOf(c.overlaps())), c.covered())
                        .getArea(),
                0.01);
    }

    private static List<org.locationtech.jts.geom.Polygon> polygonsOf(List<CoverageDefect> places) {
        return places.stream().map(CoverageDefect::polygon).toList();
    }

    /** How many different passes delivered at each sample. */
    private static byte[] visits(Drive d, Coverage c) {
        Poses poses = d.poses();
        Envelope extent = new Envelope(c.covered().getEnvelopeInternal());
        extent.expandBy(1);
        int cols = (int) (extent.getWidth() / SAMPLE_M);
        int rows = (int) (extent.getHeight() / SAMPLE_M);
        byte[] lastPass = new byte[cols * rows];
        byte[] visits = new byte[cols * rows];
        Delivery delivery = d.delivery();
        for (int k = 0; k < poses.steps(); k++) {
            for (int r = 0; r < d.bands().size(); r++) {
                if (poses.pass(k) > 0 && delivery.delivering(r, k)) {
                    double[][] quad = quad(
                            poses, k, d.bands().get(r).leftM(), d.bands().get(r).rightM());
                    count(quad, extent, cols, rows, (byte) poses.pass(k), lastPass, visits);
                }
            }
        }
        return visits;
    }

    private static void count(
            double[][] quad, Envelope extent, int cols, int rows, byte pass, byte[] lastPass, byte[] visits) {
        Envelope box = new Envelope();
        for (double[] p : quad) {
            box.expandToInclude(p[0], p[1]);
        }
        int col0 = Math.max(0, (int) ((box.getMinX() - extent.getMinX()) / SAMPLE_M) - 1);
        int col1 = Math.min(cols - 1, (int) ((box.getMaxX() - extent.getMinX()) / SAMPLE_M) + 1);
        int row0 = Math.max(0, (int) ((box.getMinY() - extent.getMinY()) / SAMPLE_M) - 1);
        int row1 = Math.min(rows - 1, (int) ((box.getMaxY() - extent.getMinY()) / SAMPLE_M) + 1);
        for (int row = row0; row <= row1; row++) {
            for (int col = col0; col <= col1; col++) {
                double x = extent.getMinX() + (col + 0.5) * SAMPLE_M;
                double y = extent.getMinY() + (row + 0.5) * SAMPLE_M;
                int i = row * cols + col;
                if (lastPass[i] != pass && inside(quad, x, y)) {
                    lastPass[i] = pass;
                    visits[i]++;
                }
            }
        }
    }

    /** Even-odd rule: how many edges lie to the right. */
    private static boolean inside(double[][] p, double x, double y) {
        boolean in = false;
        for (int i = 0, j = p.length - 1; i < p.length; j = i++) {
            if ((p[i][1] > y) != (p[j][1] > y)
                    && x < (p[j][0] - p[i][0]) * (y - p[i][1]) / (p[j][1] - p[i][1]) + p[i][0]) {
                in = !in;
            }
        }
        return in;
    }

    private static double[][] quad(Poses poses, int k, double left, double right) {
        return new double[][] {
            {poses.eastM(k, left), poses.northM(k, left)},
            {poses.eastM(k + 1, left), poses.northM(k + 1, left)},
            {poses.eastM(k + 1, right), poses.northM(k + 1, right)},
            {poses.eastM(k, right), poses.northM(k, right)}
        };
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14, 15, 16, 17, 18})
    void covered_ground_overlap_and_skips_agree_with_another_geometry_library(long seed) {
        Drive d = random(seed, false);
        CoverageOptions exact = new CoverageOptions(0.5, 0, 1, 1_000_000, 2, 0.15);
        Coverage c = d.coverage(CoverageByHandTest.box(-5, -5, 35, 35), exact);
        Poses poses = d.poses();
        List<Area> passes = new ArrayList<>();
        for (int k = 0; k < poses.steps(); k++) {
            if (poses.pass(k) > 0) {
                while (passes.size() < poses.pass(k)) {
                    passes.add(new Area());
                }
                passes.get(poses.pass(k) - 1).add(new Area(path(quad(poses, k, -3 * 0.762, 3 * 0.762))));
            }
        }
        Area covered = new Area();
        Area overlap = new Area();
        for (Area pass : passes) {
            Area again = new Area(pass);
            again.intersect(covered);
            overlap.add(again);
            covered.add(pass);
        }
        Area skips = new Area(new java.awt.geom.Rectangle2D.Double(-5, -5, 40, 40));
        skips.subtract(covered);
        // Vertices move to a grid of 0.1 mm: over 500 m of outline that is a few thousandths of a m².
        assertEquals(areaM2(covered), c.coveredAreaM2(), 0.01);
        assertEquals(areaM2(overlap), c.overlapAreaM2(), 0.01);
        assertEquals(areaM2(skips), c.skipAreaM2(), 0.01);
        assertEquals(
                c.boundaryAreaM2(),
                c.skipAreaM2()
                        + Jts.intersection(
                                        c.covered(),
                                        java.util.Objects.requireNonNull(c.boundary())
                                                .area())
                                .getArea(),
                1e-4 * c.boundaryAreaM2());
        assertEquals(c.coveredAreaM2() - c.outsideBoundaryM2(), c.boundaryAreaM2() - c.skipAreaM2(), 0.01);
    }

    private static Path2D path(double[][] ring) {
        Path2D path = new Path2D.Double();
        path.moveTo(ring[0][0], ring[0][1]);
        for (int i = 1; i < ring.length; i++) {
            path.lineTo(ring[i][0], ring[i][1]);
        }
        path.closePath();
        return path;
    }

    /** Shoelace over the rings; holes run the other way round. */
    private static double areaM2(Area area) {
        double twice = 0;
        double[] p = new double[6];
        double[] start = new double[2];
        double[] last = new double[2];
        for (PathIterator it = area.getPathIterator(null); !it.isDone(); it.next()) {
            int kind = it.currentSegment(p);
            if (kind == PathIterator.SEG_MOVETO) {
                start = new double[] {p[0], p[1]};
            } else {
                double[] to = kind == PathIterator.SEG_CLOSE ? start : p;
                twice += last[0] * to[1] - to[0] * last[1];
                p[0] = to[0];
                p[1] = to[1];
            }
            last = new double[] {p[0], p[1]};
        }
        return Math.abs(twice) / 2;
    }
}
