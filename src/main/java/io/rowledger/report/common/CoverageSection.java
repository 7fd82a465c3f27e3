package io.rowledger.report.common;

import java.util.List;

/**
 * Skipped and doubled ground.
 *
 * @param skipSummary in a sentence
 * @param skips largest first, as many as are listed
 * @param skipRest what the list leaves out, or empty
 * @param doubleSummary in a sentence
 * @param doubles largest first, as many as are listed
 * @param doubleRest what the list leaves out, or empty
 * @param shutOffs how single rows were shut off; empty where none was
 */
public record CoverageSection(
        String skipSummary,
        List<DefectLine> skips,
        String skipRest,
        String doubleSummary,
        List<DefectLine> doubles,
        String doubleRest,
        List<ShutOffLine> shutOffs) {
    /** Copies the lists. */
    public CoverageSection {
        skips = List.copyOf(skips);
        doubles = List.copyOf(doubles);
        shutOffs = List.copyOf(shutOffs);
    }

    /** True where there is a list of skips. */
    public boolean hasSkips() {
        return !skips.isEmpty();
    }

    /** True where there is a list of doubles. */
    public boolean hasDoubles() {
        return !doubles.isEmpty();
    }

    /** True where a row was shut off alone. */
    public boolean hasShutOffs() {
        return !shutOffs.isEmpty();
    }
}
