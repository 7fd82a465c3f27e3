package io.rowledger.diagnose.detect;

import static io.rowledger.diagnose.detect.HandMadeFlows.LIFTED_S;
import static io.rowledger.diagnose.detect.HandMadeFlows.PASSES;
import static io.rowledger.diagnose.detect.HandMadeFlows.PERIOD_S;
import static io.rowledger.diagnose.detect.HandMadeFlows.ROWS;
import static io.rowledger.diagnose.detect.HandMadeFlows.down;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.diagnose.Deviation;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.detect.HandMadeFlows.Flow;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What findings cost, on flows written down by hand: each liter that is too little against the target is charged once, to the
 * finding that made it lack; what no finding explains is told as such. Passes run at 5 mph give or take 4 %, so a row is due
 * 42 · 5 · 30 / 5940 = 1.0606 gal/min, and in the 100 s of a pass, in which the swing of 31 s leaves a rest, 6.683 L.
 */
class CostSplitTest {
    private static final double ROW_PASS_L = rowPassL();

    /** From the third pass on: four of six. */
    private static final double ONSET_S = 2 * PERIOD_S;

    @TempDir
    Path folder;

    private Diagnosis of(Flow flow) {
        return new HandMadeFlows(flow)
                .withEqualMeters()
                .speeds(5, 5, 5, 5, 5, 5)
                .diagnose(folder);
    }

    private static double costL(Diagnosis diagnosis, FindingKind kind) {
        return diagnosis.findings().stream()
                .filter(x -> x.kind() == kind)
                .mapToDouble(Finding::volumeL)
                .sum();
    }

    private static double allL(Diagnosis diagnosis) {
        return diagnosis.findings().stream().mapToDouble(Finding::volumeL).sum()
                + diagnosis.unexplained().stream()
                        .mapToDouble(Deviation::volumeL)
                        .sum();
    }

    @Test
    void a_restricted_row_is_charged_what_it_gave_less() {
        // 40 % of four passes of one row: 0.4 · 4 · 6.683 L = 10.69 L.
        Diagnosis diagnosis = of((row, t, due) -> row == 6 && t >= ONSET_S ? 0.6 * due : due);
        assertEquals(-0.4 * 4 * ROW_PASS_L, costL(diagnosis, FindingKind.RESTRICTED), 0.02 * ROW_PASS_L * 4);
        assertEquals(costL(diagnosis, FindingKind.RESTRICTED), allL(diagnosis), 1e-9);
    }

    @Test
    void a_plugged_row_beside_a_failing_supply_shares_what_lacks() {
        // All rows slide to 70 % within the third pass; row 6 plugs in the fourth. Row 6 would have given 70 % of three
        // passes:
        // that is the plug's; the rest that lacks is the supply's.
        Flow flow = (row, t, due) -> {
            double s = Math.max(0, Math.min(1, (t - ONSET_S - 20) / 60));
            return t >= 3 * PERIOD_S && row == 6 ? 0 : (1 - 0.3 * s) * due;
        };
        Diagnosis diagnosis = of(flow);
        double lackL = lackL(flow);
        assertEquals(-0.7 * 3 * ROW_PASS_L, costL(diagnosis, FindingKind.PLUGGED), 0.06 * 3 * ROW_PASS_L);
        double supplyL = lackL + 0.7 * 3 * ROW_PASS_L;
        assertEquals(supplyL, costL(diagnosis, FindingKind.SUPPLY_FAILING), 0.05 * Math.abs(supplyL));
        assertEquals(lackL, allL(diagnosis), 0.04 * Math.abs(lackL));
    }

    @Test
    void a_low_bar_without_a_cause_is_told_with_its_liquid() {
        // Every row 10 % short throughout, as after a wrong calibration: 0.1 · 8 · 6 · 6.683 L = 32.1 L.
        Diagnosis diagnosis = of((row, t, due) -> 0.9 * due);
        assertTrue(diagnosis.findings().isEmpty(), diagnosis.findings().toString());
        assertEquals(1, diagnosis.unexplained().size());
        Deviation bar = diagnosis.unexplained().get(0);
        assertEquals(0, bar.row());
        assertEquals(-0.1, bar.fraction(), 0.002);
        // Valves' and smoothing times at both ends of a pass are not evaluated.
        assertEquals(-0.1 * ROWS * PASSES * ROW_PASS_L, bar.volumeL(), 0.06 * ROWS * PASSES * ROW_PASS_L * 0.1);
        assertTrue(!diagnosis.allClear());
    }

    @Test
    void a_low_bar_and_a_restricted_row_add_up_once() {
        // All rows 10 % short, row 2 at half of that from the third pass on.
        Flow flow = (row, t, due) -> (row == 2 && t >= ONSET_S ? 0.45 : 0.9) * due;
        Diagnosis diagnosis = of(flow);
        assertEquals(-0.45 * 4 * ROW_PASS_L, costL(diagnosis, FindingKind.RESTRICTED), 0.03 * 4 * ROW_PASS_L);
        assertEquals(lackL(flow), allL(diagnosis), 0.05 * Math.abs(lackL(flow)));
    }

    /** What a row is due in a second, L. */
    private static double dueL(double timeS) {
        double swing = 1 + 0.04 * Math.sin(2 * Math.PI / 31 * (timeS % PERIOD_S));
        return 42.0 * 5 * swing * 30 / 5940 * 3.785411784 / 60;
    }

    private static double rowPassL() {
        double sum = 0;
        for (int t = 0; t < PERIOD_S; t++) {
            sum += down(t) ? dueL(t) : 0;
        }
        return sum;
    }

    /** What a flow lacks against the target over the job, by the second, L; negative. */
    private static double lackL(Flow flow) {
        double sum = 0;
        for (int t = 0; t < PASSES * PERIOD_S; t++) {
            for (int row = 1; row <= ROWS && down(t); row++) {
                sum += flow.galPerMin(row, t, dueL(t)) - dueL(t);
            }
        }
        return sum;
    }

    /**
     * From the middle of the third pass on every row gives 8 % less: 4.7 % of the job, which is within 5 % of the target, but 350 s
     * of work that no cause explains.
     */
    @Test
    void a_bar_that_falls_short_in_a_part_of_the_job_is_told_with_its_times() {
        double fallsS = 2 * PERIOD_S + LIFTED_S + 50;
        Diagnosis diagnosis = new HandMadeFlows((row, t, due) -> t >= fallsS ? 0.92 * due : due).diagnose(folder);
        assertEquals(List.of(), diagnosis.findings());
        assertEquals(1, diagnosis.unexplained().size(), diagnosis.unexplained().toString());
        Deviation bar = diagnosis.unexplained().get(0);
        assertEquals(0, bar.row());
        assertEquals(-0.08, bar.fraction(), 0.003);
        assertEquals(HandMadeFlows.START_S + fallsS, bar.fromS(), 10);
        assertFalse(diagnosis.allClear());
    }

    /** The same of 4 %, which meters may differ by. */
    @Test
    void a_bar_that_gives_a_little_less_in_a_part_of_the_job_is_not_told() {
        Diagnosis diagnosis = new HandMadeFlows((row, t, due) -> t >= 3 * PERIOD_S ? 0.96 * due : due).diagnose(folder);
        assertEquals(List.of(), diagnosis.unexplained());
    }
}
