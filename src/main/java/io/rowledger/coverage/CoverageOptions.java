package io.rowledger.coverage;

/**
 * Tolerances of the coverage. They change covered, overlap and skip area by no more than their own size; the patch
 * limits only decide what is listed.
 *
 * @param cellM side of a grid cell, m
 * @param simplifyM largest distance of a simplified strip edge from the driven line, m; at most 0.01
 * @param threads threads to use; the result is the same for any number
 * @param maxCells largest number of grid cells; the cell side is made twice as long until they fit
 * @param minPatchM2 smallest area of a listed skip or overlap, m²; smaller ones are slivers, which are in the totals
 *     only
 * @param minPatchWidthM smallest width of a listed skip or overlap, m
 */
public record CoverageOptions(
        double cellM, double simplifyM, int threads, int maxCells, double minPatchM2, double minPatchWidthM) {
    /** Side of a grid cell, m: two thirds of a 30 in row, so that the error of a single row shows on the map. */
    public static final double CELL_M = 0.5;
    /** Half of the 1 cm that is allowed, well below the noise of the best fix, m. */
    public static final double SIMPLIFY_M = 0.005;
    /** 300 ha at 0.5 m; two accumulators of 8 bytes per cell stay below 200 MB. */
    public static final int MAX_CELLS = 12_000_000;
    /** Smallest listed area, m²: a square of 1.4 m. Nobody drives back for less. */
    public static final double MIN_PATCH_M2 = 2;
    /** Smallest listed width, m: slivers of good guidance are thinner, half a row is wider. */
    public static final double MIN_PATCH_WIDTH_M = 0.15;

    /**
     * Checks the ranges.
     *
     * @throws IllegalArgumentException if a value is out of range
     */
    public CoverageOptions {
        if (!(cellM > 0) || !(simplifyM >= 0 && simplifyM <= 0.01) || threads < 1 || maxCells < 1) {
            throw new IllegalArgumentException("cell " + cellM + " m, simplify " + simplifyM + " m, threads " + threads
                    + ", at most " + maxCells + " cells");
        }
    }

    /** Returns the default tolerances. */
    public static CoverageOptions defaults(int threads) {
        return new CoverageOptions(CELL_M, SIMPLIFY_M, threads, MAX_CELLS, MIN_PATCH_M2, MIN_PATCH_WIDTH_M);
    }
}
