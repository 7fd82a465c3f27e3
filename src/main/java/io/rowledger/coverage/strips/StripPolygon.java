package io.rowledger.coverage.strips;

import org.locationtech.jts.geom.Polygon;

/**
 * Ground of neighboring outlets that did the same for a stretch of one pass.
 *
 * @param pass from 1; 0 for an area that a map hands in, which has no pass, no rows and no steps
 * @param firstRow from 1
 * @param lastRow from 1
 * @param firstStep first step
 * @param endStep one past the last step
 * @param delivering true if the outlets were delivering, false if they only passed over
 * @param unsettled true if any step of it is unsettled
 * @param polygon its outline in the job's plane, simplified within the tolerance
 */
public record StripPolygon(
        int pass,
        int firstRow,
        int lastRow,
        int firstStep,
        int endStep,
        boolean delivering,
        boolean unsettled,
        Polygon polygon) {
    /** Returns true for an area that a map hands in. */
    public boolean isArea() {
        return pass == 0;
    }
}
