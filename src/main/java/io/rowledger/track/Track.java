package io.rowledger.track;

import io.rowledger.geo.LocalPlane;
import java.util.Arrays;
import java.util.List;

/**
 * The reconstructed path of tractor and bar.
 *
 * @param plane the job's plane, of all coordinates in poses, strips and coverage
 * @param poses poses and steps
 * @param passes the passes in time order; pass n is {@code passes.get(n - 1)}
 * @param quality interval, gaps and position noise of the log
 * @param breaks breaks of the measured path, in time order
 */
public record Track(LocalPlane plane, Poses poses, List<Pass> passes, TrackQuality quality, List<PathBreak> breaks) {
    /** Copies the lists. */
    public Track {
        passes = List.copyOf(passes);
        breaks = List.copyOf(breaks);
    }

    /** The track of a job without a path: no poses, no passes, and no fix of any type. */
    public static Track without(LocalPlane plane) {
        double[] noise = new double[TrackQuality.FIX_TYPES];
        Arrays.fill(noise, Double.NaN);
        return new Track(
                plane,
                new Poses(new PoseColumns()),
                List.of(),
                new TrackQuality(Double.NaN, 0, 0, false, noise, new int[TrackQuality.FIX_TYPES]));
    }

    /** A track without breaks. */
    public Track(LocalPlane plane, Poses poses, List<Pass> passes, TrackQuality quality) {
        this(plane, poses, passes, quality, List.of());
    }
}
