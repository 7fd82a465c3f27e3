package io.rowledger.finding;

import java.util.Locale;

/** What can be wrong with a row, the supply or the setup. The JSON name is the constant in lower case. */
public enum FindingKind {
    /** Falls to a few percent of the other rows and stays there. */
    PLUGGED,
    /** Gives almost nothing in spells from a few seconds on, and comes back. */
    INTERMITTENT,
    /** A lasting fraction of the other rows. */
    RESTRICTED,
    /** A lasting excess over the other rows. */
    LEAKING,
    /** Flows while lifted or commanded off. */
    VALVE_STUCK_OPEN,
    /** A meter that reads zero while liquid flows. */
    METER_DROPOUT,
    /** A meter whose reading follows neither speed, target nor shut-off. */
    METER_STUCK,
    /** A meter that reads a constant ratio from the first minute on. */
    METER_SCALE,
    /** Two rows that follow each other's place. */
    CHANNELS_SWAPPED,
    /** All rows fall short above a speed. */
    SUPPLY_LIMITED,
    /** All rows slide below target together, whatever the speed. */
    SUPPLY_FAILING,
    /** All rows fall to nothing and driving goes on. */
    RAN_EMPTY,
    /** Flow follows speed and target seconds late. */
    SLOW_RESPONSE,
    /** Flow swings with one period. */
    HUNTING,
    /** Flows alike across the bar while speeds differ. */
    NO_TURN_COMPENSATION,
    /** On late at the start of passes. */
    LATE_ON,
    /** Off early at the end of passes. */
    EARLY_OFF,
    /** Both outside rows off by one half, one and a half or two. */
    OUTSIDE_SHARE,
    /** The flow lag in the rig file differs from the log's. */
    FLOW_LAG,
    /** The hitch-to-drop length in the rig file differs from the log's. */
    DROP_OFFSET,
    /** The side offset in the rig file differs from the log's. */
    SIDE_OFFSET;

    /** The name used in {@code summary.json}: lower case with underscores. */
    public String jsonName() {
        return name().toLowerCase(Locale.ROOT);
    }
}
