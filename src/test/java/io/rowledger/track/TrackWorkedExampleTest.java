package io.rowledger.track;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.rig.Rig;
import org.junit.jupiter.api.Test;

/** The example of the room's package page, number by number. */
class TrackWorkedExampleTest {
    /** Half a unit of the last digit the page gives. */
    private static final double MICRON = 5.1e-7;

    @Test
    void two_metres_north_turn_a_machine_that_headed_60_degrees_as_worked_by_hand() {
        Rig rig = TestLogs.rig(2, 1, 4, 6, 4);
        TowingChain chain = new TowingChain(rig);
        PoseColumns c = new PoseColumns();
        c.timeS = new double[2];
        c.antennaEastM = new double[2];
        c.antennaNorthM = new double[2];
        c.headingRad = new double[2];
        c.hitchEastM = new double[2];
        c.hitchNorthM = new double[2];
        c.barHeadingRad = new double[2];
        c.barSin = new double[2];
        c.barCos = new double[2];
        c.dropEastM = new double[2];
        c.dropNorthM = new double[2];
        chain.place(0, 0, Math.toRadians(60));
        chain.store(c, 0, 0, 0);
        chain.moveTo(0, 2, true);
        chain.store(c, 1, 0, 2);
        Poses poses = new Poses(c);
        assertEquals(-2.598076, poses.hitchEastM(0), MICRON);
        assertEquals(-1.5, poses.hitchNorthM(0), MICRON);
        assertEquals(23.982318, Math.toDegrees(poses.headingRad(1)), MICRON);
        assertEquals(-1.219364, poses.hitchEastM(1), MICRON);
        assertEquals(-0.741013, poses.hitchNorthM(1), MICRON);
        assertEquals(60.379591, Math.toDegrees(poses.barHeadingRad(1)), MICRON);
        assertEquals(-6.435278, poses.dropEastM(1), MICRON);
        assertEquals(-3.706522, poses.dropNorthM(1), MICRON);
        assertEquals(-5.682038, poses.eastM(1, 1.524), MICRON);
        assertEquals(-5.031364, poses.northM(1, 1.524), MICRON);
    }

    @Test
    void the_drag_law_alone_gives_the_two_angles_of_the_example() {
        assertEquals(23.982318, Math.toDegrees(DragLaw.after(Math.toRadians(60), 0, 2, 2)), MICRON);
        double course = Math.toRadians(61.167019);
        double left = DragLaw.after(Math.toRadians(60), course, 1.573820, 4) - course;
        assertEquals(-0.787428, Math.toDegrees(left), 1e-6);
    }
}
