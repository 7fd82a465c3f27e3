package io.rowledger.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.Test;

/** Receiver and map against GeographicLib and the statistics asked for. */
class GnssTest {
    private static final LocalMap MAP = new LocalMap(41.5, -93.5);

    @Test
    void map_keeps_distances_within_a_tenth_of_a_millimetre_and_goes_back() {
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < 500; i++) {
            double[] a = {random.nextDouble(-1000, 1000), random.nextDouble(-1000, 1000)};
            double[] b = {random.nextDouble(-1000, 1000), random.nextDouble(-1000, 1000)};
            double[] p = MAP.latLonDeg(a[0], a[1]);
            double[] q = MAP.latLonDeg(b[0], b[1]);
            // GeographicLib's inverse geodesic, which the map does not use between these points.
            double s12 = Geodesic.WGS84.Inverse(p[0], p[1], q[0], q[1]).s12;
            assertEquals(Math.hypot(a[0] - b[0], a[1] - b[1]), s12, 1e-4);
            assertEquals(a[0], MAP.localM(p[0], p[1])[0], 1e-6);
            assertEquals(a[1], MAP.localM(p[0], p[1])[1], 1e-6);
        }
    }

    /** Per axis: {mean, standard deviation, lag-one correlation} of the position errors of a model. */
    private static double[][] errors(GnssModel model) {
        SimRig rig = SimRig.carried(8);
        PassPlan field = PassPlan.rectangle(350, 6, 0, rig.widthM());
        List<SimRecord> truth = record(new Scenario(4, rig, field).gnss(GnssModel.perfect(model.rateHz())));
        List<SimRecord> seen = record(new Scenario(4, rig, field).gnss(model));
        assertEquals(truth.size(), seen.size());
        double[][] sums = new double[2][3];
        double[] before = new double[2];
        int n = truth.size();
        for (int i = 0; i < n; i++) {
            double[] a = MAP.localM(truth.get(i).latDeg, truth.get(i).lonDeg);
            double[] b = MAP.localM(seen.get(i).latDeg, seen.get(i).lonDeg);
            for (int k = 0; k < 2; k++) {
                double error = b[k] - a[k];
                sums[k][0] += error / n;
                sums[k][1] += error * error / n;
                sums[k][2] += error * before[k] / n;
                before[k] = error;
            }
        }
        for (double[] s : sums) {
            s[2] /= s[1];
            s[1] = Math.sqrt(s[1] - s[0] * s[0]);
        }
        return sums;
    }

    private static List<SimRecord> record(Scenario scenario) {
        java.util.ArrayList<SimRecord> records = new java.util.ArrayList<>();
        new Simulation(scenario.withoutGround()).run(records::add);
        return records;
    }

    @Test
    void rtk_noise_is_white_with_its_own_size() {
        for (double[] axis : errors(GnssModel.rtk(10))) {
            assertEquals(0, axis[0], 4e-4);
            assertEquals(0.012, axis[1], 4e-4);
            assertEquals(0, axis[2], 0.03);
        }
    }

    @Test
    void differential_errors_drift_slowly_by_decimetres() {
        for (double[] axis : errors(GnssModel.differential(5))) {
            assertTrue(axis[2] > 0.8, "successive errors hang together: " + axis[2]);
            assertTrue(axis[1] > 0.05 && axis[1] < 0.5, "size " + axis[1]);
        }
    }

    @Test
    void losses_repeats_jumps_and_spells_are_counted_in_the_truth() {
        SimRig rig = SimRig.carried(8);
        GnssModel model = GnssModel.rtk(5)
                .withLosses(0.02, 0.01)
                .withJumps(List.of(new GnssModel.Jump(60, 12, -5, 2)))
                .withSpells(List.of(new GnssModel.Spell(100, 104, 0), new GnssModel.Spell(120, 130, 5)));
        SimResult result = new Scenario(4, rig, PassPlan.rectangle(350, 3, 0, rig.widthM()))
                .gnss(model)
                .withoutGround()
                .run();
        Truth.Flaws flaws = result.truth().flaws();
        double beats = result.truth().durationS() * 5 + 1;
        assertEquals(beats - flaws.leftOut() + flaws.repeated(), result.records(), 1e-6);
        assertEquals(0.02 * beats, flaws.leftOut(), 4 * Math.sqrt(0.02 * beats));
        assertEquals(0.01 * beats, flaws.repeated(), 4 * Math.sqrt(0.01 * beats));
        assertEquals(2, flaws.moved());
        assertEquals(20, flaws.withoutFix());
    }
}
