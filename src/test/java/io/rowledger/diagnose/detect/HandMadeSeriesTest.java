package io.rowledger.diagnose.detect;

import static io.rowledger.diagnose.detect.HandMadeFlows.PERIOD_S;
import static io.rowledger.diagnose.detect.HandMadeFlows.USUAL_GAL_PER_MIN;
import static io.rowledger.diagnose.detect.HandMadeFlows.WORK_S;
import static io.rowledger.diagnose.detect.HandMadeFlows.down;
import static io.rowledger.diagnose.detect.HandMadeFlows.sinceDownS;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.detect.HandMadeFlows.Flow;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/**
 * Every detector on flows written down by hand: it fires on the fault, tells the look-alike, and says nothing of what flows
 * rounded to 0.1 gal/min (a tenth of the usual flow) can't show. Rows, times and sizes expected are those written down.
 */
class HandMadeSeriesTest extends HandMadeCase {
    @Test
    void healthy_rows_are_silent_in_full_and_rounded() {
        silent(of((row, timeS, due) -> due));
        silent(rounded((row, timeS, due) -> due));
    }

    @Test
    void healthy_equal_meters_are_silent_rounded() {
        silent(new HandMadeFlows((row, timeS, due) -> due)
                .withEqualMeters()
                .rounded(ROUNDED)
                .diagnose(folder));
    }

    // Plugged

    @Test
    void plugged_is_silent_at_the_logs_resolution() {
        // All rows run at 0.046 to 0.054 gal/min: they read 0.0 or 0.1 by chance.
        none(FindingKind.PLUGGED, rounded((row, timeS, due) -> 0.047 * due));
    }

    @Test
    void plugged_fires() {
        from(ONSET_S, only(of(share(3, ONSET_S, 0.01)), FindingKind.PLUGGED, 3), 2);
    }

    @Test
    void plugged_fires_in_rounded_flows() {
        from(ONSET_S, only(rounded(share(3, ONSET_S, 0)), FindingKind.PLUGGED, 3), 2);
    }

    @Test
    void plugged_is_silent_when_only_the_meter_died() {
        HandMadeFlows job = new HandMadeFlows((row, timeS, due) -> due)
                .metered(share(3, ONSET_S, 0))
                .withTotal();
        from(ONSET_S, only(job.diagnose(folder), FindingKind.METER_DROPOUT, 3), 2);
    }

    // Intermittent

    @Test
    void intermittent_fires() {
        Finding found = only(of(row(5, (r, t, due) -> spell(t, 38, 9) ? 0.1 * due : due)), FindingKind.INTERMITTENT, 5);
        // The first spell: 15 s lifted, then 12 s of work.
        from(27, found, 2);
    }

    @Test
    void intermittent_is_silent_where_each_spell_is_one_record_of_a_sparse_log() {
        // Zeros of 2 s in a record of 5 s: a meter that drops out.
        Flow flow = row(5, (r, t, due) -> sinceDownS(t) > 12 && sinceDownS(t) < WORK_S - 12 && t % 20 < 2 ? 0 : due);
        none(FindingKind.INTERMITTENT, new HandMadeFlows(flow).oneRecordIn(5).diagnose(folder));
    }

    @Test
    void intermittent_fires_where_spells_are_several_records_of_a_sparse_log() {
        Flow flow = row(5, (r, t, due) -> spell(t, 38, 20) ? 0 : due);
        Diagnosis diagnosis = new HandMadeFlows(flow).oneRecordIn(5).diagnose(folder);
        only(diagnosis, FindingKind.INTERMITTENT, 5);
    }

    @Test
    void intermittent_costs_the_spells_at_the_ends_of_passes_too() {
        // 9 s from 12 s and 50 s on in each of six passes, and the last 15 s: 1.0606 gal/min less a tenth.
        Finding found = only(
                of(row(5, (r, t, due) -> spell(t, 38, 9) || sinceDownS(t) >= WORK_S - 15 ? 0.1 * due : due)),
                FindingKind.INTERMITTENT,
                5);
        double spellsS = 2 * 9 + 15;
        assertEquals(-6 * spellsS / 60 * 0.9 * USUAL_GAL_PER_MIN * 3.785, found.volumeL(), 1.2);
    }

