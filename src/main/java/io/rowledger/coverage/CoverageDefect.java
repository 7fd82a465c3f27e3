package io.rowledger.coverage;

import java.util.List;
import org.locationtech.jts.geom.Polygon;

/**
 * A skip or an overlap.
 *
 * @param number from 1, largest first
 * @param polygon its outline in the job's plane
 * @param areaM2 its area, m²
 * @param eastM east of a point inside it, m
 * @param northM north of a point inside it, m
 * @param passes the passes next to it or in it, ascending
 * @param rows the rows next to it or in it, ascending
 * @param cause the likely cause
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

    /** Returns true if the ground may be covered: only a meter reads zero while liquid flows, or the flow is not known. */
    public boolean doubtful() {
        return cause == Cause.METER_READS_ZERO || cause == Cause.FLOW_NOT_KNOWN;
    }

    /** Cause of a skip or an overlap. */
    public enum Cause {
        /** Skip: gap between two passes. */
        GAP_BETWEEN_PASSES,
        /** Skip: the bar passed over it, the row was not applying. */
        ROW_NOT_DELIVERING,
        /** Skip: the bar passed over it, and the row's meter read zero while liquid flowed. */
        METER_READS_ZERO,
        /** Skip: the bar passed over it, and the log does not tell what flowed. */
        FLOW_NOT_KNOWN,
        /** Skip: the pass began applying late. */
        LATE_START,
        /** Skip: the pass stopped applying early. */
        EARLY_STOP,
        /** Skip: margin between the outermost pass and the boundary, no wider than the bar. */
        EDGE_OF_FIELD,
        /** Skip: no strip is near, or it is wider than the bar. */
        OUTSIDE_THE_LOG,
        /** Skip or overlap between areas that a map hands in: without passes and rows no cause can be told. */
        BETWEEN_AREAS,
        /** Overlap: two passes side by side. */
        PASSES_OVERLAP,
        /** Overlap: a pass ran over covered ground at its start or end. */
        HEADLAND_OVERLAP,
        /** Overlap: a pass crossed its own strip. */
        PASS_CROSSED_ITSELF,
        /** Overlap: a row inside the pivot of a tight turn went backward. */
        INSIDE_THE_PIVOT
    }
}
