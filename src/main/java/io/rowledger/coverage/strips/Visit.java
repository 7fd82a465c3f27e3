package io.rowledger.coverage.strips;

import io.rowledger.geo.Jts;
import org.locationtech.jts.geom.Polygon;

/**
 * A strip polygon with what the searches need to know of it.
 *
 * @param strip the polygon and its rows and steps
 * @param kind what the rows did there
 * @param chunk the chunk of its pass it lies in
 * @param runStart first step of the delivering (or silent) run this is a part of
 * @param runEnd one past that run's last step
 * @param runAreaM2 area of all polygons of the same rows and steps (more than one only where they fold), m²
 * @param poses the poses its vertices lie on, ascending
 */
public record Visit(
        StripPolygon strip, Kind kind, Chunk chunk, int runStart, int runEnd, double runAreaM2, int[] poses) {
    /** What rows do in a stretch of steps. */
    public enum Kind {
        /** Working forward and delivering. */
        DELIVERING,
        /** Working forward, not delivering. */
        NOT_DELIVERING,
        /** Delivering while going backward inside the pivot of a tight turn. */
        PIVOT
    }

    /**
     * A stretch of a pass that turns too little to cross itself.
     *
     * @param number counted from 0 along the pass
     * @param from its first step
     * @param to one past its last step
     * @param tiled true where every bar line lies ahead of the one before and no two bands overlap, so that no two of
     *     its strips do
     */
    public record Chunk(int number, int from, int to, boolean tiled) {
        int start(RowRuns.Run run) {
            return Math.max(from, run.start());
        }

        int end(RowRuns.Run run) {
            return Math.min(to, run.end());
        }
    }

    /**
     * True where the two surely have no ground in common: a line parts them, or both lie in one tiled chunk or in two
     * that follow each other.
     *
     * <p>In a tiled chunk all bar lines lie within 40 degrees of each other and both bar ends move within 45 degrees of
     * the bar's heading, so within 85 degrees of the heading at the bar line two chunks share: one chunk lies behind that
     * line and the other ahead of it.
     */
    public boolean apartFrom(Visit other) {
        boolean tiles = chunk.tiled
                && other.chunk.tiled
                && pass() == other.pass()
                && Math.abs(chunk.number - other.chunk.number) <= 1;
        return tiles || Jts.separated(polygon(), other.polygon());
    }

    public boolean delivers() {
        return kind != Kind.NOT_DELIVERING;
    }

    public Polygon polygon() {
        return strip.polygon();
    }

    public int pass() {
        return strip.pass();
    }
}
