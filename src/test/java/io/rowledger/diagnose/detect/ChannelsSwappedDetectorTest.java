package io.rowledger.diagnose.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.FaultField;
import io.rowledger.finding.Finding;
import io.rowledger.finding.FindingKind;
import io.rowledger.sim.MeteringModel;
import io.rowledger.sim.SimFault;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two rows that follow each other's places. */
class ChannelsSwappedDetectorTest {
    @TempDir
    Path folder;

    @Test
    void crossed_channels_show_in_turns() {
        SimFault crossed = new SimFault(SimFault.Kind.CHANNELS_SWAPPED, List.of(2, 7), 0, 1e9, 0, 0);
        FaultField.only(new FaultField().onArcs().with(folder, crossed), FindingKind.CHANNELS_SWAPPED, 2, 7);
    }

    @Test
    void crossed_channels_show_in_the_shut_off_of_a_bar_that_does_not_take_out_turns() {
        SimFault crossed = new SimFault(SimFault.Kind.CHANNELS_SWAPPED, List.of(2, 7), 0, 1e9, 0, 0);
        Diagnosis diagnosis = new FaultField()
                .onLaps()
                .metering(MeteringModel.perRow().withTurnCompensation(false))
                .with(folder, crossed);
        List<Finding> swapped = diagnosis.findings().stream()
                .filter(f -> f.kind() == FindingKind.CHANNELS_SWAPPED)
                .toList();
        assertEquals(1, swapped.size(), FaultField.brief(diagnosis));
        assertEquals(List.of(2, 7), swapped.get(0).rows());
        assertEquals(
                "findings.channels_swapped.evidence.shut_off",
                swapped.get(0).evidence().key());
        assertTrue(
                diagnosis.findings().stream()
                        .allMatch(f -> f.rows().isEmpty() || f.kind() == FindingKind.CHANNELS_SWAPPED),
                FaultField.brief(diagnosis));
    }
}
