package io.rowledger.diagnose.detect;

import static io.rowledger.diagnose.detect.HandMadeFlows.USUAL_GAL_PER_MIN;
import static io.rowledger.diagnose.detect.HandMadeFlows.WORK_S;
import static io.rowledger.diagnose.detect.HandMadeFlows.down;
import static io.rowledger.diagnose.detect.HandMadeFlows.sinceDownS;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.diagnose.detect.HandMadeFlows.Flow;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Starts, stops and lifts on flows written down by hand. */
class HandMadeEdgesTest extends HandMadeCase {
    /** In each pass row 7 flows from 4 s after lowering to 6 s before the lift. */
    private static final Flow BETWEEN =
            row(7, (row, t, due) -> sinceDownS(t) < 4 || sinceDownS(t) >= WORK_S - 6 ? 0 : due);

    // Commands that flicker

    @Test
    void a_row_that_follows_its_command_is_on_time_where_the_command_flickers_before_and_after() {
        // On for the first second and again from 4 s on; off 6 s before the lift, but for a second 3 s before it.
        Diagnosis diagnosis = new HandMadeFlows(BETWEEN)
                .commanded((row, t) -> {
                    double s = sinceDownS(t);
                    boolean steadily = s >= 4 && s < WORK_S - 6;
                    boolean flickers = s < 1 || (s >= WORK_S - 3 && s < WORK_S - 2);
                    return down(t) && (row != 7 || steadily || flickers);
                })
                .diagnose(folder);
        assertEquals(Set.of(), kinds(diagnosis), FaultField.brief(diagnosis));
    }

    @Test
    void a_row_that_is_commanded_on_from_the_lowering_to_the_lift_is_late_and_early_by_its_command() {
        Diagnosis diagnosis =
                new HandMadeFlows(BETWEEN).commanded((row, t) -> down(t)).diagnose(folder);
        assertEquals(Set.of("LATE_ON[7]", "EARLY_OFF[7]"), kinds(diagnosis), FaultField.brief(diagnosis));
    }

    // Too few rows to tell a slope

    /** Row 1 of four goes off 3.6 s before the lift, each further row 1.2 s later. */
    private static final Flow SLOPED = (row, t, due) -> sinceDownS(t) >= WORK_S - 1.2 * (4 - row) ? 0 : due;

    @Test
    void four_rows_that_go_off_in_turn_are_too_few_to_tell_a_slope_from_early_rows() {
        Diagnosis diagnosis = new HandMadeFlows(SLOPED).rows(4).diagnose(folder);
        assertEquals(Set.of(), kinds(diagnosis), FaultField.brief(diagnosis));
    }

    @Test
    void one_row_of_four_that_goes_off_early_is_told_by_its_command_alone() {
        Flow early = row(2, (row, t, due) -> sinceDownS(t) >= WORK_S - 3 ? 0 : due);
        Diagnosis without = new HandMadeFlows(early).rows(4).diagnose(folder);
        assertEquals(Set.of(), kinds(without), FaultField.brief(without));
        Diagnosis with =
                new HandMadeFlows(early).rows(4).commanded((row, t) -> down(t)).diagnose(folder);
        assertEquals(Set.of("EARLY_OFF[2]"), kinds(with), FaultField.brief(with));
    }

    @Test
    void four_rows_that_go_off_early_together_are_an_early_bar() {
        Diagnosis diagnosis = new HandMadeFlows((row, t, due) -> sinceDownS(t) >= WORK_S - 3 ? 0 : due)
                .rows(4)
                .diagnose(folder);
        assertEquals(Set.of("EARLY_OFF[]"), kinds(diagnosis), FaultField.brief(diagnosis));
    }

    // Sloped ends

    /** Row 1 comes on so long after the lowering, each further row 2 s later; all run to the lift. */
    private static Flow slopedFrom(double firstS) {
        return (row, t, due) -> sinceDownS(t) < firstS + 2 * (row - 1) ? 0 : due;
    }

    @Test
    void a_bar_whose_first_row_comes_on_late_at_a_sloped_end_is_late() {
        Diagnosis late = new HandMadeFlows(slopedFrom(4)).diagnose(folder);
        assertEquals(Set.of("LATE_ON[]"), kinds(late), FaultField.brief(late));
        Diagnosis slope = new HandMadeFlows(slopedFrom(0)).diagnose(folder);
        assertEquals(Set.of(), kinds(slope), FaultField.brief(slope));
    }

    // Five seconds between records

    @Test
    void a_bar_that_comes_on_a_record_late_in_every_pass_is_late_where_readings_are_of_the_instant() {
        Diagnosis late = new HandMadeFlows((row, t, due) -> sinceDownS(t) < 4 ? 0 : due)
                .oneRecordIn(5)
                .diagnose(folder);
        assertEquals(Set.of("LATE_ON[]"), kinds(late), FaultField.brief(late));
    }

    @Test
    void a_bar_that_comes_on_a_record_late_in_every_other_pass_is_not_known_to_be() {
        Flow flow = (row, t, due) -> t % 400 < 200 && sinceDownS(t) < 4 ? 0 : due;
        Diagnosis diagnosis = new HandMadeFlows(flow).oneRecordIn(5).diagnose(folder);
        assertEquals(Set.of(), kinds(diagnosis), FaultField.brief(diagnosis));
    }

    // A single record in a lift

    /** Row 4 flows in a lift from 5 s to so many seconds after it began, in a log of a record in 5 s. */
    private Diagnosis lifted(double untilS) {
        Flow flow = row(4, (row, t, due) -> {
            double sinceLiftS = sinceDownS(t) - WORK_S;
            return sinceLiftS >= 5 && sinceLiftS < untilS ? 0.6 * USUAL_GAL_PER_MIN : due;
        });
        return new HandMadeFlows(flow).oneRecordIn(5).diagnose(folder);
    }

    @Test
    void one_record_of_flow_in_each_lift_may_stand_for_a_moment() {
        Diagnosis diagnosis = lifted(10);
        assertFalse(kinds(diagnosis).contains("VALVE_STUCK_OPEN[4]"), FaultField.brief(diagnosis));
    }

    @Test
    void two_records_of_flow_in_each_lift_are_a_valve_that_stays_open() {
        Diagnosis diagnosis = lifted(15);
        assertTrue(kinds(diagnosis).contains("VALVE_STUCK_OPEN[4]"), FaultField.brief(diagnosis));
    }
}
