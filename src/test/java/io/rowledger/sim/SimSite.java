package io.rowledger.sim;

/** Where the local frame's origin lies (degrees WGS 84) and when the first record was made (s since the epoch, UTC). */
public record SimSite(double latDeg, double lonDeg, long startEpochS) {
    /** Open farm land at 41.5 N, 93.5 W on 2 June 2026, 13:30 UTC. */
    public static SimSite prairie() {
        return new SimSite(41.5, -93.5, 1_780_407_000L);
    }
}