    @Test
    void intermittent_spells_of_nine_seconds_near_zero_are_one_finding() {
        only(of(row(5, (r, t, due) -> spell(t, 38, 9) ? 0.02 * due : due)), FindingKind.INTERMITTENT, 5);
    }

    @Test
    void intermittent_is_silent_when_the_row_falls_to_half_only() {
        none(FindingKind.INTERMITTENT, of(row(5, (r, t, due) -> spell(t, 38, 9) ? 0.5 * due : due)));
    }

    @Test
    void intermittent_is_silent_at_the_logs_resolution() {
        silent(rounded(row(5, (r, t, due) -> spell(t, 38, 9) ? due - 0.05 : due)));
    }

    // Restricted

    @Test
    void restricted_fires() {
        Finding found = only(of(share(6, ONSET_S, 0.7)), FindingKind.RESTRICTED, 6);
        from(ONSET_S, found, 3);
    }

    @Test
    void restricted_fires_in_rounded_flows() {
        from(ONSET_S, only(rounded(share(6, ONSET_S, 0.6)), FindingKind.RESTRICTED, 6), 6);
    }

    @Test
    void restricted_is_silent_when_the_whole_bar_falls() {
        none(FindingKind.RESTRICTED, of((r, t, due) -> t >= ONSET_S ? 0.7 * due : due));
    }

    @Test
    void restricted_is_silent_at_the_logs_resolution() {
        silent(rounded(share(6, ONSET_S, 0.96)));
    }

    // Leaking

    @Test
    void leaking_fires() {
        from(ONSET_S, only(of(share(2, ONSET_S, 1.3)), FindingKind.LEAKING, 2), 3);
    }

    @Test
    void leaking_is_silent_when_the_meter_reads_high_from_the_start() {
        only(of(share(2, 0, 1.15)), FindingKind.METER_SCALE, 2);
    }

    @Test
    void leaking_is_silent_at_the_logs_resolution() {
        silent(rounded(share(2, ONSET_S, 1.04)));
    }

    // Valve stuck open

    @Test
    void valve_stuck_open_fires() {
        Finding found = only(
                of(row(4, (r, t, due) -> down(t) ? due : 0.6 * USUAL_GAL_PER_MIN)), FindingKind.VALVE_STUCK_OPEN, 4);
        // Lifted from 0 s on; the first 3 s may be run-out.
        from(3, found, 3);
    }

    @Test
    void valve_stuck_open_is_silent_when_hoses_run_out_for_two_seconds() {
        silent(of(row(4, (r, t, due) -> down(t) || sinceDownS(t) < WORK_S || sinceDownS(t) >= WORK_S + 2 ? due : 0.5)));
    }

    @Test
    void valve_stuck_open_is_silent_at_the_logs_resolution() {
        silent(rounded(row(4, (r, t, due) -> down(t) ? due : 0.06)));
    }

    // Meter dropout

    @Test
    void meter_dropout_fires() {
        Finding found = only(of(row(7, (r, t, due) -> spell(t, 19, 2) ? 0 : due)), FindingKind.METER_DROPOUT, 7);
        from(27, found, 2);
    }

    @Test
    void meter_dropout_is_silent_for_two_zeros_in_the_job() {
        silent(of(row(7, (r, t, due) -> t == 60 || t == PERIOD_S + 60 ? 0 : due)));
    }

    @Test
    void meter_dropout_is_silent_when_all_rows_stop_for_a_moment() {
        none(FindingKind.METER_DROPOUT, of((r, t, due) -> spell(t, 38, 2) ? 0 : due));
    }

    @Test
    void meter_dropout_is_silent_at_the_logs_resolution() {
        silent(rounded(row(7, (r, t, due) -> spell(t, 19, 2) ? due - 0.05 : due)));
    }

    @Test
    void meter_dropout_is_silent_where_all_flows_are_half_a_step() {
        none(FindingKind.METER_DROPOUT, rounded((row, timeS, due) -> 0.047 * due));
    }

    // Meter stuck

    @Test
    void meter_stuck_fires() {
        Finding found =
                only(of(row(3, (r, t, due) -> t >= ONSET_S ? USUAL_GAL_PER_MIN : due)), FindingKind.METER_STUCK, 3);
        from(ONSET_S, found, 3);
    }

