package io.rowledger.coverage;

/**
 * Doubled and missed ground that is in the totals but too small or too thin to be listed as a {@link CoverageDefect}: mostly the
 * centimetres between neighbouring passes.
 *
 * @param overlapM2 doubled area that is in no place, m²
 * @param overlapCount pieces of it
 * @param skipM2 missed area that is in no place, m²
 * @param skipCount pieces of it
 */
public record Slivers(double overlapM2, int overlapCount, double skipM2, int skipCount) {
    /** No seams. */
    public static final Slivers NONE = new Slivers(0, 0, 0, 0);
}
