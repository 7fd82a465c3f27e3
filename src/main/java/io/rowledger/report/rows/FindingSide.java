package io.rowledger.report.rows;

import io.rowledger.finding.FindingKind;
import io.rowledger.text.Message;

/** Hose or meter: on which side of the machine a kind of finding lies, and whether the log has the total meter that tells. */
final class FindingSide {
    private FindingSide() {}

    /** The side in a sentence. */
    static Message of(FindingKind kind, boolean totalMeter) {
        return switch (kind) {
            case PLUGGED, INTERMITTENT, RESTRICTED, LEAKING, VALVE_STUCK_OPEN ->
                Message.of(totalMeter ? "rows.cause.liquid" : "rows.cause.liquidUnsure");
            case METER_DROPOUT, METER_STUCK, METER_SCALE ->
                Message.of(totalMeter ? "rows.cause.meter" : "rows.cause.meterUnsure");
            case CHANNELS_SWAPPED -> Message.of("rows.cause.wiring");
            case SUPPLY_LIMITED, SUPPLY_FAILING, RAN_EMPTY -> Message.of("rows.cause.supply");
            case SLOW_RESPONSE, HUNTING, NO_TURN_COMPENSATION, LATE_ON, EARLY_OFF -> Message.of("rows.cause.control");
            case OUTSIDE_SHARE -> Message.of("rows.cause.outside");
            case FLOW_LAG, DROP_OFFSET, SIDE_OFFSET -> Message.of("rows.cause.setup");
        };
    }
}
