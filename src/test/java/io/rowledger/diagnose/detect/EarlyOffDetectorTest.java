package io.rowledger.diagnose.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.finding.FindingKind;
import io.rowledger.sim.SimFault;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Bare ground at the end of passes. */
class EarlyOffDetectorTest {
    @TempDir
    Path folder;

    @Test
    void rows_that_go_off_early_together_are_one_finding() {
        SimFault early = new SimFault(SimFault.Kind.EARLY_OFF, List.of(1, 2), 0, 1e9, 1.8, 0);
        Diagnosis diagnosis = new FaultField().with(folder, early);
        FaultField.only(diagnosis, FindingKind.EARLY_OFF, 1, 2);
        // 1.8 s at 2.3 m/s, less what the valve takes.
        assertEquals(
                1.7 * FaultField.WORK_MPS, diagnosis.figures().get(0).get(0).value(), 0.6);
    }
}
