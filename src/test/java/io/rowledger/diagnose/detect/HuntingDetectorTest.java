package io.rowledger.diagnose.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.sim.SimFault;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A swing with one period. */
class HuntingDetectorTest {
    @TempDir
    Path folder;

    @Test
    void the_period_and_swing_of_a_hunting_bar_are_named() {
        Diagnosis diagnosis = new FaultField()
                .with(folder, SimFault.ofAll(SimFault.Kind.HUNTING, 0, 0.15).over(6));
        FaultField.only(diagnosis, FindingKind.HUNTING);
        assertEquals(6, diagnosis.figures().get(0).get(0).value(), 0.2);
        assertEquals(0.15, diagnosis.figures().get(0).get(1).value(), 0.02);
    }

    @Test
    void one_hunting_row_is_told_from_the_bar() {
        SimFault row = SimFault.of(SimFault.Kind.HUNTING, 5, 0, 0.2).over(8);
        FaultField.only(new FaultField().with(folder, row), FindingKind.HUNTING, 5);
    }

    @Test
    void a_swing_that_begins_and_ends_in_the_middle_of_the_job_is_framed_to_a_period() {
        SimFault swing = SimFault.ofAll(SimFault.Kind.HUNTING, FaultField.ONSET_S, 0.2)
                .over(6)
                .until(FaultField.ONSET_S + 250);
        Finding found = FaultField.only(new FaultField().with(folder, swing), FindingKind.HUNTING);
        assertEquals(FaultField.startS() + FaultField.ONSET_S, found.fromS(), 6);
        assertEquals(FaultField.startS() + FaultField.ONSET_S + 250, found.toS(), 6);
    }
}
