package io.rowledger.coverage;

import io.rowledger.coverage.grid.ReceivedGrid;
import io.rowledger.coverage.grid.ReceivedGridBuilder;
import io.rowledger.coverage.grid.ReceivedStatistics;
import io.rowledger.coverage.grid.ReceivedStatisticsBuilder;
import io.rowledger.coverage.sections.Grouping;
import io.rowledger.coverage.sections.OffReasons;
import io.rowledger.coverage.sections.ShutOffCases;
import io.rowledger.coverage.sections.ShutOffCreditFinder;
import io.rowledger.coverage.sections.ShutOffs;
import io.rowledger.coverage.strips.PassStrips;
import io.rowledger.coverage.strips.Visit;
import io.rowledger.coverage.strips.VisitIndex;
import io.rowledger.field.Boundary;
import io.rowledger.geo.Jts;
import io.rowledger.geo.Unions;
import io.rowledger.parallel.ParallelTasks;
import io.rowledger.rate.Delivery;
import io.rowledger.strip.Strips;
import io.rowledger.track.Pass;
import io.rowledger.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;

/** Computes the {@link Coverage} of a job from its strips and delivery. */
public final class Coverages {
    private Coverages() {}

    /**
     * Computes the coverage of a job.
     *
     * @param track poses and passes
     * @param strips the strips between the poses
     * @param delivery flows and targets of each outlet in each step
     * @param boundary the field's boundary in the job's plane, or null
     * @param options tolerances and threads
     */
    public static Coverage of(
            Track track, Strips strips, Delivery delivery, @Nullable Boundary boundary, CoverageOptions options) {
        return of(track, strips, delivery, boundary, List.of(), OffReasons.unknown(), options);
    }

    /**
     * Computes the coverage of a job and the results of other ways of section control on the same drive.
     *
     * @param groupings groups of rows that shut off together, such as {@link Grouping#candidates}
     * @param reasons why rows had no flow
     */
    public static Coverage of(
            Track track,
            Strips strips,
            Delivery delivery,
            @Nullable Boundary boundary,
            List<Grouping> groupings,
            OffReasons reasons,
            CoverageOptions options) {
        int threads = options.threads();
        VisitIndex index = new VisitIndex(visits(track.passes(), strips, delivery, options.simplifyM(), threads));
        Geometry covered = CoveredArea.of(index, threads);
        List<Geometry> priorCoverage = OverlapFinder.perVisit(index, threads);
        Geometry overlap =
                Unions.union(priorCoverage.stream().filter(g -> !g.isEmpty()).toList(), threads);
        Geometry skips = SkipFinder.of(covered, boundary, rowSpacingM(strips));

        Patches overlapPatches = Patches.of(overlap, options.minPatchM2(), options.minPatchWidthM(), threads);
        Patches skipPatches = Patches.of(skips, options.minPatchM2(), options.minPatchWidthM(), threads);
        DefectClassifier classifier = new DefectClassifier(index, strips, track.passes(), boundary != null, reasons);
        List<CoverageDefect> skipDefects = classifier.skips(skipPatches.patches(), threads);
        ReceivedGrid grid = new ReceivedGridBuilder(
                        strips, delivery, covered, options.cellM(), options.maxCells(), threads)
                .build(covered);
        List<ReceivedStatistics> received = new ArrayList<>();
        for (int p = 0; p < delivery.products(); p++) {
            received.add(ReceivedStatisticsBuilder.of(grid, p, covered.getArea(), strips, delivery));
        }
        return new Coverage(
                covered.getArea(),
                overlap.getArea(),
                skips.getArea(),
                areaM2(boundary),
                outsideM2(covered, boundary),
                covered,
                boundary,
                index.all().mapToObj(i -> index.get(i).strip()).toList(),
                classifier.overlap(overlapPatches.patches(), threads),
                DefectClassifier.numbered(skipDefects, defect -> !defect.doubtful()),
                DefectClassifier.numbered(skipDefects, CoverageDefect::doubtful),
                Slivers.of(overlapPatches, List.of(skipPatches)),
                ShutOffs.score(index, priorCoverage, strips.poses(), delivery, boundary, reasons, threads),
                ShutOffCreditFinder.find(index, strips, delivery, track.passes().size(), threads),
                grid,
                received,
                ShutOffCases.of(index, priorCoverage, strips, delivery, boundary, groupings, threads));
    }

    /** Returns the area of a boundary, m²; NaN without one. */
    static double areaM2(@Nullable Boundary boundary) {
        return boundary == null ? Double.NaN : boundary.area().getArea();
    }

    /** Returns the covered area outside a boundary, m²; NaN without one. */
    static double outsideM2(Geometry covered, @Nullable Boundary boundary) {
        return boundary == null
                ? Double.NaN
                : Jts.difference(covered, boundary.area()).getArea();
    }

    /** Returns the visits of all passes, in pass order. */
    public static List<Visit> visits(
            List<Pass> passes, Strips strips, Delivery delivery, double simplifyM, int threads) {
        List<Visit> out = new ArrayList<>();
        ParallelTasks.map(passes.size(), threads, i -> PassStrips.of(passes.get(i), strips, delivery, simplifyM))
                .forEach(out::addAll);
        return out;
    }

    /** Returns the median width of the bands, m. */
    private static double rowSpacingM(Strips strips) {
        double[] widths = new double[strips.rows()];
        for (int r = 0; r < widths.length; r++) {
            widths[r] = strips.rightM(r) - strips.leftM(r);
        }
        Arrays.sort(widths);
        return widths[widths.length / 2];
    }
}
