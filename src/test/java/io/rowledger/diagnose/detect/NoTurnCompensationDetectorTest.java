package io.rowledger.diagnose.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.finding.Finding;
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

    /**
     * On a circle of 20 m of the rear axle the wheels of a bar with hitch 0.9 m behind it and wheels 4.4 m behind that run on
     * √(20² + 0.9² − 4.4²) = 19.53 m, and a row y to the right at 1 − y / 19.53 of the bar's speed. Flows that stay alike give it
     * 1 / (1 − y / 19.53): off by more than 10 % where y is beyond 1.78 m inside or 2.17 m outside. Of rows at 0.381, 1.143, 1.905
     * and 2.667 m to either side that are two inside and one outside, on (0.9025 + 0.8634 + 1.1366) / 8 = 36.3 % of the ground.
     */
    @Test
    void a_tight_circle_without_compensation_puts_a_third_of_the_ground_off() {
        Diagnosis diagnosis = new FaultField()
                .onCircle(20)
                .metering(MeteringModel.perRow().withShutOff(false).withTurnCompensation(false))
                .with(folder);
        Finding found = FaultField.only(diagnosis, FindingKind.NO_TURN_COMPENSATION);
        assertFalse(diagnosis.alsoNoticed().get(0));
        double lengthM = 2 * Math.PI * 19.53 * (3 - 0.25) - 8;
        assertEquals(0.363, found.areaM2() / (lengthM * FaultField.ROWS * 0.762), 0.02);
    }

    /** On 60 m the wheels run on 59.85 m and the outermost rows are off by 2.667 / 59.85 = 4.5 %: nothing to act on. */
    @Test
    void a_wide_circle_without_compensation_is_only_noticed() {
        Diagnosis diagnosis = new FaultField()
                .onCircle(60)
                .metering(MeteringModel.perRow().withShutOff(false).withTurnCompensation(false))
                .with(folder);
        assertEquals(
                0, FaultField.only(diagnosis, FindingKind.NO_TURN_COMPENSATION).areaM2());
        assertTrue(diagnosis.alsoNoticed().get(0));
        assertTrue(diagnosis.allClear());
    }
}
