package io.rowledger.coverage.sections;

/**
 * Result of one way of section control on the same drive, and the difference from what happened.
 *
 * @param grouping rows that shut off together
 * @param savedL per product, volume that would have been saved, L; negative if more would have been used; NaN if ground
 *     on which a row would have been on has no target
 * @param overlapM2 overlap that would have remained, each place once, m²
 * @param overlapLessM2 decrease of the overlap, m²; negative if it would have increased
 * @param outsideLessM2 area outside the boundary on which rows were on and would have been off, m²; 0 without a
 *     boundary
 * @param uncoveredM2 area that would have stayed uncovered because less than a whole band was prior ground, m²
 * @param offM2 area swept by rows that were on and would have been off, m²
 * @param offUnsettledM2 part of it swept while the bar was unsettled, m²
 * @param onM2 area swept by rows that were off and would have been on, m²
 */
public record ShutOffCase(
        Grouping grouping,
        double[] savedL,
        double overlapM2,
        double overlapLessM2,
        double outsideLessM2,
        double uncoveredM2,
        double offM2,
        double offUnsettledM2,
        double onM2) {}
