package io.rowledger.finding;

import java.util.Locale;

/** What can be wrong with a row, the supply or the setup. The JSON name is the constant in lower case. */
public enum FindingKind {
    PLUGGED,
    RESTRICTED,
    LEAKING,
    METER_DROPOUT,
    METER_STUCK,
    METER_SCALE,
    CHANNELS_SWAPPED,
    SUPPLY_LIMITED,
    SLOW_RESPONSE,
    HUNTING,
    NO_TURN_COMPENSATION,
    LATE_ON,
    EARLY_OFF,
    OUTSIDE_SHARE,
    FLOW_LAG,
    DROP_OFFSET,
    SIDE_OFFSET;

    /** The name used in {@code summary.json}: lower case with underscores. */
    public String jsonName() {
        return name().toLowerCase(Locale.ROOT);
    }
}
