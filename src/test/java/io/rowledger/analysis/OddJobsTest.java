package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.coverage.Coverage;
import io.rowledger.rate.RowTotals;
import io.rowledger.sim.GnssModel;
import io.rowledger.sim.LogFormat;
import io.rowledger.sim.MeteringModel;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.Scenarios;
import io.rowledger.sim.SimProduct;
import io.rowledger.sim.SimResult;
import io.rowledger.sim.SimRig;
import io.rowledger.sim.Truth;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Everything a log may be besides plain, against the simulator's truth: two products, flow lag, no work state, outside
 * shares, lost and jumping fixes, backing, side offsets. With RTK the promise is the same as for the plain job.
 */
@Tag("slow")
class OddJobsTest {
    private static final SimRig DRAWN = SimRig.drawn(12);

    @TempDir
    Path folder;

    private static Scenario lapAndPasses(long seed, SimRig rig) {
        return new Scenario(seed, rig, PassPlan.rectangle(240, 6, 1, rig.widthM()));
    }

    private static Map<String, Supplier<Scenario>> jobs() {
        Map<String, Supplier<Scenario>> jobs = new TreeMap<>();
        jobs.put("two products", () -> lapAndPasses(11, DRAWN).products(SimProduct.uan32(42), SimProduct.ats(5)));
        jobs.put(
                "a meter 1.2 s late",
                () -> lapAndPasses(12, DRAWN).products(SimProduct.uan32(42).withFlowLag(1.2)));
        jobs.put(
                "no work state in the log",
                () -> Scenarios.headlandLapsDrawn(13)
                        .format(LogFormat.customaryUnits().without(LogFormat.Column.DOWN)));
        jobs.put(
                "outside knives with half a share",
                () -> lapAndPasses(14, DRAWN.withRows(13, SimRig.THIRTY_INCH_M, 0.5)));
        jobs.put(
                "outside knives with one and a half",
                () -> lapAndPasses(15, DRAWN.withRows(10, SimRig.THIRTY_INCH_M, 1.5)));
        jobs.put("20 Hz", () -> Scenarios.contourCarried(16).gnss(GnssModel.rtk(20)));
        jobs.put(
                "records missing and repeated",
                () -> lapAndPasses(17, DRAWN).gnss(GnssModel.rtk(5).withLosses(0.02, 0.01)));
        jobs.put(
                "fixes that jump",
                () -> lapAndPasses(18, DRAWN)
                        .gnss(GnssModel.rtk(5)
                                .withJumps(List.of(
                                        new GnssModel.Jump(200, 12, -30, 3), new GnssModel.Jump(500, 400, 0, 1)))));
        jobs.put(
                "a minute of float",
                () -> lapAndPasses(19, DRAWN)
                        .gnss(GnssModel.rtk(5).withSpells(List.of(new GnssModel.Spell(400, 460, 5)))));
        jobs.put(
                "backing up between passes",
                () -> new Scenario(
                        20, DRAWN, PassPlan.rectangle(240, 6, 0, DRAWN.widthM()).backingUpAfter(2, 4)));
        jobs.put(
                "antenna and bar off centre",
                () -> lapAndPasses(21, DRAWN.withAntenna(2.2, 0.4).withBarRight(-0.3)));
        jobs.put("antenna over the axle", () -> lapAndPasses(25, DRAWN.withAntenna(0, 0)));
        jobs.put("no turn compensation", () -> Scenarios.contourDrawn(22).metering(MeteringModel.wholeBar()));
        jobs.put("a slow drift of RTK", () -> lapAndPasses(23, DRAWN).gnss(GnssModel.rtkDrifting(5)));
        jobs.put("metric units", () -> Scenarios.contourCarried(24).format(LogFormat.metricUnits()));
        jobs.put(
                "at a walking pace",
                () -> new Scenario(
                                26,
                                DRAWN,
                                PassPlan.rectangle(120, 4, 1, DRAWN.widthM()).speeds(0.7, 0.7, 0.6))
                        .gnss(GnssModel.rtk(10)));
        return jobs;
    }

    @TestFactory
    Stream<DynamicTest> odd_jobs_come_out_as_well_as_plain_ones() {
        return jobs().entrySet().stream()
                .map(job -> DynamicTest.dynamicTest(
                        job.getKey(), () -> holds(job.getValue().get(), folder.resolve(job.getKey()))));
    }

    private static void holds(Scenario scenario, Path folder) throws IOException {
        SimResult job = scenario.run().writeTo(folder);
        Path boundary = folder.resolve("boundary.geojson");
        Analysis a = Pipeline.analyze(
                new JobFiles(
                        List.of(folder.resolve("log.csv")),
                        folder.resolve("rig.yaml"),
                        Files.exists(boundary) ? boundary : null),
                2,
                Progress.SILENT);
        Truth truth = job.truth();
        for (int r = 0; r < truth.rows().size(); r++) {
            row(a.rates().rows().get(r), truth.rows().get(r));
        }
        Coverage c = a.coverage();
        Truth.Ground ground = truth.ground();
        assertAll(
                () -> assertEquals(ground.coveredM2(), c.coveredAreaM2(), 0.003 * ground.coveredM2(), "covered"),
                () -> near("overlap", ground.overlapM2(), c.overlapAreaM2()),
                () -> near("skips", ground.skipM2(), c.skipAreaM2()),
                () -> assertEquals(0, c.received().get(0).conservationError(), 0.001, "grid against log"));
    }

    private static void row(RowTotals row, Truth.Row real) {
        String name = "row " + row.row();
        assertEquals(real.sweptAreaM2(), row.sweptAreaM2(), 0.005 * real.sweptAreaM2(), name + " swept");
        for (int p = 0; p < real.meteredL().length; p++) {
            double metered = real.meteredL()[p];
            assertEquals(metered, row.products().get(p).volumeL(), 0.005 * metered, name + " product " + p);
        }
        assertEquals(real.turn().meanAbs(), row.turn().meanAbs(), 0.003, name + " turn error");
        assertEquals(
                real.turnRemaining().meanAbs(), row.turnRemaining().meanAbs(), 0.003, name + " turn error remaining");
    }

    private static void near(String what, double real, double found) {
        assertTrue(Math.abs(found - real) <= Math.max(40, 0.05 * real), what + ": " + found + ", really " + real);
    }
}
