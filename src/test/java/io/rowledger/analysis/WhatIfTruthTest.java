package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.coverage.sections.Grouping;
import io.rowledger.coverage.sections.ShutOffCase;
import io.rowledger.rate.RowTotals;
import io.rowledger.rate.TurnShift;
import io.rowledger.sim.GnssModel;
import io.rowledger.sim.MeteringModel;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.Scenarios;
import io.rowledger.sim.SimResult;
import io.rowledger.sim.Truth;
import io.rowledger.whatif.WhatIf;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.LongFunction;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What would have been, against a simulated drive on which it was: the same job driven with and without the machinery. The
 * bounds are the project's own promise: 0.5 % of the field's volume, 5 % or 40 m² of overlap.
 */
@Tag("slow")
class WhatIfTruthTest {
    /**
     * The program says what the best such system does: valves that look ahead by just as long as they take. (Without any
     * look-ahead the simulated controller's memory of covered ground, which goes by cells, would take its own mark for uncovered
     * ground.)
     */
    private static final MeteringModel PROMPT =
            MeteringModel.perRow().withResponse(0, 0).withValve(0, 0.15, 0.15);

    /** Drives that several cases share. */
    private static final Map<String, SimResult> DRIVES = new HashMap<>();

    private static final List<Double> HZ = List.of(10., 5., 1.);

    /** Drives without shut-off by bar, in the order of {@link #HZ}. */
    private static final Map<String, List<SimResult>> WITHOUT = new HashMap<>();

    @AfterAll
    static void forget() {
        DRIVES.clear();
        WITHOUT.clear();
    }

    @TempDir
    Path folder;

    static List<Arguments> laps() {
        LongFunction<Scenario> drawn = Scenarios::headlandLapsDrawn;
        LongFunction<Scenario> carried = Scenarios::headlandLapsCarried;
        return List.of(
                Arguments.of("drawn, rows", drawn, Grouping.Kind.ROWS, 1, 10),
                Arguments.of("drawn, rows", drawn, Grouping.Kind.ROWS, 1, 1),
                Arguments.of("drawn, quarters", drawn, Grouping.Kind.QUARTERS, 3, 5),
                Arguments.of("drawn, halves", drawn, Grouping.Kind.HALVES, 6, 5),
                Arguments.of("carried, rows", carried, Grouping.Kind.ROWS, 1, 5),
                Arguments.of("carried, halves", carried, Grouping.Kind.HALVES, 8, 5));
    }

    private Analysis analyze(SimResult job) {
        job.writeTo(folder);
        return Pipeline.analyze(
                new JobFiles(List.of(folder.resolve("log.csv")), folder.resolve("rig.yaml"), null), 2, Progress.SILENT);
    }

