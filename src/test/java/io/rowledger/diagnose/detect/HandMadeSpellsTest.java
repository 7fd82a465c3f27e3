package io.rowledger.diagnose.detect;

import static io.rowledger.diagnose.detect.HandMadeFlows.PERIOD_S;
import static io.rowledger.diagnose.detect.HandMadeFlows.WORK_S;
import static io.rowledger.diagnose.detect.HandMadeFlows.down;
import static io.rowledger.diagnose.detect.HandMadeFlows.sinceDownS;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.diagnose.detect.HandMadeFlows.Command;
import io.rowledger.diagnose.detect.HandMadeFlows.Flow;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Rows that come and go for longer than a pass, or from its start, on flows written down by hand. */
class HandMadeSpellsTest extends HandMadeCase {
    private static int pass(double timeS) {
        return (int) (timeS / PERIOD_S);
    }

    private static boolean within(double timeS, double fromS, double toS) {
        return sinceDownS(timeS) >= fromS && sinceDownS(timeS) < toS;
    }

    /** 6 s in the middle of the first and of the second pass. */
    private static boolean twoShortSpells(double timeS) {
        return pass(timeS) < 2 && within(timeS, 40, 46);
    }

    private interface Off {
        boolean at(double timeS);
    }

    private static Flow row5(Off off) {
        return (row, t, due) -> row == 5 && off.at(t) ? 0 : due;
    }

    @Test
    void a_spell_that_fills_a_pass_counts_beside_spells_within_passes() {
        Diagnosis diagnosis = new HandMadeFlows(
                        row5(t -> twoShortSpells(t) || (pass(t) == 3 && within(t, 3, WORK_S - 4))))
                .diagnose(folder);
        assertEquals(Set.of("INTERMITTENT[5]"), kinds(diagnosis), FaultField.brief(diagnosis));
    }

    @Test
    void a_row_that_is_off_for_two_whole_passes_may_have_been_shut() {
        // As beyond the field's edge on the first and on the last pass.
        Diagnosis diagnosis = new HandMadeFlows(row5(t -> (pass(t) == 0 || pass(t) == 5) && within(t, 3, WORK_S - 4)))
                .diagnose(folder);
        assertFalse(kinds(diagnosis).contains("INTERMITTENT[5]"), FaultField.brief(diagnosis));
    }

    /** Off for so long from the start of the second, the fourth and the fifth pass. */
    private static boolean fromStarts(double timeS, double seconds) {
        int pass = pass(timeS);
        return (pass == 1 || pass == 3 || pass == 4) && within(timeS, 0, seconds);
    }

    @Test
    void a_row_that_gives_nothing_from_starts_on_while_both_neighbors_do_is_no_headlands_shape() {
        Diagnosis diagnosis = new HandMadeFlows(row5(t -> fromStarts(t, 20))).diagnose(folder);
        assertEquals(Set.of("INTERMITTENT[5]"), kinds(diagnosis), FaultField.brief(diagnosis));
    }

    @Test
    void rows_that_come_on_in_turn_follow_the_headlands_shape() {
        // Row 8 for 24 s, each row nearer to row 1 for 3 s less.
        Diagnosis diagnosis = new HandMadeFlows((row, t, due) -> fromStarts(t, 3.0 * row) ? 0 : due).diagnose(folder);
        assertFalse(
                kinds(diagnosis).stream().anyMatch(found -> found.startsWith("INTERMITTENT")),
                FaultField.brief(diagnosis));
    }

    @Test
    void an_outermost_row_that_comes_on_by_itself_may_follow_the_headlands_shape() {
        Diagnosis diagnosis =
                new HandMadeFlows((row, t, due) -> row == 8 && fromStarts(t, 20) ? 0 : due).diagnose(folder);
        assertFalse(kinds(diagnosis).contains("INTERMITTENT[8]"), FaultField.brief(diagnosis));
    }

    /** The two short spells and the first 20 s of the fourth pass. */
    private Diagnosis offAtAStart(Command command) {
        return new HandMadeFlows(row5(t -> twoShortSpells(t) || (pass(t) == 3 && within(t, 0, 20))))
                .commanded(command)
                .diagnose(folder);
    }

    @Test
    void a_row_that_is_commanded_on_and_gives_nothing_from_the_start_of_a_pass_is_no_headlands_shape() {
        Diagnosis diagnosis = offAtAStart((row, t) -> down(t));
        assertEquals(Set.of("INTERMITTENT[5]"), kinds(diagnosis), FaultField.brief(diagnosis));
    }

    @Test
    void a_row_that_is_commanded_off_from_the_start_of_a_pass_was_shut() {
        Diagnosis diagnosis = offAtAStart((row, t) -> down(t) && !(row == 5 && pass(t) == 3 && within(t, 0, 20)));
        assertFalse(kinds(diagnosis).contains("INTERMITTENT[5]"), FaultField.brief(diagnosis));
    }

    /** Row 1 is commanded off from 20 s to 40 s after each lowering; in that time this row gives nothing. */
    private Diagnosis offBesideACommand(int offRow) {
        return new HandMadeFlows((row, t, due) -> row == offRow && within(t, 20, 40) ? 0 : due)
                .commanded((row, t) -> down(t) && !(row == 1 && within(t, 20, 40)))
                .diagnose(folder);
    }

    @Test
    void a_row_that_stops_while_another_flows_against_its_command_is_crossed_with_it() {
        Diagnosis diagnosis = offBesideACommand(8);
        assertEquals(Set.of("CHANNELS_SWAPPED[1, 8]"), kinds(diagnosis), FaultField.brief(diagnosis));
    }

    @Test
    void a_row_that_stops_while_another_follows_its_command_comes_and_goes() {
        Diagnosis diagnosis = new HandMadeFlows((row, t, due) -> (row == 1 || row == 8) && within(t, 20, 40) ? 0 : due)
                .commanded((row, t) -> down(t) && !(row == 1 && within(t, 20, 40)))
                .diagnose(folder);
        assertEquals(Set.of("INTERMITTENT[8]"), kinds(diagnosis), FaultField.brief(diagnosis));
    }

    @Test
    void rows_that_are_off_and_on_against_their_commands_at_different_times_are_not_crossed() {
        // Rows 1 and 4 are commanded off for 20 s. Row 1 flows on for the first 15 s of them; row 8 stops for the last
        // 15 s.
        Diagnosis diagnosis = new HandMadeFlows((row, t, due) -> {
                    boolean off =
                            row == 1 ? within(t, 35, 40) : row == 4 ? within(t, 20, 40) : row == 8 && within(t, 25, 40);
                    return off ? 0 : due;
                })
                .commanded((row, t) -> down(t) && !((row == 1 || row == 4) && within(t, 20, 40)))
                .diagnose(folder);
        assertFalse(kinds(diagnosis).contains("CHANNELS_SWAPPED[1, 8]"), FaultField.brief(diagnosis));
        assertTrue(kinds(diagnosis).contains("INTERMITTENT[8]"), FaultField.brief(diagnosis));
    }
}
