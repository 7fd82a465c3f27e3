package io.rowledger.diagnose.setup;

import java.util.Locale;

/** What of the setup the log may tell. The JSON name is the constant in lower case. */
public enum SetupMeasurement {
    /** How much later a product's meters show what left the outlets. */
    FLOW_LAG,
    /** Where the drop line is, along the way. */
    DROP_OFFSET,
    /** Where the bar is, sideways. */
    SIDE_OFFSET,
    /** How far ahead of the rear axle the antenna is. */
    ANTENNA_AHEAD,
    /** How far behind the hitch pin the bar's wheels are. */
    HITCH_TO_WHEELS,
    /** Share of a row's width of the outside outlets. */
    OUTSIDE_SHARE,
    /** Which meter belongs to which row. */
    ROW_ORDER;

    /** The name used in {@code setup-check.json}: lower case with underscores. */
    public String jsonName() {
        return name().toLowerCase(Locale.ROOT);
    }
}
