package io.rowledger.diagnose.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.finding.FindingKind;
import io.rowledger.sim.LogFormat;
import io.rowledger.sim.SimFault;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A constant ratio from the first minute on. */
class MeterScaleDetectorTest {
    @TempDir
    Path folder;

    @Test
    void a_meter_that_reads_7_percent_low_throughout_is_told_from_a_restriction() {
        Diagnosis diagnosis = new FaultField().with(folder, SimFault.of(SimFault.Kind.METER_SCALE, 4, 0, 0.93));
        FaultField.only(diagnosis, FindingKind.METER_SCALE, 4);
        assertEquals(0.93, diagnosis.figures().get(0).get(0).value(), 0.01);
    }

    @Test
    void with_a_total_meter_a_true_shortage_from_the_start_is_a_restriction() {
        Diagnosis diagnosis = new FaultField()
                .logging(LogFormat.Column.TOTAL)
                .with(folder, SimFault.of(SimFault.Kind.RESTRICTED, 4, 0, 0.8));
        FaultField.only(diagnosis, FindingKind.RESTRICTED, 4);
    }
}
