package io.rowledger.track;

/**
 * What a reader should know about the track before trusting it.
 *
 * @param medianIntervalS median time between records, s
 * @param gaps places where the log is silent for longer than a step can bridge
 * @param gapS seconds lost in them
 * @param workStateDerived true where the log has no work state and it was taken from flow and speed
 * @param noiseM position noise the smoother worked with, per NMEA fix digit 0 to 8, m (1 sigma); index 9 for fixes of unknown type; NaN where unused
 * @param recordsByFix usable records per NMEA fix digit 0 to 8; index 9 counts unknown
 */
public record TrackQuality(
        double medianIntervalS, int gaps, double gapS, boolean workStateDerived, double[] noiseM, int[] recordsByFix) {
    /** NMEA 0183 quality digits in words; 9 counts records that don't say. */
    public static String fixName(int digit) {
        return switch (digit) {
            case 0 -> "no fix";
            case 1 -> "autonomous";
            case 2 -> "differential";
            case 3 -> "precise positioning";
            case 4 -> "RTK fixed";
            case 5 -> "RTK float";
            case 6 -> "dead reckoning";
            case 7 -> "manual";
            case 8 -> "simulated";
            default -> "type not logged";
        };
    }
}
