package io.rowledger.coverage;

import org.locationtech.jts.geom.Polygon;

/**
 * A strip polygon with what the searches need to know of it.
 *
 * @param strip the polygon and its rows and steps
 * @param kind what the rows did there
 * @param chunk which chunk of its pass, from 0
 * @param runStart first step of the delivering (or silent) run this is a part of
 * @param runEnd one past that run's last step
 * @param runAreaM2 area of all polygons of the same rows and steps (more than one only where they fold), m²
 * @param poses the poses its vertices lie on, ascending
 */
record Visit(StripPolygon strip, Kind kind, int chunk, int runStart, int runEnd, double runAreaM2, int[] poses) {
    /** What rows do in a stretch of steps. */
    enum Kind {
        /** Working forward and delivering. */
        DELIVERING,
        /** Working forward, not delivering. */
        SILENT,
        /** Delivering while going backward inside the pivot of a tight turn. */
        PIVOT
    }

    boolean delivers() {
        return kind != Kind.SILENT;
    }

    Polygon polygon() {
        return strip.polygon();
    }

    int pass() {
        return strip.pass();
    }
}
