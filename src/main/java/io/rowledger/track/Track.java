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
 * @param breaks places where the positions can't be trusted, in time order
 */
public record Track(LocalPlane plane, Poses poses, List<Pass> passes, TrackQuality quality, List<PathBreak> breaks) {
    /** Copies the lists. */
    public Track {
        passes = List.copyOf(passes);
        breaks = List.copyOf(breaks);
    }

    /** A track without breaks. */
    public Track(LocalPlane plane, Poses poses, List<Pass> passes, TrackQuality quality) {
        this(plane, poses, passes, quality, List.of());
    }
}
