package io.rowledger.strip;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.rate.SteadyMotion;
import io.rowledger.rig.Band;
import io.rowledger.track.PoseColumns;
import io.rowledger.track.Poses;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The example of the room's package page, number by number. */
class StripWorkedExampleTest {
    private static final double HALF_DIGIT = 5.1e-8;

    @Test
    void a_bar_that_turns_30_degrees_sweeps_the_areas_worked_by_hand() {
        PoseColumns c = SteadyMotion.columns(1, 1);
        SteadyMotion.put(c, 0, 0, 0, 0);
        SteadyMotion.put(c, 1, 0.5, 2, Math.toRadians(30));
        Poses poses = new Poses(c);
        Strips strips = new Strips(poses, List.of(new Band(1, 0.5, -1, 2, 1, null), new Band(2, 4.5, 4, 5, 1, null)));
        assertCorner(-1, 0, poses, 0, strips.leftM(0));
        assertCorner(2, 0, poses, 0, strips.rightM(0));
        assertCorner(-0.3660254, 2.5, poses, 1, strips.leftM(0));
        assertCorner(2.2320508, 1, poses, 1, strips.rightM(0));
        assertEquals(5.2230762, strips.signedAreaM2(0, 0), HALF_DIGIT);
        assertCorner(3.9641016, 0, poses, 1, strips.leftM(1));
        assertCorner(4.8301270, -0.5, poses, 1, strips.rightM(1));
        assertEquals(-0.2589746, strips.signedAreaM2(0, 1), HALF_DIGIT);
    }

    @Test
    void neighboring_bands_add_up_to_the_band_that_holds_both() {
        PoseColumns c = SteadyMotion.columns(1, 1);
        SteadyMotion.put(c, 0, 0, 0, 0.2);
        SteadyMotion.put(c, 1, 0.3, 0.4, 0.7);
        Strips strips = new Strips(new Poses(c), SteadyMotion.bandsOfWidth(1, 2, 3));
        double sum = strips.signedAreaM2(0, 0) + strips.signedAreaM2(0, 1) + strips.signedAreaM2(0, 2);
        // Common edges are straight lines run once each way, so the sum is exact.
        assertEquals(strips.signedAreaM2(0, -3, 3), sum, 1e-15);
    }

    private static void assertCorner(double eastM, double northM, Poses poses, int pose, double rightM) {
        assertEquals(eastM, poses.eastM(pose, rightM), HALF_DIGIT);
        assertEquals(northM, poses.northM(pose, rightM), HALF_DIGIT);
    }
}
