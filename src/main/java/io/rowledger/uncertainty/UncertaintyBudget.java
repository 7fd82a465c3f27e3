package io.rowledger.uncertainty;

import java.util.List;

/**
 * What the intervals rest on, as figures for the reports.
 *
 * @param toleranceM limits of the error of each measured length and each knife's place, m
 * @param toleranceGiven true if the rig file states it; false for {@link DefaultUncertainties#TOLERANCE_M}
 * @param liquids per product
 * @param fixes per fix type that occurs, most frequent first
 * @param driftTauS time constant of the drift, s
 * @param intervalS time between records, s; NaN for a log without times
 * @param samples number of Monte Carlo samples of the coverage
 * @param seed of the samples; made from the logs' digests, so that the same logs give the same intervals
 * @param faults meters in question, whose volumes the intervals allow for
 */
public record UncertaintyBudget(
        double toleranceM,
        boolean toleranceGiven,
        List<Liquid> liquids,
        List<Fix> fixes,
        double driftTauS,
        double intervalS,
        int samples,
        long seed,
        List<MeterFault> faults) {
    static final UncertaintyBudget NOTHING =
            new UncertaintyBudget(Double.NaN, false, List.of(), List.of(), Double.NaN, Double.NaN, 0, 0, List.of());

    /** Copies the lists. */
    public UncertaintyBudget {
        liquids = List.copyOf(liquids);
        fixes = List.copyOf(fixes);
        faults = List.copyOf(faults);
    }

    /**
     * A product's share.
     *
     * @param name its name
     * @param meterAccuracy limits of a meter's error, as a fraction
     * @param meterGiven true if the rig file states it
     * @param densityAccuracy limits of the density's error, as a fraction
     * @param densityGiven true if the rig file states it
     * @param unknownShare share of the swept area with an unknown flow, 0 to 1
     */
    public record Liquid(
            String name,
            double meterAccuracy,
            boolean meterGiven,
            double densityAccuracy,
            boolean densityGiven,
            double unknownShare) {}

    /**
     * A fix type's share.
     *
     * @param digit NMEA 0183 quality digit; 9 if the log has none
     * @param records how many
     * @param noiseM noise from record to record, one axis, 1 sigma, m
     * @param driftM slow drift, one axis, 1 sigma, m
     */
    public record Fix(int digit, int records, double noiseM, double driftM) {}
}
