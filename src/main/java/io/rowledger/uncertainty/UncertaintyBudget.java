package io.rowledger.uncertainty;

import java.util.List;

/**
 * What the intervals rest on, as figures; the reports put it in words.
 *
 * @param toleranceM how far each measured length and each knife's place may be off, m
 * @param toleranceGiven true where the rig file says so, false where it is {@link DefaultUncertainties#TOLERANCE_M}
 * @param liquids per product
 * @param fixes per fix type that occurs, most frequent first
 * @param driftTauS time constant of the drift, s
 * @param intervalS time between records, s
 * @param draws how many times the ground was drawn again
 * @param seed of the draws; made from the logs' digests, so the same logs give the same intervals
 */
public record UncertaintyBudget(
        double toleranceM,
        boolean toleranceGiven,
        List<Liquid> liquids,
        List<Fix> fixes,
        double driftTauS,
        double intervalS,
        int draws,
        long seed) {
    static final UncertaintyBudget NOTHING =
            new UncertaintyBudget(Double.NaN, false, List.of(), List.of(), Double.NaN, Double.NaN, 0, 0);

    /** Copies the lists. */
    public UncertaintyBudget {
        liquids = List.copyOf(liquids);
        fixes = List.copyOf(fixes);
    }

    /**
     * A product's share.
     *
     * @param name its name
     * @param meterAccuracy limits of a meter's error, as a fraction
     * @param meterGiven true where the rig file says so
     * @param densityAccuracy limits of the density's error, as a fraction
     * @param densityGiven true where the rig file says so
     */
    public record Liquid(
            String name, double meterAccuracy, boolean meterGiven, double densityAccuracy, boolean densityGiven) {}

    /**
     * A fix type's share.
     *
     * @param digit NMEA 0183 quality digit; 9 where the log doesn't say
     * @param records how many
     * @param noiseM noise from record to record, one axis, 1 sigma, m
     * @param driftM slow drift, one axis, 1 sigma, m
     */
    public record Fix(int digit, int records, double noiseM, double driftM) {}
}
