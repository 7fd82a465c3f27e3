package io.rowledger.diagnose.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.sim.SimFault;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A lasting excess. */
class LeakingDetectorTest {
    @TempDir
    Path folder;

    @Test
    void an_excess_of_12_percent_is_found() {
        SimFault leak = SimFault.of(SimFault.Kind.LEAKING, 1, FaultField.ONSET_S, 1.12);
        Diagnosis diagnosis = new FaultField().with(folder, leak);
        Finding found = FaultField.only(diagnosis, FindingKind.LEAKING, 1);
        assertEquals(FaultField.startS() + FaultField.ONSET_S, found.fromS(), 6);
        assertEquals(1.12, diagnosis.figures().get(0).get(0).value(), 0.015);
        assertTrue(found.volumeL() > 0);
    }
}
