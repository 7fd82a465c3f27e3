package io.rowledger.coverage.strips;

import io.rowledger.geo.Jts;
import org.locationtech.jts.geom.Polygon;

/**
 * A strip polygon and its place in its pass.
 *
 * @param strip the polygon, its rows and steps
 * @param kind what the rows did
 * @param chunk its chunk of the pass
 * @param runStart first step of the run that it is part of
 * @param runEnd one past the last step of that run
 * @param runAreaM2 area of all polygons of the same rows and steps, m²; more than one only where they fold
 * @param poses poses of its vertices, ascending
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
     * @param number from 0 along the pass
     * @param from its first step
     * @param to one past its last step
     * @param tiled true if every bar line lies ahead of the one before and no two bands overlap, so that its strips
     *     don't overlap
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
     * Returns true if the two have no area in common: a line separates them, or both lie in one tiled chunk or in two
     * successive ones.
     *
     * <p>In a tiled chunk all bar lines lie within 40 degrees of each other and both bar ends move within 45 degrees of
     * the bar's heading, so within 85 degrees of the heading at the bar line that two chunks share: one chunk lies
     * behind that line, the other ahead of it.
     */
    public boolean apartFrom(Visit other) {
        boolean tiles = chunk.tiled
                && other.chunk.tiled
                && pass() == other.pass()
                && Math.abs(chunk.number - other.chunk.number) <= 1;
        return tiles || Jts.separated(polygon(), other.polygon());
    }

    /** Returns true if the rows were delivering. */
    public boolean delivers() {
        return kind != Kind.NOT_DELIVERING;
    }

    /** Returns the outline. */
    public Polygon polygon() {
        return strip.polygon();
    }

    /** Returns the pass, from 1. */
    public int pass() {
        return strip.pass();
    }
}
