package io.rowledger.diagnose.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.sim.LogFormat;
import io.rowledger.sim.SimFault;
import java.nio.file.Path;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Zeros that come and go at once. */
class MeterDropoutDetectorTest {
    @TempDir
    Path folder;

    @Test
    void zeros_that_come_and_go_are_the_meters_and_not_a_plugged_row() {
        SimFault dropout = SimFault.of(SimFault.Kind.METER_DROPOUT, 6, 60, 0.2);
        Diagnosis diagnosis = new FaultField().with(folder, dropout);
        FaultField.only(diagnosis, FindingKind.METER_DROPOUT, 6);
        assertEquals(0.2, diagnosis.figures().get(0).get(0).value(), 0.08);
    }

    @Test
    void a_meter_that_died_while_the_total_did_not_move_is_no_plugged_row() {
        Diagnosis diagnosis = new FaultField()
                .logging(LogFormat.Column.TOTAL)
                .with(folder, SimFault.of(SimFault.Kind.METER_SCALE, 3, FaultField.ONSET_S, 0));
        Finding found = FaultField.only(diagnosis, FindingKind.METER_DROPOUT, 3);
        assertEquals(FaultField.startS() + FaultField.ONSET_S, found.fromS(), 2);
        assertEquals("findings.meter_dropout.evidence.dead", found.evidence().key());
    }

    @Test
    void a_plugged_row_beside_a_dead_meter_stays_plugged() {
        Diagnosis diagnosis = new FaultField()
                .logging(LogFormat.Column.TOTAL)
                .with(
                        folder,
                        SimFault.of(SimFault.Kind.METER_SCALE, 3, FaultField.ONSET_S, 0),
                        SimFault.of(SimFault.Kind.PLUGGED, 6, FaultField.ONSET_S + 120, 0.01));
        assertEquals(
                Set.of("METER_DROPOUT[3]", "PLUGGED[6]"),
                diagnosis.findings().stream().map(f -> f.kind() + "" + f.rows()).collect(Collectors.toSet()),
                FaultField.brief(diagnosis));
    }
}
