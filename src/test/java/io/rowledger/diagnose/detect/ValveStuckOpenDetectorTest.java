package io.rowledger.diagnose.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.sim.SimFault;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Flow while lifted, told from a stuck meter. */
class ValveStuckOpenDetectorTest {
    @TempDir
    Path folder;

    @Test
    void a_row_that_runs_while_lifted_is_named_with_what_it_lost() {
        Diagnosis diagnosis = new FaultField().with(folder, SimFault.of(SimFault.Kind.VALVE_STUCK_OPEN, 4, 0, 0.7));
        Finding found = FaultField.only(diagnosis, FindingKind.VALVE_STUCK_OPEN, 4);
        assertTrue(found.volumeL() > 1, "L: " + found.volumeL());
        assertEquals(0.7, diagnosis.figures().get(0).get(0).value(), 0.05);
    }

    @Test
    void a_meter_that_shows_one_value_lifted_and_working_is_stuck() {
        Diagnosis diagnosis =
                new FaultField().with(folder, SimFault.of(SimFault.Kind.METER_STUCK, 4, FaultField.ONSET_S, 0));
        assertEquals(
                List.of(FindingKind.METER_STUCK),
                diagnosis.findings().stream().map(Finding::kind).toList());
    }
}
