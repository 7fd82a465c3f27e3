package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.sim.GnssModel;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.Scenarios;
import io.rowledger.sim.SimResult;
import io.rowledger.sim.Truth;
import io.rowledger.site.SitePage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.LongFunction;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The whole program, log file to figures, against the simulator's truth: an integrator of its own at 20 ms, ground on a
 * raster of 5 cm. The bounds are the project's own promise. The table of what came out is printed at the end.
 */
@Tag("slow")
class SimulatorTruthTest {
    private static final List<String> TABLE = new ArrayList<>();

    @TempDir
    Path folder;

    /** Fields by name; every one is run at each receiver. */
    private static final Map<String, LongFunction<Scenario>> FIELDS = new LinkedHashMap<>();

    static {
        FIELDS.put("straight, drawn", Scenarios::straightDrawn);
        FIELDS.put("straight, carried", Scenarios::straightCarried);
        FIELDS.put("contour, drawn", Scenarios::contourDrawn);
        FIELDS.put("contour, carried", Scenarios::contourCarried);
        FIELDS.put("headland laps, drawn", Scenarios::headlandLapsDrawn);
        FIELDS.put("headland laps, carried", Scenarios::headlandLapsCarried);
    }

    /**
     * Two with RTK; then decimeter noise: 10 cm that jumps from fix to fix, or 10 cm that drifts over minutes beneath 3 cm that
     * jumps.
     */
    private static final List<GnssModel> RECEIVERS = List.of(
            GnssModel.rtk(10),
            GnssModel.rtk(5),
            GnssModel.differential(1).withNoise(0.10, 0, 240),
            GnssModel.differential(1).withNoise(0.03, 0.10, 240));

    /** A drive a field, in the order of {@link #RECEIVERS}: what the machine did does not depend on the receiver that logs it. */
    private static final Map<String, List<SimResult>> DRIVES = new HashMap<>();

    static List<Arguments> fine() {
        return everyField(RECEIVERS.subList(0, 2));
    }

    static List<Arguments> coarse() {
        return everyField(RECEIVERS.subList(2, 4));
    }

    private static List<Arguments> everyField(List<GnssModel> receivers) {
        List<Arguments> all = new ArrayList<>();
        for (GnssModel receiver : receivers) {
            for (String field : FIELDS.keySet()) {
                all.add(Arguments.of(field, receiver));
            }
        }
        return all;
    }

    @ParameterizedTest
    @MethodSource("fine")
    void with_rtk_rows_volumes_and_ground_come_out_within_half_a_percent(String field, GnssModel receiver)
            throws IOException {
        Figures f = run(field, receiver);
        assertAll(
                () -> within("swept area of a row, %", f.sweptPct, 0.5),
                () -> within("metered volume of a row, %", f.volumePct, 0.5),
                () -> within("covered area, %", f.coveredPct, 0.3),
                () -> within(
                        "overlap, m2",
                        f.overlapM2,
                        Math.max(40, 0.05 * f.truth.ground().overlapM2())),
                () -> within(
                        "skips, m2",
                        f.skipM2,
                        Math.max(40, 0.05 * f.truth.ground().skipM2())),
                () -> within("mean turn error of a row, percentage points", f.turnPp, 0.3),
                () -> within("grid against log, %", f.gridPct, 0.1),
                () -> within("covered inside + skips against boundary, %", f.boundaryPct, 0.01));
    }

    @ParameterizedTest
    @MethodSource("coarse")
    void at_1_hz_with_decimetre_noise_areas_come_out_within_one_and_a_half_percent(String field, GnssModel receiver)
            throws IOException {
        Figures f = run(field, receiver);
        assertAll(
                () -> within("swept area of a row, %", f.sweptPct, 1.5),
                () -> within("covered area, %", f.coveredPct, 1.5),
                () -> within("grid against log, %", f.gridPct, 0.1),
                () -> within("covered inside + skips against boundary, %", f.boundaryPct, 0.01));
    }

