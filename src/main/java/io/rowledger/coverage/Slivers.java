package io.rowledger.coverage;

import java.util.List;

/**
 * Overlap and skip area that is in the totals but too small or too thin to be listed as a {@link CoverageDefect},
 * mostly a few centimeters wide between passes.
 *
 * @param overlapM2 overlap area that is not listed, m²
 * @param overlapCount number of its parts
 * @param skipM2 skip area that is not listed, m²
 * @param skipCount number of its parts
 */
public record Slivers(double overlapM2, int overlapCount, double skipM2, int skipCount) {
    /** No slivers. */
    public static final Slivers NONE = new Slivers(0, 0, 0, 0);

    static Slivers of(Patches overlap, List<Patches> skips) {
        return new Slivers(
                overlap.sliverM2(),
                overlap.sliverCount(),
                skips.stream().mapToDouble(Patches::sliverM2).sum(),
                skips.stream().mapToInt(Patches::sliverCount).sum());
    }
}
