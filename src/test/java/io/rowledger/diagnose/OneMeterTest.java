package io.rowledger.diagnose;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.finding.FindingKind;
import io.rowledger.log.LogColumns;
import io.rowledger.log.LogTable;
import io.rowledger.log.Metering;
import io.rowledger.text.Message;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What one meter for the whole bar can show. */
class OneMeterTest {
    private static final LogTable NO_COMMANDS = new LogTable(new LogColumns(), List.of());

    private static Case early(List<Integer> rows) {
        Message words = Message.of("findings.early_off.check");
        return new Case(FindingKind.EARLY_OFF, rows, 0, 100, 0.7, new Case.Words(words, words, words), List.of(), null);
    }

    private static LogTable commanded() {
        LogColumns columns = new LogColumns();
        columns.on = new byte[][] {{1}, {1}};
        return new LogTable(columns, List.of());
    }

    /** The bar alone may go off early; a row only against its own command. */
    @Test
    void it_accuses_no_row_that_has_no_command_of_its_own() {
        List<Case> cases = List.of(early(List.of()), early(List.of(1)));
        assertEquals(cases.subList(0, 1), Diagnoses.tellable(cases, Metering.WHOLE_BAR, NO_COMMANDS));
        assertEquals(cases, Diagnoses.tellable(cases, Metering.WHOLE_BAR, commanded()));
        assertEquals(cases, Diagnoses.tellable(cases, Metering.PER_ROW, NO_COMMANDS));
    }

    @Test
    void a_total_in_coarse_steps_tells_no_swings() {
        Message words = Message.of("findings.hunting.check");
        Case swings = new Case(
                FindingKind.HUNTING, List.of(), 0, 100, 0.9, new Case.Words(words, words, words), List.of(), null);
        LogColumns columns = new LogColumns();
        columns.evenedS = 12;
        LogTable evened = new LogTable(columns, List.of());
        assertEquals(List.of(), Diagnoses.tellable(List.of(swings), Metering.PER_ROW, evened));
        assertEquals(List.of(swings), Diagnoses.tellable(List.of(swings), Metering.PER_ROW, NO_COMMANDS));
    }
}
