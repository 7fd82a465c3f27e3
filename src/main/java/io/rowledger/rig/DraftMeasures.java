package io.rowledger.rig;

import io.rowledger.log.taskdata.BarGeometry;
import java.math.BigDecimal;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;

/** The lengths and rows of a draft rig file: known ones from a device description, the others left to be measured. */
final class DraftMeasures {
    /** Largest deviation of evenly spaced rows, m: device descriptions are written in whole millimeters. */
    private static final double EVEN_M = 0.0015;

    private static final String SOURCE = "device description: check it";

    private final StringBuilder text;
    private final @Nullable BarGeometry geometry;

    /** Appends to the text; without a geometry every length is left to be measured. */
    DraftMeasures(StringBuilder text, @Nullable BarGeometry geometry) {
        this.text = text;
        this.geometry = geometry;
    }

    /** Antenna, hitch, wheels and drop line. */
    void lengths() {
        BarGeometry g = geometry;
        double unknown = Double.NaN;
        length(
                "    ahead_of_axle",
                g == null ? unknown : g.antennaAheadM(),
                "from the rear axle forward to the antenna");
        length(
                "    right_of_center",
                g == null ? unknown : g.antennaRightM(),
                "from the center line to the antenna; left is negative");
        back("  axle_to_hitch", g == null ? unknown : g.axleToHitchM(), "from the rear axle back to the hitch pin");
        String hitch = g == null ? "" : g.hitch();
        if (hitch.isEmpty()) {
            DraftRig.fillIn(text, "  hitch", "pull-type or mounted");
        } else {
            DraftRig.line(text, "  hitch: " + hitch, SOURCE);
        }
        if (!hitch.equals("mounted")) {
            back(
                    "  hitch_to_wheels",
                    g == null ? unknown : g.hitchToWheelsM(),
                    "from the pin back to the wheels; delete the line if mounted");
        }
        back(
                "  hitch_to_drop",
                g == null ? unknown : g.hitchToDropM(),
                "from the pin back to where the liquid meets the ground");
        if (g != null && Math.abs(g.barRightM()) > EVEN_M) {
            DraftRig.line(text, "  bar_right_of_center: " + metres(g.barRightM()), SOURCE);
        }
    }

    /**
     * The outlets: evenly spaced ones in three lines, others one by one.
     *
     * @param rows number of rows that the log tells; 0 if one meter or rate stands for all, so that it does not tell
     */
    void rows(int rows) {
        BarGeometry g = geometry;
        boolean known = g != null && g.leftM().size() == rows;
        if (g != null && known && !isEven(g)) {
            text.append("  outlets:                               # ")
                    .append(SOURCE)
                    .append('\n');
            for (int r = 0; r < rows; r++) {
                double left = g.leftM().get(r);
                double right = g.rightM().get(r);
                text.append("    - {at: ")
                        .append(metres((left + right) / 2))
                        .append(", band: [")
                        .append(metres(left))
                        .append(", ")
                        .append(metres(right))
                        .append("]}\n");
            }
            return;
        }
        if (rows == 0) {
            DraftRig.fillIn(text, "  count", "rows of the bar: the log has no flow for each");
        } else {
            DraftRig.line(text, "  count: " + rows, "flow columns in the log");
        }
        if (g != null && known) {
            DraftRig.line(
                    text, "  spacing: " + metres(g.rightM().get(0) - g.leftM().get(0)), SOURCE);
            DraftRig.line(text, "  outer_share: 1", SOURCE);
        } else {
            DraftRig.measure(text, "  spacing", "from row to row, such as 30 in");
            DraftRig.fillIn(text, "  outer_share", "0.5, 1 or 1.5: look at the outside orifices");
        }
    }

    /** True for two bands or more of one width, side by side. */
    private static boolean isEven(BarGeometry g) {
        int rows = g.leftM().size();
        double widthM = g.rightM().get(0) - g.leftM().get(0);
        boolean even = rows > 1;
        for (int r = 0; r < rows; r++) {
            even &= Math.abs(g.rightM().get(r) - g.leftM().get(r) - widthM) < EVEN_M;
            even &= r == 0 || Math.abs(g.leftM().get(r) - g.rightM().get(r - 1)) < EVEN_M;
        }
        return even;
    }

    /** A length that runs backward; zero or less was measured from another point and is left open. */
    private void back(String key, double lengthM, String comment) {
        length(key, lengthM > 0 ? lengthM : Double.NaN, comment);
    }

    private void length(String key, double lengthM, String comment) {
        if (Double.isNaN(lengthM)) {
            DraftRig.measure(text, key, comment);
        } else {
            DraftRig.line(text, key + ": " + metres(lengthM), comment + " (" + SOURCE + ")");
        }
    }

    /** The length in meters without trailing zeros. */
    private static String metres(double lengthM) {
        BigDecimal mm =
                BigDecimal.valueOf(lengthM).setScale(4, RoundingMode.HALF_EVEN).stripTrailingZeros();
        return (mm.signum() == 0 ? "0" : mm.toPlainString()) + " m";
    }
}
