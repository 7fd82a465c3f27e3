package io.rowledger.report;

import io.rowledger.finding.FindingKind;
import io.rowledger.report.RowDiagnosis.Check;
import java.util.List;

/**
 * What to look at for each kind of finding, cheapest and safest first: from the seat, then around the machine with
 * nothing opened, and only then with the system bled. Common practice, no source; the maker's manual comes first.
 */
final class FaultChecks {
    private static final String SEAT = "From the seat";
    private static final String AROUND = "Around the machine, nothing opened";
    private static final String BLED = "Only after every step of page 1";
    private static final String CATCH =
            "With solutions, never with ammonia: catch and measure the row and a neighbor over "
                    + "the same minute, as the manual has it.";

    private FaultChecks() {}

    private static Check seat(String text) {
        return new Check(SEAT, text);
    }

    private static Check around(String text) {
        return new Check(AROUND, text);
    }

    private static Check bled(String text) {
        return new Check(BLED, text);
    }

    static List<Check> of(FindingKind kind) {
        return switch (kind) {
            case PLUGGED ->
                List.of(
                        seat(
                                "See on the monitor whether the row is commanded on, and whether its pressure is above its "
                                        + "neighbors': pressure without flow is a plug, no pressure is a closed valve."),
                        around("Look along the hose for a kink, a pinch or a closed hand valve."),
                        bled("Take out orifice and strainer and look through them; then clear the knife's tube."));
            case RESTRICTED ->
                List.of(
                        seat(
                                "Compare the row's pressure with its neighbors': higher points to the outlet, lower to what "
                                        + "feeds it."),
                        around(
                                "Look along the hose for a kink, a flat spot or a half-closed valve; neighbors that share a "
                                        + "hose or a manifold section share its fault."),
                        around(CATCH),
                        bled("Clean strainer and orifice; hold the orifice against a new one of the same size."));
            case LEAKING ->
                List.of(
                        seat("Compare the row's pressure with its neighbors': a leak runs lower."),
                        around(
                                "From upwind and without touching it, look for wet hose, fittings and ground along the row."),
                        around(CATCH),
                        bled(
                                "Read the size stamped on the orifice against the other rows; look for a worn or missing one."));
            case METER_DROPOUT ->
                List.of(
                        seat("Watch the row's flow while the total and the pressure stay: a plug would move them."),
                        around(
                                "With the power off, look at the sensor's plug and wire for chafing, corrosion and a loose "
                                        + "pin; swap the plug with a neighbor's and see whether the fault moves."),
                        bled("Take the meter out; look for a rotor that catches or debris."));
            case METER_STUCK ->
                List.of(
                        seat("Change the speed or shut the row off: a stuck meter shows the same figure."),
                        around(
                                "With the power off, swap the sensor's plug with a neighbor's and see whether the fault moves."),
                        bled("Take the meter out; turn the rotor by hand and clean it."));
            case METER_SCALE ->
                List.of(
                        seat(
                                "Read the row's pulses per gallon or liter in the console against the meter's tag and the other "
                                        + "rows."),
                        around(CATCH),
                        bled("Take the meter out; look for wear, scale or another size of meter."));
            case CHANNELS_SWAPPED ->
                List.of(
                        seat("Shut off one of the named rows: see whether the flow stops on its own channel."),
                        around(
                                "With the power off, follow the two harness plugs to their valves and meters; swap and mark "
                                        + "them."));
            case SUPPLY_LIMITED ->
                List.of(
                        seat("Drive below the speed at which the limit begins: the rate should come back to target."),
                        around(
                                "Look at the tank's level and vent, the suction hose for a soft or collapsed spot, the pump's "
                                        + "speed and belt."),
                        bled("Clean the suction strainer; look at the pump's valves and the relief valve's seat."));
            case SLOW_RESPONSE ->
                List.of(
                        seat("Read the rate controller's gain and valve response against the manual."),
                        around(
                                "Watch the control valve while the target is changed: does it start at once, and how long does "
                                        + "it run?"),
                        bled("Look for air in the lines and a control valve that sticks."));
            case HUNTING ->
                List.of(
                        seat("Lower the rate controller's gain a step and watch whether the swing dies down."),
                        around(
                                "Watch valve and pump: does the valve run to and fro with the flow, or only the pump's drive?"),
                        bled(
                                "Look for air in the lines, a sticking control valve, a relief valve that opens and shuts."));
            case NO_TURN_COMPENSATION ->
                List.of(
                        seat(
                                "See in the console whether turn compensation is there and on, and whether the bar's width and "
                                        + "row count are right."),
                        around("Check that the heading or yaw source is plugged in and points forward."));
            case LATE_ON, EARLY_OFF ->
                List.of(
                        seat("Read look-ahead times, drop offset and the work switch's height in the console."),
                        around(
                                "Standing clear while the bar is lowered and lifted, see at which height the work switch moves."),
                        around("Watch the section valves: which opens last?"));
            case OUTSIDE_SHARE ->
                List.of(
                        seat(
                                "Read the outside rows' width in the console and in the rig file: half, one, or one and a half."),
                        bled("Read the size stamped on the outside orifices."));
            case FLOW_LAG, DROP_OFFSET, SIDE_OFFSET ->
                List.of(around("Measure again with a tape, tractor and bar in line, and correct the rig file."));
        };
    }
}
