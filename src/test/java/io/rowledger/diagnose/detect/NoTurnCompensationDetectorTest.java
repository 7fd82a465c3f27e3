package io.rowledger.diagnose.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.finding.FindingKind;
import io.rowledger.sim.MeteringModel;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Flows alike across the bar while speeds differ. */
class NoTurnCompensationDetectorTest {
    @TempDir
    Path folder;

    @Test
    void a_bar_that_follows_one_speed_shows_on_arcs() {
        MeteringModel uniform = MeteringModel.perRow().withShutOff(false).withTurnCompensation(false);
        FaultField.only(new FaultField().onArcs().metering(uniform).with(folder), FindingKind.NO_TURN_COMPENSATION);
    }

    @Test
    void a_bar_that_compensates_shows_nothing_there() {
        Diagnosis diagnosis = new FaultField().onArcs().with(folder);
        assertEquals(List.of(), diagnosis.findings(), FaultField.brief(diagnosis));
    }
}
