package io.rowledger.coverage;

import java.util.List;
import org.locationtech.jts.geom.Polygon;

/**
 * One skipped or doubled piece of ground, to drive back to.
 *
 * @param number from 1, largest first
 * @param polygon in the job's plane
 * @param areaM2 its area, m²
 * @param eastM a point inside it
 * @param northM a point inside it
 * @param passes the passes next to it or in it, ascending
 * @param rows the outlets next to it or in it, ascending
 * @param cause the likely cause where the data tells
 */
public record CoverageDefect(
        int number,
        Polygon polygon,
        double areaM2,
        double eastM,
        double northM,
        List<Integer> passes,
        List<Integer> rows,
        Cause cause) {
    /** Copies the lists. */
    public CoverageDefect {
        passes = List.copyOf(passes);
        rows = List.copyOf(rows);
    }

    /** Why ground was skipped or doubled. */
    public enum Cause {
        /** Missed: bare ground between two passes. */
        GAP_BETWEEN_PASSES,
        /** Missed: the bar passed, the row did not deliver. */
        ROW_NOT_DELIVERING,
        /** Missed: the pass began delivering late. */
        LATE_START,
        /** Missed: the pass stopped delivering early. */
        EARLY_STOP,
        /** Missed: a margin no wider than the bar between the outermost pass and the field's boundary. */
        EDGE_OF_FIELD,
        /** Missed: the bar never came near, or the ground is wider than the bar. */
        OUTSIDE_THE_LOG,
        /** Doubled: two passes side by side. */
        PASSES_OVERLAP,
        /** Doubled: a pass ran into ground already done at its end or start. */
        HEADLAND_OVERLAP,
        /** Doubled: a pass crossed its own strip. */
        PASS_CROSSED_ITSELF,
        /** Doubled: a row inside the pivot of a tight turn went backward. */
        INSIDE_THE_PIVOT
    }
}
