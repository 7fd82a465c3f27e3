package io.rowledger.diagnose.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.diagnose.JobOnDisk;
import io.rowledger.diagnose.signal.Case;
import io.rowledger.diagnose.signal.EvaluationMask;
import io.rowledger.diagnose.signal.Evidence;
import io.rowledger.diagnose.signal.FlowRatios;
import io.rowledger.diagnose.signal.LogLimits;
import io.rowledger.diagnose.signal.TurnShares;
import io.rowledger.diagnose.signal.WorkingSamples;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.sim.MeteringModel;
import java.nio.file.Path;
import java.util.ArrayList;
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

    /**
     * What is told of ten stretches of turning that weigh alike, from the fourth on so many in a row in which a tenth of the turn was
     * taken out, and all of it in the others.
     */
    private List<Case> without(int stretches) {
        new FaultField().onArcs().write(folder);
        JobOnDisk.Job job = JobOnDisk.read(folder, "log.csv");
        LogLimits limits = LogLimits.of(job.log(), 0, job.rig().rows());
        WorkingSamples work = WorkingSamples.of(job.track(), job.strips(), limits.smearS());
        EvaluationMask evaluated = EvaluationMask.of(job.log(), work, job.strips(), job.delivery(), limits.smearS());
        FlowRatios ratios = new FlowRatios(0, work, job.rig(), evaluated, job.delivery(), limits);
        ratios.computeRatios();
        List<TurnShares.Block> blocks = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            double share = i >= 3 && i < 3 + stretches ? 0.1 : 1;
            blocks.add(new TurnShares.Block(i * work.n / 10, (i + 1) * work.n / 10, share, 0.1, 1));
        }
        return new NoTurnCompensationDetector()
                .find(new Evidence(job.log(), job.strips(), job.delivery(), ratios, blocks));
    }

    @Test
    void a_bar_without_compensation_in_fewer_than_half_of_its_turns_is_told_with_little_confidence() {
        List<Case> some = without(4);
        assertEquals(1, some.size());
        assertEquals(0.6, some.get(0).confidence());
        List<Case> most = without(6);
        assertEquals(1, most.size());
        assertEquals(0.97, most.get(0).confidence());
    }

    @Test
    void a_bar_without_compensation_in_two_turns_of_ten_shows_nothing() {
        assertEquals(List.of(), without(2));
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