    @Test
    void meter_stuck_is_silent_on_one_speed_where_every_reading_rests() {
        silent(new HandMadeFlows((r, t, due) -> due).steadySpeed(5).diagnose(folder));
    }

    @Test
    void meter_stuck_is_silent_at_the_logs_resolution() {
        // 1.10 gal/min at 5.2 mph, give or take 0.04: a reading of 1.1 rests for most of a pass.
        silent(new HandMadeFlows((row, timeS, due) -> due)
                .speeds(5.2, 5.2, 5.2, 5.2, 5.2, 5.2)
                .rounded(ROUNDED)
                .diagnose(folder));
    }

    // Meter scale

    @Test
    void meter_scale_fires() {
        HandMadeFlows job = new HandMadeFlows((r, t, due) -> due)
                .withEqualMeters()
                .metered(share(5, 0, 0.85))
                .withTotal();
        Diagnosis diagnosis = job.diagnose(folder);
        from(15, only(diagnosis, FindingKind.METER_SCALE, 5), 5);
        assertEquals(0.85, diagnosis.figures().get(0).get(0).value(), 0.005);
    }

    @Test
    void meter_scale_is_silent_when_the_total_saw_the_row_give_less() {
        HandMadeFlows job = new HandMadeFlows(share(5, 0, 0.7)).withTotal();
        only(job.diagnose(folder), FindingKind.RESTRICTED, 5);
    }

    @Test
    void meter_scale_is_silent_at_the_logs_resolution() {
        none(FindingKind.METER_SCALE, rounded(share(5, 0, 0.96)));
    }

    // Hunting

    @Test
    void hunting_fires_for_the_bar() {
        Diagnosis diagnosis = of((r, t, due) -> due * (1 + 0.15 * Math.sin(2 * Math.PI * t / 8)));
        only(diagnosis, FindingKind.HUNTING);
    }

    @Test
    void hunting_fires_for_a_row() {
        only(of(row(6, (r, t, due) -> due * (1 + 0.15 * Math.sin(2 * Math.PI * t / 8)))), FindingKind.HUNTING, 6);
    }

    @Test
    void hunting_is_silent_where_the_flow_follows_the_speed() {
        silent(new HandMadeFlows((r, t, due) -> due).speeds(4, 6, 4, 6, 4, 6).diagnose(folder));
    }

    @Test
    void hunting_is_silent_at_the_logs_resolution() {
        silent(rounded((r, t, due) -> due * (1 + 0.03 * Math.sin(2 * Math.PI * t / 8))));
    }

    @Test
    void hunting_is_silent_where_rounding_repeats_with_the_speed() {
        silent(rounded(share(5, 0, 0.96)));
    }

    // Outside rows' share

    @Test
    void outside_share_fires() {
        Diagnosis diagnosis = of((r, t, due) -> r == 1 || r == 8 ? 0.5 * due : due);
        only(diagnosis, FindingKind.OUTSIDE_SHARE, 1, 8);
        assertEquals(0.5, diagnosis.figures().get(0).get(0).value(), 0.005);
    }

    @Test
    void outside_share_is_silent_when_one_outside_row_is_low() {
        only(of(share(1, ONSET_S, 0.5)), FindingKind.RESTRICTED, 1);
    }

    @Test
    void outside_share_is_silent_at_the_logs_resolution() {
        silent(rounded((r, t, due) -> r == 1 || r == 8 ? 0.96 * due : due));
    }

    // Late on

    @Test
    void late_on_fires_for_a_row() {
        only(of(row(2, (r, t, due) -> sinceDownS(t) < 3 ? 0 : due)), FindingKind.LATE_ON, 2);
    }

    @Test
    void late_on_fires_for_the_bar() {
        only(of((r, t, due) -> sinceDownS(t) < 3 ? 0 : due), FindingKind.LATE_ON);
    }

    @Test
    void late_on_is_silent_for_one_record() {
        silent(of((r, t, due) -> sinceDownS(t) < 1 ? 0 : due));
    }

    @Test
    void late_on_is_silent_where_the_meter_lags_at_both_ends() {
        Diagnosis diagnosis = of((r, t, due) -> {
            double s = sinceDownS(t);
            return s < 3 || s >= WORK_S + 3 ? 0 : down(t) ? due : USUAL_GAL_PER_MIN;
        });
        none(FindingKind.LATE_ON, diagnosis);
    }

