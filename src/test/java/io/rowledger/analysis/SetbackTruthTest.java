package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.setback.Setback;
import io.rowledger.setback.Setbacks;
import io.rowledger.sim.GnssModel;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.Scenarios;
import io.rowledger.sim.SimKeepOut;
import io.rowledger.sim.SimKeepOut.Kind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Volumes within setbacks, log file to figures, against the simulator's truth: {@link SimKeepOut} evaluates the ground at
 * points 5 cm apart by plain distance. The bound is the issue's own: 2 % or 1 L.
 */
@Tag("slow")
class SetbackTruthTest {
    private static final List<String> TABLE = new ArrayList<>();

    @TempDir
    Path folder;

    static List<Arguments> jobs() {
        List<Arguments> all = new ArrayList<>();
        for (String field : Scenarios.all().keySet()) {
            all.add(Arguments.of(field, 3L));
            if (field.startsWith("laps")) {
                all.add(Arguments.of(field, 41L));
            }
        }
        return all;
    }

    /** Places by shares of the field's box: amid the passes, along a bank, about a corner where laps turn, outside. */
    private static List<SimKeepOut> places(double[][] ring) {
        double[] x = Arrays.stream(ring).mapToDouble(p -> p[0]).toArray();
        double[] y = Arrays.stream(ring).mapToDouble(p -> p[1]).toArray();
        double x0 = Arrays.stream(x).min().orElseThrow();
        double y0 = Arrays.stream(y).min().orElseThrow();
        double w = Arrays.stream(x).max().orElseThrow() - x0;
        double h = Arrays.stream(y).max().orElseThrow() - y0;
        double[] corner = ring[2];
        return List.of(
                new SimKeepOut("Well", Kind.POINT, 15, at(x0, y0, w, h, 0.37, 0.52)),
                new SimKeepOut(
                        "Ditch",
                        Kind.LINE,
                        6,
                        at(x0, y0, w, h, 0.05, 0.2),
                        at(x0, y0, w, h, 0.4, 0.35),
                        at(x0, y0, w, h, 0.95, 0.85)),
                new SimKeepOut(
                        "Pond",
                        Kind.POLYGON,
                        12,
                        at(x0, y0, w, h, 0.55, 0.5),
                        at(x0, y0, w, h, 0.68, 0.47),
                        at(x0, y0, w, h, 0.6, 0.7)),
                new SimKeepOut("Corner", Kind.POINT, 28, corner),
                new SimKeepOut("Far bank", Kind.LINE, 9, at(x0, y0, w, h, -0.6, -0.4), at(x0, y0, w, h, -0.6, 1.4)));
    }

    private static double[] at(double x0, double y0, double w, double h, double u, double v) {
        return new double[] {x0 + u * w, y0 + v * h};
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void volumes_within_setbacks_come_out_within_two_percent_or_a_litre(String field, long seed) throws IOException {
        Scenario scenario = Scenarios.all()
                .get(field)
                .apply(seed)
                .gnss(GnssModel.rtk(seed == 3 ? 10 : 5))
                .withoutGround();
        List<SimKeepOut> places = places(scenario.plan().boundary());
        places.forEach(scenario::keepOut);
        scenario.run().writeTo(folder);
        Path file = Files.writeString(folder.resolve("keep-out.geojson"), SimKeepOut.file(scenario.site(), places));
        Setbacks setbacks = Objects.requireNonNull(Pipeline.analyze(
                        new JobFiles(
                                List.of(folder.resolve("log.csv")),
                                folder.resolve("rig.yaml"),
                                null,
                                null,
                                file,
                                Double.NaN),
                        2,
                        Progress.SILENT)
                .setbacks());
        for (int i = 0; i < places.size(); i++) {
            check(
                    field,
                    places.get(i),
                    setbacks.places().get(i),
                    scenario.gnss().rateHz());
        }
        assertTrue(places.get(3).meteredL()[0] > 5, "the corner is no corner");
        assertFalse(setbacks.places().get(4).anythingInside());
    }

    private static void check(String field, SimKeepOut truth, Setback found, double rateHz) {
        double realL = truth.meteredL()[0];
        TABLE.add(String.format(
                Locale.ROOT,
                "%-16s %-9s %9.2f %+8.3f L %+7.2f %%   %8.2f %+6.3f",
                field,
                truth.name(),
                realL,
                found.volumeL()[0] - realL,
                realL > 0 ? 100 * (found.volumeL()[0] / realL - 1) : 0,
                truth.closestM(),
                found.closestM() - truth.closestM()));
        assertAll(
                () -> assertEquals(truth.name(), found.keepOut().name()),
                () -> assertEquals(realL, found.volumeL()[0], Math.max(1, 0.02 * realL), truth.name()),
                // A row's first and last delivering is known to half the way between two records, 2.5 m/s at most; the
                // simulator samples 5 cm apart, and the path is known to a centimeter or two.
                () -> assertEquals(
                        truth.closestM(),
                        found.closestM(),
                        0.05 + 2.5 / rateHz / 2,
                        truth.name() + ", closest approach"));
    }

    @AfterAll
    static void print_the_table() {
        System.out.println("Within setbacks, against simulator truth:");
        System.out.println("field            place       L true    error                closest, m true, error");
        TABLE.forEach(System.out::println);
    }
}
