package io.rowledger.diagnose.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.sim.SimFault;
import io.rowledger.text.Message;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Bare ground at the start of passes. */
class LateOnDetectorTest {
    @TempDir
    Path folder;

    @Test
    void a_row_that_comes_on_late_is_named_with_the_length_it_leaves_bare() {
        Diagnosis diagnosis = new FaultField().with(folder, SimFault.of(SimFault.Kind.LATE_ON, 8, 0, 2));
        Finding found = FaultField.only(diagnosis, FindingKind.LATE_ON, 8);
        // Two seconds at 2.3 m/s, and the valve's own 0.2 s.
        assertEquals(
                2.2 * FaultField.WORK_MPS, diagnosis.figures().get(0).get(0).value(), 0.6);
        assertEquals(
                Message.of("findings.side.right"), found.evidence().arguments().get(1));
    }

    @Test
    void a_bar_that_comes_on_late_concerns_all_rows() {
        FaultField.only(
                new FaultField().with(folder, SimFault.ofAll(SimFault.Kind.LATE_ON, 0, 1.5)), FindingKind.LATE_ON);
    }
}
