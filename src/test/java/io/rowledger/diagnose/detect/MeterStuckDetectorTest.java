package io.rowledger.diagnose.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.diagnose.FaultField;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.sim.SimFault;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One value whatever speed and shut-off do. */
class MeterStuckDetectorTest {
    @TempDir
    Path folder;

    @Test
    void a_frozen_reading_is_found_to_the_record() {
        SimFault stuck =
                SimFault.of(SimFault.Kind.METER_STUCK, 2, FaultField.ONSET_S, 0).until(FaultField.ONSET_S + 150);
        Finding found = FaultField.only(new FaultField().with(folder, stuck), FindingKind.METER_STUCK, 2);
        assertEquals(FaultField.startS() + FaultField.ONSET_S, found.fromS(), 0.5);
        assertEquals(FaultField.startS() + FaultField.ONSET_S + 150, found.toS(), 0.5);
    }
}
