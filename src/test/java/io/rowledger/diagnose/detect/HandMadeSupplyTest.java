package io.rowledger.diagnose.detect;

import static io.rowledger.diagnose.detect.HandMadeFlows.LIFTED_S;
import static io.rowledger.diagnose.detect.HandMadeFlows.PERIOD_S;
import static io.rowledger.diagnose.detect.HandMadeFlows.USUAL_GAL_PER_MIN;
import static io.rowledger.diagnose.detect.HandMadeFlows.WORK_S;
import static io.rowledger.diagnose.detect.HandMadeFlows.down;
import static io.rowledger.diagnose.detect.HandMadeFlows.sinceDownS;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.diagnose.detect.HandMadeFlows.Flow;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import org.junit.jupiter.api.Test;

/** The detectors of a supply that falls short, on flows of all rows written down by hand. */
class HandMadeSupplyTest extends HandMadeCase {
    // Supply at its limit

    @Test
    void supply_limited_fires() {
        // The pump's most, for 4.6 mph: passes at 4.8 mph and more are short by up to 15 %.
        Finding found = only(of((r, t, due) -> Math.min(due, 0.976)), FindingKind.SUPPLY_LIMITED);
        from(15, found, 20);
    }

    @Test
    void supply_limited_is_silent_when_a_low_rate_follows_the_speed() {
        none(FindingKind.SUPPLY_LIMITED, of((r, t, due) -> 0.9 * due));
    }

    @Test
    void supply_limited_is_silent_at_the_logs_resolution() {
        // 1.19 gal/min is the most that is due: 3 % short for a while, a third of a step.
        silent(rounded((r, t, due) -> Math.min(due, 1.16)));
    }

    @Test
    void supply_limited_fires_in_rounded_flows() {
        // 8 % short at most.
        only(rounded((r, t, due) -> Math.min(due, 1.09)), FindingKind.SUPPLY_LIMITED);
    }

    @Test
    void supply_limited_is_silent_where_every_reading_rests_on_one_step() {
        // 42 · 3.05 · 30 / 5940 = 0.647 gal/min, give or take 1.2 %, reads 0.6 throughout: 7 % less, and level.
        silent(new HandMadeFlows((r, t, due) -> due)
                .speeds(3.05, 3.05, 3.05, 3.05, 3.05, 3.05)
                .swinging(0.012)
                .rounded(ROUNDED)
                .diagnose(folder));
    }

    // Failing supply

    @Test
    void supply_failing_fires() {
        // From the third pass on down to half within 300 s.
        double onset = 2 * PERIOD_S + 20;
        Flow slide = (r, t, due) -> due * Math.max(0.5, 1 - 0.5 * Math.max(0, t - onset) / 300);
        // It is 5 % short 30 s after the onset.
        from(onset + 30, only(of(slide), FindingKind.SUPPLY_FAILING), 30);
    }

    @Test
    void supply_failing_is_silent_when_one_pass_was_low() {
        none(FindingKind.SUPPLY_FAILING, of((r, t, due) -> t >= PERIOD_S && t < 2 * PERIOD_S ? 0.7 * due : due));
    }

    @Test
    void supply_failing_is_silent_at_the_logs_resolution() {
        silent(rounded((r, t, due) -> due * Math.max(0.96, 1 - 0.04 * t / 1000)));
    }

    @Test
    void supply_failing_is_silent_where_the_rate_had_been_as_low_before() {
        // The first 30 s of each pass, and from the middle of the fifth pass on.
        none(
                FindingKind.SUPPLY_FAILING,
                of((r, t, due) -> due * (sinceDownS(t) < 30 || t >= 4 * PERIOD_S + 60 ? 0.7 : 1)));
    }

    // Ran empty

    @Test
    void ran_empty_fires() {
        // In the last pass, over 8 s, then nothing.
        double onset = 5 * PERIOD_S + 60;
        from(
                onset,
                only(of((r, t, due) -> due * Math.min(1, Math.max(0, 1 - (t - onset) / 8))), FindingKind.RAN_EMPTY),
                2);
    }

    @Test
    void ran_empty_is_silent_when_the_flow_stops_for_eight_seconds() {
        none(FindingKind.RAN_EMPTY, of((r, t, due) -> t >= 5 * PERIOD_S + 60 && t < 5 * PERIOD_S + 68 ? 0 : due));
    }

