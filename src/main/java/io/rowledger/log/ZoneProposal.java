package io.rowledger.log;

import java.util.List;

/**
 * Proposes the time zone of a field from its position, for a draft that a person checks. In the contiguous United States the
 * boundaries are simplified from 49 CFR part 71 (from memory): near a zone line the proposal can be wrong. Elsewhere boxes well
 * inside the land of one zone stand for it (from memory); outside all of them nothing is proposed.
 */
final class ZoneProposal {
    private static final double SOUTH_DEG = 24.5;
    private static final double NORTH_DEG = 49.4;
    private static final double WEST_DEG = -124.8;
    private static final double EAST_DEG = -66.9;

    /** Land of one zone: south, north, west and east edge, degrees. */
    private record Box(String zone, double southDeg, double northDeg, double westDeg, double eastDeg) {
        boolean holds(double latDeg, double lonDeg) {
            return latDeg > southDeg && latDeg < northDeg && lonDeg > westDeg && lonDeg < eastDeg;
        }
    }

    private static final List<Box> ABROAD = List.of(
            new Box("America/Edmonton", 49.1, 54, -113.9, -110.1),
            new Box("America/Edmonton", 54, 59.9, -119.8, -110.1),
            new Box("America/Regina", 49.1, 59.9, -109.9, -101.6),
            new Box("America/Winnipeg", 49.1, 57, -101.2, -95.3),
            new Box("America/Toronto", 42.4, 44.9, -82.3, -79.2),
            new Box("America/Toronto", 45.1, 47, -74.2, -70.9),
            new Box("America/Cuiaba", -17.5, -8, -60, -52),
            new Box("America/Sao_Paulo", -30, -15, -50, -41),
            new Box("America/Argentina/Buenos_Aires", -40, -27.5, -66, -58.3),
            new Box("Europe/London", 50.1, 58.5, -5.3, 1.7),
            new Box("Europe/Paris", 43.5, 49.9, -1, 5.8),
            new Box("Europe/Berlin", 48.6, 54.7, 7.2, 13.9),
            new Box("Europe/Warsaw", 50.4, 54.2, 15.2, 22.7),
            new Box("Europe/Kyiv", 46.5, 51.2, 26, 35),
            new Box("Africa/Johannesburg", -33.9, -25.8, 20.5, 30.5),
            new Box("Asia/Kolkata", 10, 26, 74, 87.9),
            new Box("Australia/Perth", -35.2, -15, 114.5, 128.8),
            new Box("Australia/Adelaide", -36, -26.2, 129.2, 140.8),
            new Box("Australia/Brisbane", -28, -12, 142, 153.6),
            new Box("Australia/Melbourne", -38.5, -36.5, 141.2, 146),
            new Box("Australia/Sydney", -35.9, -29.3, 142, 152),
            new Box("Pacific/Auckland", -46.6, -34.5, 167, 178.4));

    private ZoneProposal() {}

    /** Returns the name of a zone, or an empty text where none is proposed. */
    static String of(double latDeg, double lonDeg) {
        for (Box box : ABROAD) {
            if (box.holds(latDeg, lonDeg)) {
                return box.zone();
            }
        }
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
