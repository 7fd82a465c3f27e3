package io.rowledger.diagnose;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.finding.FindingKind;
import io.rowledger.sim.SimFault;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Zeros that come and go at once. */
class MeterDropoutDetectorTest {
    @TempDir
    Path folder;

    @Test
    void zeros_that_come_and_go_are_the_meters_and_not_a_plugged_row() {
        SimFault dropout = SimFault.of(SimFault.Kind.METER_DROPOUT, 6, 60, 0.2);
        Diagnosis diagnosis = new FaultField().with(folder, dropout);
        FaultField.only(diagnosis, FindingKind.METER_DROPOUT, 6);
        assertEquals(0.2, diagnosis.figures().get(0).get(0).value(), 0.08);
    }
}
