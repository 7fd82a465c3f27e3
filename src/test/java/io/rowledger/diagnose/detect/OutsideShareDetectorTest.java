package io.rowledger.diagnose.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.finding.FindingKind;
import io.rowledger.sim.SimFault;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Both outside rows off by a half, one and a half or two. */
class OutsideShareDetectorTest {
    @TempDir
    Path folder;

    @Test
    void outside_rows_at_half_their_band_are_one_finding() {
        Diagnosis diagnosis = new FaultField().with(folder, SimFault.ofAll(SimFault.Kind.OUTSIDE_SHARE, 0, 0.5));
        FaultField.only(diagnosis, FindingKind.OUTSIDE_SHARE, 1, 8);
        assertEquals(0.5, diagnosis.figures().get(0).get(0).value(), 0.01);
    }
}
