package io.rowledger.coverage;

import io.rowledger.coverage.CoverageDefect.Cause;
import io.rowledger.coverage.grid.AreaGridBuilder;
import io.rowledger.coverage.grid.ReceivedGrid;
import io.rowledger.coverage.grid.ReceivedStatistics;
import io.rowledger.coverage.grid.ReceivedStatisticsBuilder;
import io.rowledger.coverage.sections.ShutOffCredit;
import io.rowledger.coverage.sections.ShutOffScore;
import io.rowledger.coverage.strips.StripPolygon;
import io.rowledger.field.Boundary;
import io.rowledger.geo.Jts;
import io.rowledger.geo.Unions;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * Computes the {@link Coverage} of areas that a map hands in: their union, the ground that two of them share, and the boundary
 * less their union. Passes, rows and causes are unknown.
 */
public final class AreaCoverages {
    private AreaCoverages() {}

    /**
     * Computes the coverage of areas.
     *
     * @param areas the areas, each a visit of its ground
     * @param products number of products
     * @param rows number of rows of the bar
     * @param rowSpacingM median row width, m: gaps narrower than one and a half of it count as skips without a boundary
     * @param boundary the field's boundary in the same plane, or null
     */
    public static Coverage of(
            List<AppliedArea> areas,
            int products,
            int rows,
            double rowSpacingM,
            @Nullable Boundary boundary,
            CoverageOptions options) {
        int threads = options.threads();
        List<AppliedArea> applied = areas.stream().filter(AppliedArea::applied).toList();
        List<Geometry> ground = applied.stream().map(AppliedArea::ground).toList();
        Geometry covered = Unions.union(ground, threads);
        Geometry unknown = Jts.difference(
                Unions.union(
                        areas.stream()
                                .filter(AppliedArea::unknown)
                                .map(AppliedArea::ground)
                                .toList(),
                        threads),
                covered);
        Geometry overlap = overlap(ground, threads);
        Geometry skips = SkipFinder.of(covered, boundary, rowSpacingM);
        Geometry doubtful = Jts.intersection(skips, unknown);
        Patches overlapPatches = Patches.of(overlap, options.minPatchM2(), options.minPatchWidthM(), threads);
        Patches skipPatches =
                Patches.of(Jts.difference(skips, unknown), options.minPatchM2(), options.minPatchWidthM(), threads);
        Patches doubtfulPatches = Patches.of(doubtful, options.minPatchM2(), options.minPatchWidthM(), threads);
        ReceivedGrid grid = grid(areas, products, covered, options);
        List<ReceivedStatistics> received = new ArrayList<>();
        for (int p = 0; p < products; p++) {
            double volumeL = 0;
            for (AppliedArea area : areas) {
                double rate = area.rateLPerM2()[p];
                volumeL += Double.isNaN(rate) ? 0 : rate * area.ground().getArea();
            }
            received.add(ReceivedStatisticsBuilder.of(grid, p, covered.getArea(), volumeL));
        }
        return new Coverage(
                covered.getArea(),
                overlap.getArea(),
                skips.getArea(),
                Coverages.areaM2(boundary),
                Coverages.outsideM2(covered, boundary),
                covered,
                boundary,
                strips(applied, rows),
                defects(overlapPatches, Cause.BETWEEN_AREAS),
                defects(skipPatches, Cause.BETWEEN_AREAS),
                defects(doubtfulPatches, Cause.FLOW_NOT_KNOWN),
                Slivers.of(overlapPatches, List.of(skipPatches, doubtfulPatches)),
                ShutOffScore.UNKNOWN,
                ShutOffCredit.nothing(products, 0, rows),
                grid,
                received,
                List.of());
    }

    /** Returns the ground that lies in two areas or more. */
    private static Geometry overlap(List<Geometry> areas, int threads) {
        List<Polygon> all = new ArrayList<>();
        List<Integer> areaOf = new ArrayList<>();
        STRtree index = new STRtree();
        for (int i = 0; i < areas.size(); i++) {
            for (Polygon polygon : Jts.polygons(areas.get(i))) {
                index.insert(polygon.getEnvelopeInternal(), all.size());
                all.add(polygon);
                areaOf.add(i);
            }
        }
        List<Geometry> shared = new ArrayList<>();
        for (int a = 0; a < all.size(); a++) {
            for (Object found : index.query(all.get(a).getEnvelopeInternal())) {
                int b = (Integer) found;
                // Polygons of one area are one visit.
                if (b > a && !areaOf.get(a).equals(areaOf.get(b)) && !Jts.separated(all.get(a), all.get(b))) {
                    shared.add(Jts.intersection(all.get(a), all.get(b)));
                }
            }
        }
        return Unions.unionOfScattered(shared.stream().filter(g -> !g.isEmpty()).toList(), threads);
    }

    private static ReceivedGrid grid(List<AppliedArea> areas, int products, Geometry covered, CoverageOptions options) {
        Envelope extent = new Envelope();
        areas.forEach(area -> extent.expandToInclude(area.ground().getEnvelopeInternal()));
        AreaGridBuilder builder = new AreaGridBuilder(
                extent.isNull() ? new Envelope(0, 0, 0, 0) : extent, options.cellM(), options.maxCells());
        double[][] rate = new double[products][areas.size()];
        double[][] target = new double[products][areas.size()];
        for (int p = 0; p < products; p++) {
            for (int i = 0; i < areas.size(); i++) {
                rate[p][i] = areas.get(i).rateLPerM2()[p];
                target[p][i] = areas.get(i).applied() ? areas.get(i).targetLPerM2()[p] : Double.NaN;
            }
        }
        return builder.build(covered, areas.stream().map(AppliedArea::ground).toList(), rate, target);
    }

    /** Returns the areas as strips without pass and steps. */
    private static List<StripPolygon> strips(List<AppliedArea> applied, int rows) {
        List<StripPolygon> strips = new ArrayList<>();
        for (AppliedArea area : applied) {
            for (Polygon polygon : Jts.polygons(area.ground())) {
                strips.add(new StripPolygon(0, 1, rows, 0, 0, true, false, polygon));
            }
        }
        return strips;
    }

    private static List<CoverageDefect> defects(Patches patches, Cause cause) {
        List<CoverageDefect> defects = new ArrayList<>();
        for (Polygon polygon : patches.patches()) {
            Coordinate inside = polygon.getInteriorPoint().getCoordinate();
            defects.add(
                    new CoverageDefect(0, polygon, polygon.getArea(), inside.x, inside.y, List.of(), List.of(), cause));
        }
        return DefectClassifier.numbered(defects, defect -> true);
    }
}