    private static ShutOffCase of(Analysis a, Grouping.Kind kind) {
        return a.whatIf().shutOffs().stream()
                .filter(c -> c.grouping().kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    private static double usedL(Truth truth) {
        return truth.rows().stream().mapToDouble(r -> r.meteredL()[0]).sum();
    }

    private static double volumeL(Analysis a) {
        return a.rates().rows().stream()
                .mapToDouble(r -> r.products().get(0).volumeL())
                .sum();
    }

    // What the machine did does not depend on the receiver that logs it.
    private static SimResult with(String what, LongFunction<Scenario> field, int together) {
        return DRIVES.computeIfAbsent(
                what,
                key -> field.apply(7)
                        .metering(PROMPT)
                        .shutOffTogether(together)
                        .withFineShutOff()
                        .run());
    }

    private static SimResult without(String what, LongFunction<Scenario> field, double hz) {
        return WITHOUT.computeIfAbsent(
                        what.substring(0, what.indexOf(',')),
                        key -> field.apply(7)
                                .metering(PROMPT.withShutOff(false))
                                .runFor(HZ.stream().map(GnssModel::rtk).toArray(GnssModel[]::new)))
                .get(HZ.indexOf(hz));
    }

    @ParameterizedTest
    @MethodSource("laps")
    void shutting_off_saves_what_the_same_drive_with_it_used_less(
            String what, LongFunction<Scenario> field, Grouping.Kind kind, int together, double hz) {
        SimResult with = with(what, field, together);
        SimResult without = without(what, field, hz);
        Analysis a = analyze(without);
        ShutOffCase found = of(a, kind);
        double savedL = usedL(without.truth()) - usedL(with.truth());
        double overlapM2 = with.truth().ground().overlapM2();
        System.out.printf(
                Locale.ROOT,
                "what if, %-16s %2.0f Hz: saved %.1f L (truth %.1f L of %.0f L), overlap %.0f m2 (truth %.0f of %.0f), skipped %.1f m2 (truth %.1f)%n",
                what,
                hz,
                found.savedL()[0],
                savedL,
                volumeL(a),
                found.overlapM2(),
                overlapM2,
                without.truth().ground().overlapM2(),
                found.uncoveredM2(),
                without.truth().ground().coveredM2() - with.truth().ground().coveredM2());
        assertEquals(savedL, found.savedL()[0], 0.005 * usedL(without.truth()));
        assertEquals(overlapM2, found.overlapM2(), Math.max(40, 0.05 * overlapM2));
    }

    @Test
    void a_log_with_row_shut_off_tells_what_halves_and_none_would_have_cost() {
        LongFunction<Scenario> field = Scenarios::headlandLapsDrawn;
        SimResult drive = with("drawn, rows", field, 1);
        Truth happened = drive.truth();
        Analysis a = analyze(drive);
        Map<Grouping.Kind, SimResult> others = new EnumMap<>(Map.of(
                Grouping.Kind.HALVES, with("drawn, halves", field, 6),
                Grouping.Kind.NONE, without("drawn, none", field, 5)));
        for (Map.Entry<Grouping.Kind, SimResult> other : others.entrySet()) {
            ShutOffCase found = of(a, other.getKey());
            Truth truth = other.getValue().truth();
            double savedL = usedL(happened) - usedL(truth);
            System.out.printf(
                    Locale.ROOT,
                    "what if, from rows to %s: saved %.1f L (truth %.1f L), overlap %.0f m2 (truth %.0f)%n",
                    found.grouping().kind(),
                    found.savedL()[0],
                    savedL,
                    found.overlapM2(),
                    truth.ground().overlapM2());
            assertEquals(savedL, found.savedL()[0], 0.005 * usedL(happened));
            assertEquals(
                    truth.ground().overlapM2(),
                    found.overlapM2(),
                    Math.max(40, 0.05 * truth.ground().overlapM2()));
        }
    }

    @Test
    void turn_compensation_gives_each_row_what_it_got_on_the_same_drive_with_it() {
        Scenario without = Scenarios.contourDrawn(7)
                .metering(PROMPT.withShutOff(false).withTurnCompensation(false))
                .withoutGround();
        Scenario with =
                Scenarios.contourDrawn(7).metering(PROMPT.withShutOff(false)).withoutGround();
        Truth truth = with.run().truth();
        Analysis a = analyze(without.run());
        TurnShift found = a.whatIf().turns().get(0);
        assertEquals(0, found.takenOut(), 0.05);
        assertEquals(0, Arrays.stream(found.rowChangeL()).sum(), 1e-6);
        double mostL = 0;
        for (int r = 0; r < 12; r++) {
            RowTotals row = a.rates().rows().get(r);
            double real = truth.rows().get(r).meteredL()[0];
            mostL = Math.max(mostL, Math.abs(found.rowChangeL()[r]));
            assertEquals(real, row.products().get(0).volumeL() + found.rowChangeL()[r], 0.005 * real, "row " + (r + 1));
        }
        System.out.printf(
                Locale.ROOT,
                "what if, turns: taken out %.3f, moved %.1f L of %.0f L, row changed most %.1f L, beyond 5%% %.0f m2%n",
                found.takenOut(),
                found.movedL(),
                volumeL(a),
                mostL,
                found.beyond5M2());
        assertTrue(found.movedL() > 0.005 * volumeL(a), "by hand L/(8R): 1.8 to 0.8 % on arcs of 64 to 146 m");
    }

    @Test
    void at_a_speed_the_supply_can_hold_the_ground_gets_what_it_lacked() {
        Scenario free =
                Scenarios.straightDrawn(7).metering(PROMPT.withShutOff(false)).withoutGround();
        Truth whole = free.run().truth();
        double workS =
                whole.passes().stream().mapToDouble(p -> p.endS() - p.startS()).sum();
        double wayM = whole.passes().stream().mapToDouble(Truth.Pass::lengthM).sum();
        double capLPerS = 0.85 * usedL(whole) / workS;
        SimResult limited = Scenarios.straightDrawn(7)
                .metering(PROMPT.withShutOff(false).withSupplyCap(capLPerS))
                .withoutGround()
                .run();
        WhatIf.Slower found = analyze(limited).whatIf().speeds().get(0);
        double lackedL = usedL(whole) - usedL(limited.truth());
        // The whole field at the speed at which the pump gives the target, less 3 %: the detector's own margin.
        double holdsMps = 0.97 * 0.85 * wayM / workS;
        System.out.printf(
                Locale.ROOT,
                "what if, slower: gained %.1f L (truth %.1f L of %.0f L), %.2f m/s (truth %.2f), %.0f s more (truth %.0f)%n",
                found.gainedL(),
                lackedL,
                usedL(whole),
                found.holdsMps(),
                holdsMps,
                found.extraS(),
                wayM / holdsMps - workS);
        assertEquals(lackedL, found.gainedL(), 0.005 * usedL(whole));
        assertEquals(holdsMps, found.holdsMps(), 0.02 * holdsMps);
        assertEquals(wayM / holdsMps - workS, found.extraS(), 0.05 * (wayM / holdsMps - workS) + 0.02 * workS);
    }

    @Test
    void a_supply_that_held_asks_for_no_other_speed() {
        Analysis a = analyze(Scenarios.straightDrawn(7)
                .metering(PROMPT.withShutOff(false))
                .withoutGround()
                .run());
        assertEquals(List.of(), a.whatIf().speeds());
        assertTrue(a.whatIf().inTime().isEmpty(), "nor were rows late");
    }

    @Test
    void a_machine_that_compensates_leaves_nothing_to_shift() {
        TurnShift found = analyze(Scenarios.contourDrawn(7)
                        .metering(PROMPT.withShutOff(false))
                        .withoutGround()
                        .run())
                .whatIf()
                .turns()
                .get(0);
        assertEquals(1, found.takenOut(), 0.05);
    }
}
