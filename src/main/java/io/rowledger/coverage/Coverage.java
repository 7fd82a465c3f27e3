package io.rowledger.coverage;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;

/**
 * Skips, overlaps and what the ground received.
 *
 * @param coveredAreaM2 union of all delivered strips
 * @param overlapAreaM2 ground with two visits or more, each place once
 * @param missedAreaM2 boundary less covered; without a boundary, the enclosed gaps
 * @param boundaryAreaM2 NaN without a boundary
 * @param outsideBoundaryM2 covered ground outside the boundary; NaN without a boundary
 * @param covered the union itself
 * @param boundary the boundary, or null
 * @param strips the visits' polygons, in time order
 * @param overlaps largest first
 * @param missed largest first
 * @param shutOffs the shut-off score
 * @param grid the received grid
 * @param received statistics per product
 */
public record Coverage(
        double coveredAreaM2,
        double overlapAreaM2,
        double missedAreaM2,
        double boundaryAreaM2,
        double outsideBoundaryM2,
        Geometry covered,
        @Nullable Boundary boundary,
        List<StripPolygon> strips,
        List<Place> overlaps,
        List<Place> missed,
        ShutOffScore shutOffs,
        ReceivedGrid grid,
        List<ReceivedStatistics> received) {
    /** Copies the lists. */
    public Coverage {
        strips = List.copyOf(strips);
        overlaps = List.copyOf(overlaps);
        missed = List.copyOf(missed);
        received = List.copyOf(received);
    }
}