    @Test
    void ran_empty_is_silent_at_the_logs_resolution() {
        // All rows run at 0.046 to 0.054 gal/min: the whole bar reads 0.0 for a while.
        none(FindingKind.RAN_EMPTY, rounded((row, timeS, due) -> 0.047 * due));
    }

    @Test
    void ran_empty_fires_in_rounded_flows() {
        double onset = 5 * PERIOD_S + 60;
        from(onset, only(rounded((r, t, due) -> t < onset ? due : 0), FindingKind.RAN_EMPTY), 2);
    }

    @Test
    void ran_empty_is_silent_where_rows_stop_in_turn() {
        // From row to row 1.2 s later, each at once, to the end of the pass: section control at a line that slants
        // across it.
        double onset = 5 * PERIOD_S + 60;
        none(FindingKind.RAN_EMPTY, of((r, t, due) -> t < onset + 1.2 * r ? due : 0));
    }

    @Test
    void ran_empty_fires_where_the_last_rows_get_the_rest_of_the_tank() {
        // Each row falls over 8 s, the outermost 4 s after the one next to the inlet.
        double onset = 5 * PERIOD_S + 60;
        Flow flow = (r, t, due) -> due * Math.min(1, Math.max(0, 1 - (t - onset - 0.5 * r) / 8));
        from(onset, only(of(flow), FindingKind.RAN_EMPTY), 5);
    }

    @Test
    void ran_empty_fires_where_the_tank_runs_out_as_a_pass_begins() {
        // From 2 s after the lowering, over 8 s: less than settled flow before it.
        double onset = 3 * PERIOD_S + LIFTED_S + 2;
        only(of((r, t, due) -> due * Math.min(1, Math.max(0, 1 - (t - onset) / 8))), FindingKind.RAN_EMPTY);
    }

    @Test
    void ran_empty_fires_beside_a_stuck_meter_and_a_row_that_had_stopped_before() {
        double onset = 5 * PERIOD_S + 60;
        Flow gives = (r, t, due) -> t < onset && !(r == 5 && t > 2 * PERIOD_S && t % 40 < 30) ? due : 0;
        Diagnosis diagnosis = new HandMadeFlows(gives)
                .metered((r, t, flow) -> r == 6 && t > 2 * PERIOD_S ? USUAL_GAL_PER_MIN : flow)
                .diagnose(folder);
        assertTrue(kinds(diagnosis).contains("RAN_EMPTY[]"), FaultField.brief(diagnosis));
    }

    /** Rows are commanded off 4 s one after another to the end of the fourth pass; the tank is empty from 15 s after the first on. */
    private Diagnosis offInTurn(double untilS) {
        double first = 3 * PERIOD_S + LIFTED_S + 50;
        return new HandMadeFlows((r, t, due) ->
                        (t >= first + 4 * r && t < 4 * PERIOD_S) || (t >= first + 15 && t < untilS) ? 0 : due)
                .commanded((r, t) -> down(t) && !(t >= first + 4 * r && t < 4 * PERIOD_S))
                .diagnose(folder);
    }

    @Test
    void ran_empty_fires_where_the_tank_runs_out_while_rows_are_shut_off_in_turn() {
        only(offInTurn(Double.POSITIVE_INFINITY), FindingKind.RAN_EMPTY);
    }

    @Test
    void ran_empty_is_silent_where_the_bar_delivers_again_in_the_next_pass() {
        none(FindingKind.RAN_EMPTY, offInTurn(4 * PERIOD_S));
    }

    @Test
    void ran_empty_is_silent_where_the_bar_stops_early_and_most_rows_are_off_by_command_after_it() {
        double early = 4 * PERIOD_S + LIFTED_S + WORK_S - 4;
        Diagnosis diagnosis = new HandMadeFlows(
                        (r, t, due) -> (t >= early && t < 5 * PERIOD_S) || (t >= 5 * PERIOD_S && r > 2) ? 0 : due)
                .commanded((r, t) -> down(t) && (t < 5 * PERIOD_S || r <= 2))
                .diagnose(folder);
        none(FindingKind.RAN_EMPTY, diagnosis);
    }

    @Test
    void a_plugged_row_that_leaks_on_while_lifted_has_no_valve_that_stays_open() {
        only(of(row(3, (r, t, due) -> t < ONSET_S ? due : 0.01 * USUAL_GAL_PER_MIN)), FindingKind.PLUGGED, 3);
    }
}
