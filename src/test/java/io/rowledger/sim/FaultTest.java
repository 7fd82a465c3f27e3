package io.rowledger.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Every fault leaves the mark it should, in the truth and in the log: arithmetic on its size. */
class FaultTest {
    private static final int ROWS = 8;
    private final List<SimRecord> records = new ArrayList<>();

    private Truth run(SimFault... faults) {
        SimRig rig = SimRig.drawn(ROWS);
        Scenario scenario = new Scenario(11, rig, PassPlan.rectangle(260, 4, 0, rig.widthM()))
                .gnss(GnssModel.perfect(5))
                .metering(MeteringModel.ideal())
                .withoutGround();
        for (SimFault fault : faults) {
            scenario.fault(fault);
        }
        records.clear();
        return new Simulation(scenario).run(records::add);
    }

    private static double shareOfTarget(Truth.Row row) {
        return row.volumeL()[0] / row.targetL()[0];
    }

    private static double meterOverTruth(Truth.Row row) {
        return row.meteredL()[0] / row.volumeL()[0];
    }

    @Test
    void a_plugged_restricted_or_leaking_row_gives_its_part_and_its_siblings_all() {
        Truth truth = run(
                SimFault.of(SimFault.Kind.PLUGGED, 2, 0, 0.03),
                SimFault.of(SimFault.Kind.RESTRICTED, 4, 0, 0.7),
                SimFault.of(SimFault.Kind.LEAKING, 6, 0, 1.3));
        double[] expected = {1, 0.03, 1, 0.7, 1, 1.3, 1, 1};
        for (Truth.Row row : truth.rows()) {
            assertEquals(expected[row.row() - 1], shareOfTarget(row), 1e-6);
            assertEquals(1, meterOverTruth(row), 1e-12);
        }
        // Below 5 % of what the target asks a row does not deliver.
        assertEquals(0, truth.rows().get(1).appliedAreaM2(), 1e-9);
    }

    @Test
    void a_fault_begins_and_ends_on_time() {
        Truth whole = run();
        double half = whole.durationS() / 2;
        Truth truth = run(SimFault.of(SimFault.Kind.PLUGGED, 3, 0, 0.0).until(half));
        double before = 0;
        double after = 0;
        for (SimRecord record : records) {
            before += record.timeS <= half ? record.flowLPerS[0][2] : 0;
            after += record.timeS > half ? record.flowLPerS[0][2] : 0;
        }
        assertEquals(0, before, 1e-12);
        assertTrue(after > 0);
        assertTrue(shareOfTarget(truth.rows().get(2)) > 0.4
                && shareOfTarget(truth.rows().get(2)) < 0.6);
    }

    @Test
    void meter_faults_leave_the_liquid_alone() {
        Truth truth = run(
                SimFault.of(SimFault.Kind.METER_SCALE, 1, 0, 0.91),
                SimFault.of(SimFault.Kind.METER_DROPOUT, 3, 0, 0.2),
                SimFault.of(SimFault.Kind.METER_STUCK, 5, 100, 0));
        truth.rows().forEach(row -> assertEquals(1, shareOfTarget(row), 1e-6));
        assertEquals(0.91, meterOverTruth(truth.rows().get(0)), 1e-9);
        assertEquals(0.8, meterOverTruth(truth.rows().get(2)), 0.1);
        double stuck = Double.NaN;
        for (SimRecord record : records) {
            if (record.timeS > 100.5) {
                stuck = Double.isNaN(stuck) ? record.flowLPerS[0][4] : stuck;
                assertEquals(stuck, record.flowLPerS[0][4], 0.0);
            }
        }
        assertTrue(stuck > 0);
    }

    @Test
    void crossed_channels_put_out_each_others_flow() {
        SimFault crossed =
                new SimFault(SimFault.Kind.CHANNELS_SWAPPED, List.of(1, 8), 0, Double.POSITIVE_INFINITY, 0, 0);
        SimFault half = SimFault.of(SimFault.Kind.RESTRICTED, 1, 0, 0.5);
        SimRig rig = SimRig.drawn(ROWS).withRows(ROWS, SimRig.THIRTY_INCH_M, 1);
        Truth truth = new Scenario(11, rig, CurvePlan.circle(25, 1.5, 2))
                .metering(MeteringModel.ideal())
                .tractor(TractorModel.guided().withWander(0))
                .fault(crossed)
                .fault(half)
                .withoutGround()
                .run()
                .truth();
        Truth.Row left = truth.rows().get(0);
        Truth.Row right = truth.rows().get(7);
        // The outer row on the left was told the inner row's flow, and a restriction stays with its row.
        assertEquals(0.5 * right.targetL()[0], left.volumeL()[0], 1e-6 * right.targetL()[0]);
        assertEquals(left.targetL()[0], right.volumeL()[0], 1e-6 * left.targetL()[0]);
    }

