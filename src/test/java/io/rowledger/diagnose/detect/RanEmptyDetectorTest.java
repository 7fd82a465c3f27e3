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

/** All rows fall to nothing and driving goes on. */
class RanEmptyDetectorTest {
    @TempDir
    Path folder;

    @Test
    void a_tank_that_runs_empty_inside_a_pass_is_told_with_its_time() {
        Diagnosis diagnosis =
                new FaultField().with(folder, SimFault.ofAll(SimFault.Kind.RAN_EMPTY, FaultField.ONSET_S, 0));
        Finding found = FaultField.only(diagnosis, FindingKind.RAN_EMPTY);
        assertEquals(FaultField.startS() + FaultField.ONSET_S, found.fromS(), 3);
        assertTrue(found.volumeL() < 0);
    }

    @Test
    void a_supply_that_slides_did_not_run_empty() {
        SimFault slide = SimFault.ofAll(SimFault.Kind.SUPPLY_FAILING, FaultField.ONSET_S, 0.4)
                .over(120);
        assertEquals(
                List.of(FindingKind.SUPPLY_FAILING),
                new FaultField()
                        .with(folder, slide).findings().stream()
                                .map(Finding::kind)
                                .toList());
    }
}
