package io.rowledger.log;

/**
 * Proposes the time zone of a field in the contiguous United States from its position, for a draft that a person checks.
 * Boundaries are simplified from 49 CFR part 71 (from memory): near a zone line the proposal can be wrong.
 */
final class ZoneProposal {
    private static final double SOUTH_DEG = 24.5;
    private static final double NORTH_DEG = 49.4;
    private static final double WEST_DEG = -124.8;
    private static final double EAST_DEG = -66.9;

    private ZoneProposal() {}

    /** Returns the name of a zone, or an empty text where none is proposed. */
    static String of(double latDeg, double lonDeg) {
        boolean inside = latDeg > SOUTH_DEG && latDeg < NORTH_DEG && lonDeg > WEST_DEG && lonDeg < EAST_DEG;
        if (!inside) {
            return "";
        }
        boolean arizona = latDeg > 31.3 && latDeg < 37 && lonDeg > -114.8 && lonDeg < -109.05;
        if (arizona) {
            return "America/Phoenix";
        }
        if (lonDeg > (latDeg > 36.6 ? -87.5 : -85.3)) {
            return "America/New_York";
        }
        if (lonDeg > (latDeg > 41 ? -101.5 : latDeg > 37 ? -102.05 : -103.05)) {
            return "America/Chicago";
        }
        return lonDeg > (latDeg > 42 ? -117.03 : -114.05) ? "America/Denver" : "America/Los_Angeles";
    }
}
