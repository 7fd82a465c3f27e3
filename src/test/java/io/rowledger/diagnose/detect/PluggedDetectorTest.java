package io.rowledger.diagnose.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.sim.LogFormat;
import io.rowledger.sim.SimFault;
import io.rowledger.text.Message;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A row that falls to almost nothing and stays, told from a dead meter and from a shut-off. */
class PluggedDetectorTest {
    @TempDir
    Path folder;

    @Test
    void a_plugged_row_is_named_with_its_onset_and_what_it_cost() {
        Diagnosis diagnosis =
                new FaultField().with(folder, SimFault.of(SimFault.Kind.PLUGGED, 3, FaultField.ONSET_S, 0.02));
        Finding found = FaultField.only(diagnosis, FindingKind.PLUGGED, 3);
        assertEquals(FaultField.startS() + FaultField.ONSET_S, found.fromS(), 2);
        // All but two percent of what the row should have had on the ground from the onset on: 42 gal/ac, 0.762 m.
        double due = found.areaM2() * 42 * 3.785411784 / 4046.8564224;
        assertEquals(-0.98 * due, found.volumeL(), 0.05 * due);
        // UAN 32-0-0 of 11.06 lb/gal holds 0.4241 kg N a liter.
        assertEquals(0.4241 * found.volumeL(), found.nitrogenKg(), 1e-3 * due);
    }

    @Test
    void two_neighbors_that_plug_together_are_one_finding() {
        SimFault both = new SimFault(SimFault.Kind.PLUGGED, List.of(6, 7), FaultField.ONSET_S, 1e9, 0.01, 0);
        FaultField.only(new FaultField().with(folder, both), FindingKind.PLUGGED, 6, 7);
    }

    @Test
    void rows_shut_off_over_covered_ground_are_not_plugged() {
        Diagnosis diagnosis = new FaultField().onLaps().with(folder);
        assertEquals(List.of(), diagnosis.findings(), FaultField.brief(diagnosis));
    }

    @Test
    void a_total_meter_that_moves_along_rules_the_dead_meter_out() {
        Diagnosis diagnosis = new FaultField()
                .logging(LogFormat.Column.TOTAL)
                .with(folder, SimFault.of(SimFault.Kind.PLUGGED, 3, FaultField.ONSET_S, 0.01));
        Finding found = FaultField.only(diagnosis, FindingKind.PLUGGED, 3);
        assertTrue(found.evidence().arguments().contains(Message.of("findings.total.moved")));
    }

    @Test
    void without_a_total_meter_the_dead_meter_stays_the_rival() {
        Diagnosis diagnosis =
                new FaultField().with(folder, SimFault.of(SimFault.Kind.METER_SCALE, 3, FaultField.ONSET_S, 0));
        Finding found = FaultField.only(diagnosis, FindingKind.PLUGGED, 3);
        assertEquals("findings.plugged.alternative.alone", found.alternative().key());
    }
}
