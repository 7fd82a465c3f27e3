package io.rowledger.diagnose.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.finding.FindingKind;
import io.rowledger.sim.SimFault;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A sum that stays while speed goes on. */
class SupplyLimitedDetectorTest {
    @TempDir
    Path folder;

    @Test
    void the_speed_at_which_the_limit_begins_is_named() {
        double perM2 = 42 * 3.785411784 / 4046.8564224;
        double limitMps = 2.0;
        double cap = perM2 * FaultField.ROWS * 0.762 * limitMps;
        Diagnosis diagnosis = new FaultField().with(folder, SimFault.ofAll(SimFault.Kind.SUPPLY_LIMITED, 0, cap));
        FaultField.only(diagnosis, FindingKind.SUPPLY_LIMITED);
        assertEquals(limitMps, diagnosis.figures().get(0).get(0).value(), 0.03);
        assertTrue(diagnosis.figures().get(0).get(1).value() < limitMps);
    }
}
