package io.rowledger.diagnose.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.sim.SimFault;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A lasting fraction of the other rows, at once or sliding there. */
class RestrictedDetectorTest {
    @TempDir
    Path folder;

    @Test
    void a_step_to_85_percent_is_found_within_seconds() {
        SimFault step = SimFault.of(SimFault.Kind.RESTRICTED, 5, FaultField.ONSET_S, 0.85)
                .until(FaultField.ONSET_S + 200);
        Finding found = FaultField.only(new FaultField().with(folder, step), FindingKind.RESTRICTED, 5);
        assertEquals(FaultField.startS() + FaultField.ONSET_S, found.fromS(), 4);
    }

    @Test
    void a_slow_slide_is_found_and_called_one() {
        SimFault slide = SimFault.of(SimFault.Kind.RESTRICTED, 2, FaultField.ONSET_S, 0.6)
                .over(120);
        Diagnosis diagnosis = new FaultField().with(folder, slide);
        Finding found = FaultField.only(diagnosis, FindingKind.RESTRICTED, 2);
        assertEquals("findings.restricted.evidence.slid", found.evidence().key());
        assertEquals(0.6, diagnosis.figures().get(0).get(0).value(), 0.05);
    }
}
