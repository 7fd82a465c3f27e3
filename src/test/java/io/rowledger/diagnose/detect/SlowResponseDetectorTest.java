package io.rowledger.diagnose.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.finding.FindingKind;
import io.rowledger.sim.SimFault;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Flow that follows seconds late. */
class SlowResponseDetectorTest {
    @TempDir
    Path folder;

    @Test
    void the_time_constant_of_a_slow_bar_is_estimated() {
        Diagnosis diagnosis =
                new FaultField().targetSteps().with(folder, SimFault.ofAll(SimFault.Kind.SLOW_RESPONSE, 0, 4.5));
        FaultField.only(diagnosis, FindingKind.SLOW_RESPONSE);
        assertEquals(4.5, diagnosis.figures().get(0).get(0).value(), 1.6);
    }

    @Test
    void a_single_slow_row_is_told_from_the_other_rows() {
        Diagnosis diagnosis =
                new FaultField().targetSteps().with(folder, SimFault.of(SimFault.Kind.SLOW_RESPONSE, 3, 0, 5));
        FaultField.only(diagnosis, FindingKind.SLOW_RESPONSE, 3);
    }
}
