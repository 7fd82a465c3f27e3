package io.rowledger.coverage.strips;

import org.locationtech.jts.geom.Polygon;

/**
 * The ground of a run of neighbouring outlets that delivered together for a stretch of one pass.
 *
 * @param pass from 1
 * @param firstRow from 1
 * @param lastRow from 1
 * @param firstStep first step
 * @param endStep one past the last step
 * @param delivering true for ground that was given liquid, false for ground only swept
 * @param unsettled true where any step of it is unsettled
 * @param polygon in the job's plane, edges simplified within the named tolerance
 */
public record StripPolygon(
        int pass,
        int firstRow,
        int lastRow,
        int firstStep,
        int endStep,
        boolean delivering,
        boolean unsettled,
        Polygon polygon) {}
