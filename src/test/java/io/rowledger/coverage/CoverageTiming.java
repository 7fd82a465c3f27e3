package io.rowledger.coverage;

import io.rowledger.coverage.grid.ReceivedGrid;
import io.rowledger.coverage.grid.ReceivedGridBuilder;
import io.rowledger.coverage.grid.ReceivedStatisticsBuilder;
import io.rowledger.coverage.sections.ShutOffs;
import io.rowledger.coverage.strips.CoverageOptions;
import io.rowledger.coverage.strips.Visit;
import io.rowledger.coverage.strips.VisitIndex;
import io.rowledger.field.Boundary;
import io.rowledger.geo.Unions;
import io.rowledger.rate.Delivery;
import io.rowledger.strip.Strips;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.locationtech.jts.geom.Geometry;

/** Prints how long the coverage of a 64 ha field takes. Run by hand: it is no test. */
final class CoverageTiming {
    private CoverageTiming() {}

    /** Back and forth over a square with headland passes; noise in heading and position as a smoothed RTK track has. */
    static Drive field(double sideM, int rows, double spacingM, double stepM, double roughM, long seed) {
        Random random = new Random(seed);
        Drive d = new Drive(rows, spacingM);
        double width = rows * spacingM;
        int n = (int) Math.floor((sideM - 4 * width) / width);
        for (int i = 0; i < n; i++) {
            boolean up = i % 2 == 0;
            double x = 2 * width + (i + 0.5) * width;
            double from = up ? 2 * width : sideM - 2 * width;
            double heading = up ? 0 : Math.PI;
            double way = sideM - 4 * width;
            d.lift(x, from, heading).lower();
            int steps = (int) (way / stepM);
            double phase = 2 * Math.PI * random.nextDouble();
            int offUntil = 0;
            for (int k = 1; k <= steps; k++) {
                if (k == offUntil) {
                    for (int r = 1; r <= rows; r++) {
                        d.rows(true, r);
                    }
                }
                if (random.nextInt(4000) == 0) {
                    d.rows(false, 1 + random.nextInt(rows));
                    offUntil = k + 40;
                }
                d.rate(0.02 * (1 + 0.02 * random.nextGaussian()));
                // A steered line wanders by a centimetre or two over some tens of metres.
                double y = way * k / steps;
                double aside = 0.015 * Math.sin(y / 7 + phase) + 0.01 * Math.sin(y / 3 + 2 * phase);
                double slope = 0.015 / 7 * Math.cos(y / 7 + phase) + 0.01 / 3 * Math.cos(y / 3 + 2 * phase);
                aside += roughM * random.nextGaussian();
                d.pose(x + aside, from + (up ? y : -y), up ? heading + slope : heading - slope);
            }
            for (int r = 1; r <= rows; r++) {
                d.rows(true, r);
            }
        }
        for (int ring = 0; ring < 2; ring++) {
            double in = (ring + 0.5) * width;
            double r = 12;
            d.lift(in + r, in, Math.PI / 2).lower();
            for (int side = 0; side < 4; side++) {
                d.ahead(sideM - 2 * in - 2 * r).arc(r * Math.PI / 2, -Math.PI / 2);
            }
        }
        return d;
    }

    /** Seconds of each stage in turn. */
    static void stages(Track track, Strips strips, Delivery delivery, int threads) {
        CoverageOptions options = CoverageOptions.defaults(threads);
        StringBuilder out = new StringBuilder("stages");
        long[] t = {System.nanoTime()};
        VisitIndex index = new VisitIndex(Coverages.visits(track.passes(), strips, delivery, options));
        lap(out, "visits", t);
        List<Geometry> delivered = index.all()
                .mapToObj(index::get)
                .filter(Visit::delivers)
                .map(v -> (Geometry) v.polygon())
                .toList();
        Geometry covered = Unions.union(delivered, threads);
        lap(out, "union", t);
        List<Geometry> done = OverlapFinder.perVisit(index, threads);
        lap(out, "doubled", t);
        Geometry overlap = Unions.unionOfScattered(done, threads);
        lap(out, "overlap", t);
        Geometry skips = SkipFinder.of(covered, null, 0.762);
        lap(out, "open missed", t);
        Geometry bounded = SkipFinder.of(covered, CoverageByHandTest.box(-1, -1, 801, 801), 0.762);
        lap(out, "bounded missed", t);
        Patches overlapPatches = Patches.of(overlap, options);
        Patches skipPatches = Patches.of(skips, options);
        Patches boundedPieces = Patches.of(bounded, options);
        lap(out, "pieces", t);
        DefectClassifier places = new DefectClassifier(index, strips, track.passes(), true);
        places.overlap(overlapPatches.places(), threads);
        places.skips(skipPatches.places(), threads);
        places.skips(boundedPieces.places(), threads);
        lap(out, "places", t);
        ReceivedGrid grid =
                new ReceivedGridBuilder(strips, delivery, covered, options, new ArrayList<>()).build(covered);
        lap(out, "grid", t);
        ReceivedStatisticsBuilder.of(grid, 0, covered.getArea(), strips, delivery);
        lap(out, "statistics", t);
        ShutOffs.score(index, done, strips.poses(), delivery, null, threads);
        lap(out, "shut-offs", t);
        System.out.println(out);
        System.out.printf("missed open %.1f bounded %.1f%n", skips.getArea(), bounded.getArea());
    }

    private static void lap(StringBuilder out, String stage, long[] t) {
        long now = System.nanoTime();
        out.append(String.format(" | %s %.3f", stage, (now - t[0]) / 1e9));
        t[0] = now;
    }

    public static void main(String[] args) {
        int threads = args.length > 0 ? Integer.parseInt(args[0]) : 2;
        double roughM = args.length > 2 ? Double.parseDouble(args[2]) : 0;
        Drive d = field(800, 24, 0.762, 0.243, roughM, 7);
        Poses poses = d.poses();
        Track track = d.track(poses);
        Strips strips = d.strips(poses);
        Delivery delivery = d.delivery();
        for (int i = 0; i < (args.length > 1 ? Integer.parseInt(args[1]) : 3); i++) {
            stages(track, strips, delivery, threads);
            for (Boundary b : new Boundary[] {null, CoverageByHandTest.box(-1, -1, 801, 801)}) {
                long t = System.nanoTime();
                Coverage c = Coverages.of(track, strips, delivery, b, CoverageOptions.defaults(threads));
                double s = (System.nanoTime() - t) / 1e9;
                System.out.printf(
                        "steps %d %s %.2f s covered %.1f overlap %.2f missed %.2f strips %d vertices %d places %d %d"
                                + " seams %s conservation %.2e%n",
                        poses.steps(),
                        b == null ? "open" : "bounded",
                        s,
                        c.coveredAreaM2(),
                        c.overlapAreaM2(),
                        c.skipAreaM2(),
                        c.strips().size(),
                        c.strips().stream()
                                .mapToInt(p -> p.polygon().getNumPoints())
                                .sum(),
                        c.overlaps().size(),
                        c.skips().size(),
                        c.slivers(),
                        c.received().get(0).conservationError());
            }
        }
    }
}
