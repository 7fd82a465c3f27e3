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
 * Skips, overlaps and what the ground received.
 *
 * @param coveredAreaM2 union of all delivered strips
 * @param overlapAreaM2 ground with two visits or more, each place once
 * @param skipAreaM2 boundary less covered; without a boundary, the gaps the covered ground encloses, and the gaps
 *     open at an end that are narrower than one and a half row spacings
 * @param boundaryAreaM2 NaN without a boundary
 * @param outsideBoundaryM2 covered ground outside the boundary; NaN without a boundary
 * @param covered the union itself
 * @param boundary the boundary, or null
 * @param strips the visits' polygons, in time order
 * @param overlaps the doubled pieces worth driving to, largest first
 * @param skips the skipped pieces worth driving to, largest first
 * @param slivers what of the overlap and missed areas is in no place
 * @param shutOffs the shut-off score
 * @param shutOffCredit what rows did not owe because the ground was done
 * @param grid the received grid
 * @param received statistics per product
 * @param shutOffCases what other ways of shutting off would have made of the same drive; empty where none was asked for
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
        received = List.copyOf(received);
        shutOffCases = List.copyOf(shutOffCases);
    }
}
