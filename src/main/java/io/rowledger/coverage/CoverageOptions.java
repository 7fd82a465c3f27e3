package io.rowledger.coverage;

/**
 * The tolerances of the coverage, each with its reason. None of them decides how much area is covered, doubled or
 * missed beyond its own size; the place limits only decide what is listed one by one.
 *
 * @param cellM side of a grid cell, m
 * @param simplifyM how far a strip's edge may leave the driven line when poses are left out, m; at most 0.01
 * @param threads threads to use; the result is the same bytes for any number
 * @param maxCells more cells than this and the cell is doubled until they fit
 * @param minPatchM2 skips and overlaps smaller than this are seams: in the totals, not listed, m²
 * @param minPatchWidthM skips and overlaps narrower than this are seams, m
 */
public record CoverageOptions(
        double cellM, double simplifyM, int threads, int maxCells, double minPatchM2, double minPatchWidthM) {
    /** Half a metre: two thirds of a 30 in row, so that a row's own error shows on the map. */
    public static final double CELL_M = 0.5;
    /** Half of the 1 cm that is allowed; well under the noise of the best fix. */
    public static final double SIMPLIFY_M = 0.005;
    /** Two accumulators of 8 bytes a cell stay under 200 MB; 300 ha at 0.5 m. */
    public static final int MAX_CELLS = 12_000_000;
    /** Less than three paces square: nobody drives back for it. */
    public static final double MIN_PATCH_M2 = 2;
    /** Half a hand's reach; seams of good guidance are thinner, a skipped half row is wider. */
    public static final double MIN_PATCH_WIDTH_M = 0.15;

    /** Checks the ranges. */
    public CoverageOptions {
        if (!(cellM > 0) || !(simplifyM >= 0 && simplifyM <= 0.01) || threads < 1 || maxCells < 1) {
            throw new IllegalArgumentException("cell " + cellM + " m, simplify " + simplifyM + " m, threads " + threads
                    + ", at most " + maxCells + " cells");
        }
    }

    /** What the program uses unless told otherwise. */
    public static CoverageOptions defaults(int threads) {
        return new CoverageOptions(CELL_M, SIMPLIFY_M, threads, MAX_CELLS, MIN_PATCH_M2, MIN_PATCH_WIDTH_M);
    }
}
