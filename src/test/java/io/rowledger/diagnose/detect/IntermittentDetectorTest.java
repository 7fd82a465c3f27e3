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

/** Spells of nothing, told from a plugged row and from a meter that drops out. */
class IntermittentDetectorTest {
    @TempDir
    Path folder;

    @Test
    void a_row_that_comes_and_goes_is_named() {
        SimFault spells = SimFault.of(SimFault.Kind.INTERMITTENT, 5, 20, 0.25).over(60);
        Diagnosis diagnosis = new FaultField().with(folder, spells);
        FaultField.only(diagnosis, FindingKind.INTERMITTENT, 5);
        assertTrue(diagnosis.findings().get(0).volumeL() < 0);
    }

    @Test
    void a_row_that_stays_down_is_plugged() {
        Diagnosis diagnosis =
                new FaultField().with(folder, SimFault.of(SimFault.Kind.PLUGGED, 5, FaultField.ONSET_S, 0.02));
        assertEquals(
                List.of(FindingKind.PLUGGED),
                diagnosis.findings().stream().map(Finding::kind).toList());
    }
}
