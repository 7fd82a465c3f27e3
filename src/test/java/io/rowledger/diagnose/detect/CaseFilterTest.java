package io.rowledger.diagnose.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.finding.FindingKind;
import io.rowledger.text.Message;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Which of two cases a reader is told. */
class CaseFilterTest {
    private static Case of(FindingKind kind, List<Integer> rows, double fromS, double toS, Figure... figures) {
        Message none = Message.of("findings.none");
        return new Case(kind, rows, fromS, toS, 0.9, new Case.Words(none, none, none), List.of(figures));
    }

    private static Case hunting(List<Integer> rows, double fromS, double toS, double swing) {
        return of(
                FindingKind.HUNTING,
                rows,
                fromS,
                toS,
                Figure.of("findings.figure.period", 12, "s"),
                Figure.of("findings.figure.swing", swing, "1"));
    }

    private static Case restricted(double fromS, double toS, double share) {
        return of(FindingKind.RESTRICTED, List.of(4), fromS, toS, Figure.of("findings.figure.peerShare", share, "1"));
    }

    @Test
    void a_row_that_swings_by_a_fifth_is_not_restricted_by_a_tenth_as_well() {
        Case swings = hunting(List.of(4), 100, 900, 0.2);
        assertEquals(List.of(swings), CaseFilter.of(List.of(restricted(300, 900, 0.9), swings)));
    }

    @Test
    void a_row_that_swings_by_a_tenth_may_be_restricted_by_a_third_as_well() {
        List<Case> both = List.of(restricted(300, 900, 0.67), hunting(List.of(4), 100, 900, 0.1));
        assertEquals(both, CaseFilter.of(both));
    }

    @Test
    void a_bar_at_the_limit_of_its_supply_does_not_hunt() {
        Case limited = of(FindingKind.SUPPLY_LIMITED, List.of(), 0, 900);
        assertEquals(List.of(limited), CaseFilter.of(List.of(hunting(List.of(), 100, 900, 0.15), limited)));
    }

    @Test
    void a_bar_that_hunted_before_its_supply_ran_short_did_both() {
        List<Case> both =
                List.of(hunting(List.of(), 0, 500, 0.15), of(FindingKind.SUPPLY_LIMITED, List.of(), 400, 900));
        assertEquals(both, CaseFilter.of(both));
    }
}