    @Test
    void a_weak_pump_caps_the_sum() {
        double wanted = SimProduct.uan32(42).targetLPerM2() * ROWS * SimRig.THIRTY_INCH_M * 2.3;
        run(SimFault.ofAll(SimFault.Kind.SUPPLY_LIMITED, 0, 0.8 * wanted));
        double most = 0;
        for (SimRecord record : records) {
            most = Math.max(most, Metering.sum(record.flowLPerS[0]));
        }
        assertEquals(0.8 * wanted, most, 1e-9);
    }

    @Test
    void hunting_swings_all_rows_with_its_period() {
        run(SimFault.ofAll(SimFault.Kind.HUNTING, 0, 0.25).over(4));
        for (SimRecord record : records) {
            if (record.down && record.flowLPerS[0][0] > 0) {
                double usual = record.targetLPerM2[0] * SimRig.THIRTY_INCH_M * record.speedMps;
                double wave = 1 + 0.25 * Math.sin(2 * Math.PI * record.timeS / 4);
                // Row and antenna speeds differ by a few per cent on a wandering line; the swing is 25 %.
                assertEquals(wave, record.flowLPerS[0][0] / usual, 0.06);
            }
        }
    }

    @Test
    void late_on_and_early_off_leave_bare_ends_as_long_as_speed_times_delay() {
        Truth good = run();
        Truth late = run(SimFault.of(SimFault.Kind.LATE_ON, 4, 0, 1.5));
        Truth early = run(SimFault.of(SimFault.Kind.EARLY_OFF, 4, 0, 1.0));
        double perSecond = 4 * SimRig.THIRTY_INCH_M * 2.3;
        assertEquals(
                1.5 * perSecond,
                good.rows().get(3).appliedAreaM2() - late.rows().get(3).appliedAreaM2(),
                1.5);
        assertEquals(
                perSecond,
                good.rows().get(3).appliedAreaM2() - early.rows().get(3).appliedAreaM2(),
                1.0);
        assertEquals(good.rows().get(2).appliedAreaM2(), late.rows().get(2).appliedAreaM2(), 1e-9);
    }

    @Test
    void a_wrong_outside_share_concerns_both_outside_rows_only() {
        Truth truth = run(SimFault.ofAll(SimFault.Kind.OUTSIDE_SHARE, 0, 2));
        for (Truth.Row row : truth.rows()) {
            assertEquals(row.row() == 1 || row.row() == ROWS ? 2 : 1, shareOfTarget(row), 1e-6);
        }
    }

    @Test
    void slow_response_and_missing_turn_compensation_show_as_rate_error() {
        Truth slow = run(SimFault.of(SimFault.Kind.SLOW_RESPONSE, 2, 0, 4));
        assertTrue(slow.rows().get(1).turnRemaining().meanAbs() > 5 * 1e-3);
        SimFault uniform = SimFault.ofAll(SimFault.Kind.NO_TURN_COMPENSATION, 0, 0);
        for (Truth.Row row : run(uniform).rows()) {
            assertEquals(row.turn().meanAbs(), row.turnRemaining().meanAbs(), 1e-9);
        }
    }

    @Test
    void a_late_meter_shows_the_same_flow_later() {
        SimRig rig = SimRig.drawn(ROWS);
        PassPlan field = PassPlan.rectangle(260, 2, 0, rig.widthM());
        List<SimRecord> prompt = new ArrayList<>();
        List<SimRecord> late = new ArrayList<>();
        MeteringModel exact = MeteringModel.ideal();
        new Simulation(new Scenario(1, rig, field).metering(exact).withoutGround()).run(prompt::add);
        new Simulation(new Scenario(1, rig, field)
                        .metering(exact)
                        .products(SimProduct.uan32(42).withFlowLag(0.6))
                        .withoutGround())
                .run(late::add);
        for (int i = 3; i < prompt.size(); i++) {
            assertEquals(prompt.get(i - 3).flowLPerS[0][5], late.get(i).flowLPerS[0][5], 1e-12);
        }
    }
}
