package io.rowledger.coverage;

/**
 * Doubled and missed ground that is in the totals but too small or too thin to be listed as a {@link CoverageDefect}: mostly the
 * centimetres between neighbouring passes.
 *
 * @param overlapM2 doubled area that is in no place, m²
 * @param overlapCount pieces of it
 * @param missedM2 missed area that is in no place, m²
 * @param missedCount pieces of it
 */
public record Slivers(double overlapM2, int overlapCount, double missedM2, int missedCount) {
    /** No seams. */
    public static final Slivers NONE = new Slivers(0, 0, 0, 0);
}
