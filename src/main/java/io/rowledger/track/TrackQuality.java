package io.rowledger.track;

/**
 * Interval, gaps and position noise of a log.
 *
 * @param medianIntervalS median time between records, s
 * @param gaps number of gaps that are longer than a step may last
 * @param gapS total duration of these gaps, s
 * @param workStateDerived true if the log has no work state and it was derived from the flows
 * @param noiseM standard deviation of position noise in use, per NMEA fix digit 0 to 8, m; index 9 for fixes of unknown
 *     type; NaN if there are none
 * @param recordsByFix number of usable records per NMEA fix digit 0 to 8; index 9 for unknown type
 */
public record TrackQuality(
        double medianIntervalS, int gaps, double gapS, boolean workStateDerived, double[] noiseM, int[] recordsByFix) {
    /** Number of NMEA 0183 quality digits, with one for an unknown type (1). */
    static final int FIX_TYPES = 10;
}
