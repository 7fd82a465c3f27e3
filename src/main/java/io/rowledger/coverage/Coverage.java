package io.rowledger.coverage;

import io.rowledger.coverage.grid.ReceivedGrid;
import io.rowledger.coverage.grid.ReceivedStatistics;
import io.rowledger.coverage.sections.ShutOffCase;
import io.rowledger.coverage.sections.ShutOffCredit;
import io.rowledger.coverage.sections.ShutOffScore;
import io.rowledger.coverage.strips.StripPolygon;
import io.rowledger.field.Boundary;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;

/**
 * Skips, overlaps and the received rate of a job.
 *
 * @param coveredAreaM2 area of the union of all delivering strips, m²
 * @param overlapAreaM2 area with two visits or more, each place once, m²
 * @param skipAreaM2 boundary less covered area, m²; without a boundary, the gaps enclosed by covered ground, and gaps
 *     open at an end that are narrower than one and a half row spacings
 * @param boundaryAreaM2 area of the boundary, m²; NaN without a boundary
 * @param outsideBoundaryM2 covered area outside the boundary, m²; NaN without a boundary
 * @param covered the union of all delivering strips
 * @param boundary the boundary, or null
 * @param strips the visits' polygons, in time order
 * @param overlaps overlaps large enough to list, largest first
 * @param skips skips large enough to list, largest first
 * @param doubtfulSkips skips at which only a meter reads zero while liquid flows, or the flow is not known, largest first,
 *     numbered apart; their area is in {@code skipAreaM2}
 * @param slivers overlap and skip area that is not listed
 * @param shutOffs score of section control
 * @param shutOffCredit target volume of ground over which rows were rightly shut off
 * @param grid the received volume and target by grid cell
 * @param received statistics of the received rate, per product
 * @param shutOffCases results of other ways of section control on the same drive; empty if none were requested
 */
public record Coverage(
        double coveredAreaM2,
        double overlapAreaM2,
        double skipAreaM2,
        double boundaryAreaM2,
        double outsideBoundaryM2,
        Geometry covered,
        @Nullable Boundary boundary,
        List<StripPolygon> strips,
        List<CoverageDefect> overlaps,
        List<CoverageDefect> skips,
        List<CoverageDefect> doubtfulSkips,
        Slivers slivers,
        ShutOffScore shutOffs,
        ShutOffCredit shutOffCredit,
        ReceivedGrid grid,
        List<ReceivedStatistics> received,
        List<ShutOffCase> shutOffCases) {
    /** Copies the lists. */
    public Coverage {
        strips = List.copyOf(strips);
        overlaps = List.copyOf(overlaps);
        skips = List.copyOf(skips);
        doubtfulSkips = List.copyOf(doubtfulSkips);
        received = List.copyOf(received);
        shutOffCases = List.copyOf(shutOffCases);
    }

    /** Returns the part of the skip area of which it is not known whether it was covered, m². */
    public double doubtfulSkipAreaM2() {
        return doubtfulSkips.stream().mapToDouble(CoverageDefect::areaM2).sum();
    }
}
