package io.rowledger.report.map;

import io.rowledger.coverage.Coverage;
import io.rowledger.setback.Setbacks;
import io.rowledger.track.Track;
import org.jspecify.annotations.Nullable;

/**
 * What a map of a job shows.
 *
 * @param coverage covered ground, boundary, skips, overlaps and the received rate
 * @param track passes and gaps in the positions
 * @param rowWidthM width of a row, m
 * @param setbacks places to keep away from; null if no keep-out file was given
 */
public record GroundView(
        Coverage coverage,
        Track track,
        double rowWidthM,
        @Nullable Setbacks setbacks) {}