    private static void within(String what, double error, double bound) {
        assertTrue(Math.abs(error) <= bound, what + ": off by " + error + ", allowed " + bound);
    }

    private Figures run(String field, GnssModel receiver) throws IOException {
        int at = RECEIVERS.indexOf(receiver);
        SimResult job = DRIVES.computeIfAbsent(
                        field, name -> FIELDS.get(name).apply(7).runFor(RECEIVERS.toArray(GnssModel[]::new)))
                .get(at)
                .writeTo(folder);
        Path boundary = folder.resolve("boundary.geojson");
        Analysis analysis = Pipeline.analyze(
                new JobFiles(
                        List.of(folder.resolve("log.csv")),
                        folder.resolve("rig.yaml"),
                        Files.exists(boundary) ? boundary : null),
                2,
                Progress.SILENT);
        Figures figures = new Figures(analysis, job.truth());
        TABLE.add(figures.line(field, receiver));
        return figures;
    }

    @AfterAll
    static void print_the_table() {
        DRIVES.clear();
        List<String> lines = new ArrayList<>(
                List.of(
                        "field                   receiver              swept  volume  turn    covered  overlap        skip",
                        "                                              %      %       pp      %        m2 (truth)     m2 (truth)"));
        lines.addAll(TABLE);
        String table = String.join("\n", lines);
        System.out.println("Against simulator truth (worst row; ground as a whole):\n" + table);
        if (Boolean.getBoolean("site.write")) {
            SitePage.write("accuracy", "simulator", SitePage.code(table));
        }
    }

    /** The errors of one run. */
    private static final class Figures {
        private final Truth truth;
        private double sweptPct;
        private double volumePct;
        private double turnPp;
        private final double coveredPct;
        private final double overlapM2;
        private final double skipM2;
        private final double gridPct;
        private final double boundaryPct;

        Figures(Analysis a, Truth truth) {
            this.truth = truth;
            for (int r = 0; r < truth.rows().size(); r++) {
                var row = a.rates().rows().get(r);
                Truth.Row real = truth.rows().get(r);
                sweptPct = worst(sweptPct, (row.sweptAreaM2() / real.sweptAreaM2() - 1) * 100);
                volumePct = worst(volumePct, (row.products().get(0).volumeL() / real.meteredL()[0] - 1) * 100);
                turnPp = worst(turnPp, (row.turn().meanAbs() - real.turn().meanAbs()) * 100);
            }
            var c = a.coverage();
            Truth.Ground ground = truth.ground();
            coveredPct = (c.coveredAreaM2() / ground.coveredM2() - 1) * 100;
            overlapM2 = c.overlapAreaM2() - ground.overlapM2();
            skipM2 = c.skipAreaM2() - ground.skipM2();
            gridPct = c.received().get(0).conservationError() * 100;
            double inside = c.coveredAreaM2() - c.outsideBoundaryM2();
            boundaryPct = ((inside + c.skipAreaM2()) / c.boundaryAreaM2() - 1) * 100;
        }

        private static double worst(double a, double b) {
            return Math.abs(b) > Math.abs(a) ? b : a;
        }

        String line(String field, GnssModel g) {
            String receiver = String.format(
                    Locale.ROOT, "%2.0f Hz, %.1f+%.0f cm", g.rateHz(), g.whiteM() * 100, g.driftM() * 100);
            return String.format(
                    Locale.ROOT,
                    "%-22s  %-19s  %+5.2f  %+5.2f  %+6.3f  %+7.3f  %+5.0f (%5.0f)  %+5.0f (%5.0f)",
                    field,
                    receiver,
                    sweptPct,
                    volumePct,
                    turnPp,
                    coveredPct,
                    overlapM2,
                    truth.ground().overlapM2(),
                    skipM2,
                    truth.ground().skipM2());
        }
    }
}
