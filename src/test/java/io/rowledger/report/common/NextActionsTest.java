package io.rowledger.report.common;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.text.Messages;
import io.rowledger.report.common.NextActions.Action;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;

class NextActionsTest {
    private static List<Action> of(Analysis a) {
        Messages messages = Messages.english(new UnitFormat(UnitSystem.METRIC, ZoneOffset.UTC));
        return NextActions.of(a.findings(), a.coverage(), a.rates(), messages);
    }

    /** Figures by hand from {@link SyntheticJob}: 40 L lost, 5 skips of 200 m² and an overlap of 160 m² at 0.04 L/m². */
    @Test
    void actions_are_named_by_what_they_cost() {
        List<Action> actions = of(new SyntheticJob().withFinding().build());
        assertEquals(3, actions.size());
        assertEquals(40, actions.get(0).costL(), 1e-9);
        assertEquals(List.of(7), actions.get(0).rows());
        assertTrue(actions.get(0).text().contains("plugged"), actions.get(0).text());
        assertEquals(40, actions.get(1).costL(), 1e-9);
        assertEquals(List.of("S1", "S2", "S3", "S4", "S5"), actions.get(1).places());
        assertEquals(6.4, actions.get(2).costL(), 1e-9);
        assertEquals(List.of("O1"), actions.get(2).places());
    }

    @Test
    void a_sentence_names_a_few_places_and_the_list_has_all() {
        Action overlaps =
                of(new SyntheticJob().withFinding().extraPlaces(9).build()).get(2);
        assertEquals(10, overlaps.places().size());
        assertTrue(overlaps.text().contains("O5 and 5 more places"), overlaps.text());
    }

    @Test
    void an_even_job_asks_for_nothing() {
        assertEquals(List.of(), of(new SyntheticJob().withoutPasses().build()));
    }
}
