package io.rowledger.diagnose;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.diagnose.signal.RowTime;
import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.DeliveryBuilder;
import io.rowledger.rig.Rig;
import io.rowledger.stats.RobustStatistics;
import io.rowledger.strip.Strips;
import io.rowledger.track.TestLogs;
import io.rowledger.track.Track;
import io.rowledger.track.TrackBuilder;
import io.rowledger.track.TrackOptions;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** The example worked by hand in the package's description: five rows straight ahead, the third gives half. */
class DiagnoseWorkedExampleTest {
    private static final double[] FLOW_L_PER_S = {0.030, 0.031, 0.015, 0.029, 0.030};
    private static final double[] RATIO = {1, 1.0333, 0.5, 0.9667, 1};

    @Test
    void ratios_and_outlyingness_come_out_as_worked_by_hand() {
        Rig rig = TestLogs.rig(1.6, 0.9, Double.NaN, 2.6, 5);
        LogTable log = TestLogs.along(t -> new double[] {0, 2.3 * t}, 600, 5, 5, 0);
        for (int r = 0; r < 5; r++) {
            Arrays.fill(log.flowColumn(0, r), FLOW_L_PER_S[r]);
        }
        Track track = TrackBuilder.build(log, rig, TrackOptions.defaults());
        Strips strips = new Strips(track.poses(), rig.bands());
        Delivery delivery = DeliveryBuilder.build(log, rig, strips);
        RowTime picture =
                Diagnoses.of(log, rig, track, strips, delivery, 1).pictures().get(0);
        assertTrue(picture.bins() > 40);
        int middle = picture.bins() / 2;
        double[] ratio = new double[5];
        for (int r = 0; r < 5; r++) {
            ratio[r] = 1 + picture.deviation(r, middle);
            assertEquals(RATIO[r], ratio[r], 1e-4, "row " + (r + 1));
        }
        assertEquals(-10.1, RobustStatistics.modifiedZ(ratio[2], ratio), 0.02);
        assertTrue(Math.abs(RobustStatistics.modifiedZ(ratio[1], ratio)) < RobustStatistics.OUTLIER_Z);
    }
}