    @Test
    void late_on_is_silent_at_the_logs_resolution() {
        // A first record at 95 %.
        silent(rounded((r, t, due) -> sinceDownS(t) < 1 ? 0.95 * due : due));
    }

    @Test
    void rounded_rows_are_told_apart_by_the_sums_of_their_readings() {
        // Meters within 1 % of each other, which readings of 1.0, 1.1 and 1.2 gal/min can't show one by one.
        double[] factors = {1.004, 0.993, 1.009, 0.998, 0.991, 1.006, 0.996, 1.002};
        double mean = Arrays.stream(factors).average().orElseThrow();
        Diagnosis diagnosis = rounded((r, t, due) -> due);
        for (int r = 0; r < factors.length; r++) {
            assertEquals(factors[r] / mean, diagnosis.baselines().get(r).medianRatio(), 0.004);
        }
    }

    // Early off

    @Test
    void early_off_is_silent_on_a_gentle_slope_without_commands() {
        // At every other headland the last row goes off with the lift and the first 2.4 s before: 0.35 s from row to
        // row.
        silent(of((row, t, due) -> {
            boolean sloped = (int) (t / PERIOD_S) % 2 == 0;
            return sloped && sinceDownS(t) >= WORK_S - 0.35 * (8 - row) ? 0 : due;
        }));
    }

    @Test
    void ends_are_silent_on_a_field_whose_two_ends_slope_alike_without_commands() {
        // Row 1 comes on last and goes off last, row 8 the other way round: 0.35 s from row to row, as rows read in
        // turn would look.
        Diagnosis diagnosis = of((row, t, due) ->
                sinceDownS(t) < 0.35 * (8 - row) || sinceDownS(t) >= WORK_S - 0.35 * (row - 1) ? 0 : due);
        silent(diagnosis);
    }

    @Test
    void early_off_is_silent_for_a_row_that_comes_and_goes() {
        // Off for the last 7, 12 and 6 s of three passes, and to the end of three others on.
        double[] offS = {7, 0, 12, 0, 6, 0};
        none(
                FindingKind.EARLY_OFF,
                of(row(3, (r, t, due) -> sinceDownS(t) >= WORK_S - offS[(int) (t / PERIOD_S)] ? 0 : due)));
    }

    @Test
    void edges_are_read_against_what_the_row_gives_there() {
        // Averaged over 4 s, a start toward half of the later flow passes half of that after 2 s, half of the later one
        // after 4 s.
        Diagnosis diagnosis = of((r, t, due) -> {
            double s = sinceDownS(t);
            double ramp = Math.max(0, Math.min(1, (s + 1) / 4) - Math.max(0, Math.min(1, (s - WORK_S + 1) / 4)));
            return USUAL_GAL_PER_MIN * ramp * (s < 30 ? 0.55 : 1);
        });
        none(FindingKind.LATE_ON, diagnosis);
    }

    @Test
    void early_off_fires_for_a_row() {
        only(of(row(7, (r, t, due) -> sinceDownS(t) >= WORK_S - 3 ? 0 : due)), FindingKind.EARLY_OFF, 7);
    }

    @Test
    void early_off_fires_for_the_bar() {
        only(of((r, t, due) -> sinceDownS(t) >= WORK_S - 3 ? 0 : due), FindingKind.EARLY_OFF);
    }

    @Test
    void early_off_is_silent_for_one_record_in_every_other_pass() {
        silent(of((r, t, due) -> sinceDownS(t) >= WORK_S - 1 && t % (2 * PERIOD_S) < PERIOD_S ? 0 : due));
    }

    @Test
    void early_off_is_silent_where_the_flow_goes_on_after_the_lift() {
        // Flow goes on for 2 s after the lift.
        silent(of((r, t, due) -> sinceDownS(t) >= WORK_S && sinceDownS(t) < WORK_S + 2 ? USUAL_GAL_PER_MIN : due));
    }

    @Test
    void early_off_is_silent_at_the_logs_resolution() {
        silent(rounded((r, t, due) -> sinceDownS(t) >= WORK_S - 3 ? 0.95 * due : due));
    }
}
