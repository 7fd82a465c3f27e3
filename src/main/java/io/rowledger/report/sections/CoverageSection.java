package io.rowledger.report.sections;

import java.util.List;

/**
 * Skips and overlaps.
 *
 * @param skipSummary in a sentence
 * @param skips largest first, as many as are listed
 * @param skipRest what the list leaves out, or empty
 * @param overlapSummary in a sentence
 * @param overlaps largest first, as many as are listed
 * @param overlapRest what the list leaves out, or empty
 * @param shutOffs rows shut off alone; empty if there were none
 */
public record CoverageSection(
        String skipSummary,
        List<DefectLine> skips,
        String skipRest,
        String overlapSummary,
        List<DefectLine> overlaps,
        String overlapRest,
        List<ShutOffLine> shutOffs) {
    /** Copies the lists. */
    public CoverageSection {
        skips = List.copyOf(skips);
        overlaps = List.copyOf(overlaps);
        shutOffs = List.copyOf(shutOffs);
    }

    /** True if there are skips. */
    public boolean hasSkips() {
        return !skips.isEmpty();
    }

    /** True if there are overlaps. */
    public boolean hasOverlaps() {
        return !overlaps.isEmpty();
    }

    /** True if there is a place to show on a map. */
    public boolean hasPlaces() {
        return hasSkips() || hasOverlaps();
    }

    /** True if a row was shut off alone. */
    public boolean hasShutOffs() {
        return !shutOffs.isEmpty();
    }
}
