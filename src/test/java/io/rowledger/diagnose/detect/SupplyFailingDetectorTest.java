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

/** All rows slide together, told from a supply at its limit. */
class SupplyFailingDetectorTest {
    @TempDir
    Path folder;

    @Test
    void a_supply_that_slides_to_half_is_told() {
        SimFault slide = SimFault.ofAll(SimFault.Kind.SUPPLY_FAILING, FaultField.ONSET_S, 0.5)
                .over(100);
        Diagnosis diagnosis = new FaultField().with(folder, slide);
        Finding found = FaultField.only(diagnosis, FindingKind.SUPPLY_FAILING);
        assertTrue(found.volumeL() < 0);
        assertEquals(0.5, diagnosis.figures().get(0).get(0).value(), 0.05);
    }

    @Test
    void a_supply_at_its_limit_is_not_failing() {
        double capLPerS = 42 * 3.785411784 / 4046.8564224 * FaultField.ROWS * 0.762 * 2.0;
        assertEquals(
                List.of(FindingKind.SUPPLY_LIMITED),
                new FaultField()
                        .with(folder, SimFault.ofAll(SimFault.Kind.SUPPLY_LIMITED, 0, capLPerS)).findings().stream()
                                .map(Finding::kind)
                                .toList());
    }
}
