package io.rowledger.coverage.sections;

/**
 * What one way of shutting off would have made of the same drive: figures of that way, and what it differs by from what
 * happened.
 *
 * @param grouping which rows shut off together
 * @param savedL per product, liquid that would have stayed in the tank, L; negative where more would have been used; NaN
 *     where nobody gave a target for ground a row would have been on over
 * @param overlapM2 ground with two visits or more that would have been left, each place once, m²
 * @param overlapLessM2 what that is less than it was, m²; negative where it is more
 * @param outsideLessM2 ground outside the boundary that rows would have been off over and were on, m²; 0 without one
 * @param uncoveredM2 ground that would have stayed bare because rows were off over less than their whole band, m²
 * @param offM2 ground swept by rows that would have been off and were on, m²
 * @param offUnsettledM2 of that, ground swept while the bar's angle was not known, m²
 * @param onM2 ground swept by rows that would have been on and were off, m²
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
