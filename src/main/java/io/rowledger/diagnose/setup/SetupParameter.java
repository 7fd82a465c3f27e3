package io.rowledger.diagnose.setup;

import java.util.Locale;

/** Setup parameters that a log may determine. The JSON name is the constant in lower case. */
public enum SetupParameter {
    /** Flow lag of a product: how much later its meters show what left the outlets, s. */
    FLOW_LAG,
    /** Distance from hitch pin back to the drop line, m. */
    DROP_OFFSET,
    /** Side offset of the bar, m right of the tractor's center line. */
    SIDE_OFFSET,
    /** Distance from the rear axle forward to the antenna, m. */
    ANTENNA_AHEAD,
    /** Distance from hitch pin back to the bar's wheels, m. */
    HITCH_TO_WHEELS,
    /** Width of each outside outlet as a share of the row spacing. */
    OUTSIDE_SHARE,
    /** Which meter belongs to which row. */
    ROW_ORDER;

    /** The name used in {@code setup-check.json}: lower case with underscores. */
    public String jsonName() {
        return name().toLowerCase(Locale.ROOT);
    }
}
