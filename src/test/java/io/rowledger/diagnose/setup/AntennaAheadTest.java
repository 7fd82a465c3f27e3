package io.rowledger.diagnose.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.geo.LocalPlane;
import io.rowledger.rig.Rig;
import io.rowledger.rig.RigReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AntennaAheadTest {
    @TempDir
    Path folder;

    /** The rear axle runs straight, then half around a circle of 9 m, and so on at 1.8 m/s; the antenna sits 2 m ahead. */
    private static String log(double aheadM) {
        StringBuilder b = new StringBuilder(
                "epoch_s,lat,lon,down,fix,yaw_rate[deg/s],flow_01[L/min],flow_02[L/min],flow_03[L/min],flow_04[L/min]\n");
        LocalPlane plane = new LocalPlane(41.5, -93.5);
        double[] degrees = new double[2];
        double east = 0;
        double north = 0;
        double heading = 0;
        double dt = 0.01;
        for (int n = 0; n < 60_000; n++) {
            double phase = (n * dt) % 60;
            double side = ((int) (n * dt / 60)) % 2 == 0 ? 1 : -1;
            // A circle of 9 m at 1.8 m/s turns 0.2 rad/s; reached and left within two seconds, as a person steers.
            double shape = Math.max(0, Math.min(1, Math.min((phase - 30) / 2, (47.7 - phase) / 2)));
            double turn = side * 0.2 * shape;
            if (n % 20 == 0) {
                plane.inverse(east + aheadM * Math.sin(heading), north + aheadM * Math.cos(heading), degrees);
                b.append(String.format(
                        Locale.ROOT,
                        "%.2f,%.10f,%.10f,%d,4,%.5f,3,3,3,3%n",
                        1_780_000_000 + n * dt,
                        degrees[0],
                        degrees[1],
                        phase < 28 ? 1 : 0,
                        Math.toDegrees(turn)));
            }
            heading += turn * dt / 2;
            east += 1.8 * dt * Math.sin(heading);
            north += 1.8 * dt * Math.cos(heading);
            heading += turn * dt / 2;
        }
        return b.toString();
    }

    @Test
    void the_course_in_turns_tells_how_far_ahead_of_the_axle_the_antenna_is() throws IOException {
        Path file = Files.writeString(folder.resolve("log.csv"), log(2));
        Rig rig = RigReader.ofText(
                "rig.yaml", HandMadeLog.rig("5 m", "0 m", "0 s").replace("axle: 0 m", "axle: 0.6 m"));
        SetupMeasurement m = Checking.of(Checking.log(file, rig), rig).measurements().stream()
                .filter(x -> x.parameter() == SetupParameter.ANTENNA_AHEAD)
                .findFirst()
                .orElseThrow();
        assertEquals(2, m.estimate(), 0.05);
        assertTrue(m.differs());
        assertEquals(0.6, m.given());
    }
}
