package io.rowledger.track;

import io.rowledger.geo.LocalPlane;
import java.util.List;

/**
 * The rebuilt way of tractor and bar.
 *
 * @param plane the job's plane; every metre in poses, strips and coverage is in it
 * @param poses the poses and steps
 * @param passes the passes in time order; pass n is {@code passes.get(n - 1)}
 * @param quality what was assumed, left out and measured on the way
 */
public record Track(LocalPlane plane, Poses poses, List<Pass> passes, TrackQuality quality) {
    /** Copies the passes. */
    public Track {
        passes = List.copyOf(passes);
    }
}
