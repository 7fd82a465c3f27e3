package io.rowledger.diagnose;

import io.rowledger.finding.FindingKind;
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
}
