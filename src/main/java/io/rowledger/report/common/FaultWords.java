package io.rowledger.report.common;

import io.rowledger.document.text.Wording;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import java.util.List;

/** A finding in a clause, as one would say it across the bench. */
public final class FaultWords {
    private FaultWords() {}

    /** {@code row 7}, {@code rows 3, 4}, {@code the whole bar}. */
    static String rows(List<Integer> rows) {
        if (rows.isEmpty()) {
            return "the whole bar";
        }
        return (rows.size() == 1 ? "row " : "rows ") + Wording.ranges(rows);
    }

    /** {@code Row 7 looks plugged}; a clause without a full stop. */
    public static String clause(Finding finding) {
        return clause(finding.kind(), finding.rows());
    }

    public static String clause(FindingKind kind, List<Integer> rows) {
        String who = Wording.label(rows(rows));
        boolean one = rows.size() <= 1;
        String looks = one ? " looks " : " look ";
        String meter = rows.isEmpty()
                ? "The meters of the whole bar "
                : (one ? "The meter of " : "The meters of ") + rows(rows) + " ";
        return switch (kind) {
            case PLUGGED -> who + looks + "plugged";
            case INTERMITTENT -> who + (one ? " comes and goes" : " come and go");
            case RESTRICTED -> who + looks + "restricted";
            case VALVE_STUCK_OPEN -> who + (one ? " flows" : " flow") + " while lifted or shut off: a valve stuck open";
            case LEAKING -> who + (one ? " puts" : " put") + " out too much: a leak or a wrong orifice";
            case METER_DROPOUT -> meter + (one ? "drops" : "drop") + " out while liquid flows";
            case METER_STUCK -> meter + (one ? "looks" : "look") + " stuck";
            case METER_SCALE -> meter + (one ? "reads" : "read") + " off by a constant share";
            case CHANNELS_SWAPPED -> "The channels of " + rows(rows) + " look swapped";
            case SUPPLY_LIMITED -> "The supply runs short for " + rows(rows);
            case SUPPLY_FAILING -> "The supply fails: " + rows(rows) + " slid below target together";
            case RAN_EMPTY -> "The supply ran empty and driving went on";
            case SLOW_RESPONSE -> who + (one ? " follows" : " follow") + " speed and target slowly";
            case HUNTING -> who + (one ? " hunts" : " hunt") + ": the flow swings with one period";
            case NO_TURN_COMPENSATION -> "The turns are not taken out: flows stay alike across the bar";
            case LATE_ON -> who + (one ? " comes" : " come") + " on late at the start of passes";
            case EARLY_OFF -> who + (one ? " goes" : " go") + " off early at the end of passes";
            case OUTSIDE_SHARE -> "The outside rows run on a wrong share";
            case FLOW_LAG -> "The flow lag in the rig file looks wrong";
            case DROP_OFFSET -> "The drop line's place in the rig file looks wrong";
            case SIDE_OFFSET -> "The bar's side offset looks wrong";
        };
    }

    /** What is looked for, in words a person can check the answer against. */
    public static String lookedFor() {
        return "plugged, restricted and leaking rows; rows that come and go; valves stuck open; meters that drop out, stick or read off; swapped channels; a supply "
                + "that runs short, fails or runs empty; slow response; hunting; turns not taken out; rows on late or off early; a wrong "
                + "outside share; and, where the driving lets the log tell, a wrong flow lag, drop line or side in the rig file";
    }
}
