package io.rowledger.rate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.log.LogColumns;
import io.rowledger.log.LogTable;
import io.rowledger.rig.Band;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.track.PoseColumns;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Expectations worked by hand: a straight pass at 2 m/s, one record a second, bands a meter wide. */
class DeliveryBuilderTest {
    private static final double NO_TARGET = Double.NaN;
    private static final List<Band> ONE_METRE = SteadyMotion.bandsOfWidth(1);

    private static Delivery delivery(double lagS, double target, double... flow) {
        PoseColumns north = SteadyMotion.north(2, flow.length, 1);
        Rig rig = SteadyMotion.rig(ONE_METRE, target, lagS);
        LogTable log = SteadyMotion.log(north, new double[][] {flow});
        return DeliveryBuilder.build(
                log, rig, new Strips(SteadyMotion.track(north).poses(), ONE_METRE));
    }

    private static double[] flows(Delivery delivery, int steps) {
        double[] flows = new double[steps];
        Arrays.setAll(flows, k -> delivery.flowLPerS(0, 0, k));
        return flows;
    }

    private static String on(Delivery delivery) {
        return delivery.deliveringSteps(0).toString();
    }

    private static void assertFlows(double[] expected, Delivery delivery) {
        double[] flows = flows(delivery, expected.length);
        for (int k = 0; k < expected.length; k++) {
            assertEquals(expected[k], flows[k], 1e-12, "step " + k + " of " + Arrays.toString(flows));
        }
    }

    @Test
    void without_lag_each_step_has_its_records_flow() {
        Delivery delivery = delivery(0, 0.01, 0, 0.02, 0.03, 0);
        assertFlows(new double[] {0, 0.02, 0.03, 0}, delivery);
        assertEquals("{1, 2}", on(delivery));
        assertEquals(1, delivery.products());
    }

    @Test
    void a_lag_of_two_records_shifts_flow_and_edges_by_two_steps() {
        // The meter shows at record 5 what left at record 3; beyond the last record it goes on showing that one.
        Delivery delivery = delivery(2, 0.01, 0, 0, 0, 0, 0, 0.02, 0.03, 0.04);
        assertFlows(new double[] {0, 0, 0, 0.02, 0.03, 0.04, 0.04, 0.04}, delivery);
        assertEquals("{3, 4, 5, 6, 7}", on(delivery));
    }

    @Test
    void a_negative_lag_shifts_the_other_way() {
        Delivery delivery = delivery(-1, 0.01, 0.02, 0, 0, 0.03, 0);
        assertFlows(new double[] {0.02, 0.02, 0, 0, 0.03}, delivery);
        assertEquals("{0, 1, 4}", on(delivery));
    }

    @Test
    void between_records_flow_is_read_in_a_straight_line_and_edges_from_the_nearest() {
        // Lag 0.4 s: flow at t + 0.4 is 0.6 of this record and 0.4 of the next. Whether it flowed: the record 0.4 s
        // away,
        // which is the record itself, so the edge stays although some flow is read in the step before it.
        Delivery early = delivery(0.4, 0.01, 0, 0, 0.02, 0.02, 0, 0);
        assertFlows(new double[] {0, 0.008, 0.02, 0.012, 0, 0}, early);
        assertEquals("{2, 3}", on(early));
        // Lag 0.6 s: the nearest record is the next one.
        Delivery late = delivery(0.6, 0.01, 0, 0, 0.02, 0.02, 0, 0);
        assertFlows(new double[] {0, 0.012, 0.02, 0.008, 0, 0}, late);
        assertEquals("{1, 2}", on(late));
    }

    /**
     * One record a second cut into five steps of 0.2 s, as fast steps are. The meter shows flow in records 4 to 7, at 4.5
     * to 7.5 s, so between 4 and 8 s; with a lag of 1.4 s it left the outlet between 2.6 and 6.6 s: steps 13 to 32.
     */
    @Test
    void a_lag_of_a_part_of_a_record_moves_edges_by_that_part() {
        int records = 10;
        int parts = 5;
        PoseColumns north = SteadyMotion.north(2, records * parts, 0.2);
        Arrays.setAll(north.record, k -> k / parts);
        double[] flow = {0, 0, 0, 0, 0.02, 0.02, 0.02, 0.02, 0, 0};
        LogTable log = SteadyMotion.log(SteadyMotion.north(2, records, 1), new double[][] {flow});
        Strips strips = new Strips(SteadyMotion.track(north).poses(), ONE_METRE);
        Delivery delivery = DeliveryBuilder.build(log, SteadyMotion.rig(ONE_METRE, 0.01, 1.4), strips);
        assertEquals(13, delivery.deliveringSteps(0).nextSetBit(0));
        assertEquals(33, delivery.deliveringSteps(0).nextClearBit(13));
        assertEquals(20, delivery.deliveringSteps(0).cardinality());
    }

    @Test
    void delivering_is_flow_above_five_percent_of_what_the_target_asks() {
        // 0.01 L/m² × 1 m × 2 m/s asks 0.02 L/s; the limit is 0.001 L/s, itself not enough.
        assertEquals("{2, 3}", on(delivery(0, 0.01, 0.0005, 0.00099, 0.00101, 0.02)));
    }

    @Test
    void twice_the_target_asks_twice_the_limit() {
        assertEquals("{3}", on(delivery(0, 0.02, 0.0005, 0.00101, 0.00199, 0.00201)));
    }

    @Test
    void without_a_target_the_limit_is_five_percent_of_the_usual_flow() {
        // Ten flowing records from 0.01 to 0.10; nine in ten stay under the ninth, 0.09: the limit is 0.0045.
        double[] flow = {0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.07, 0.08, 0.09, 0.10, 0, 0};
        assertEquals("{0, 1, 2, 3, 4, 5, 6, 7, 8, 9}", on(delivery(0, NO_TARGET, flow)));
        double[] drip = flow.clone();
        drip[0] = 0.0044;
        assertEquals("{1, 2, 3, 4, 5, 6, 7, 8, 9}", on(delivery(0, NO_TARGET, drip)));
        assertEquals("{}", on(delivery(0, NO_TARGET, 0, 0, 0)), "a row that never flowed never delivered");
    }

    @Test
    void a_target_of_zero_still_needs_flow() {
        assertEquals("{1}", on(delivery(0, 0, 0, 0.001, 0)));
    }

    @Test
    void a_short_hole_in_the_flow_is_filled_in_a_straight_line_and_a_long_one_is_unknown() {
        // One empty field between two a second away: 2 s apart, bridged. Two empty fields: 3 s apart, not bridged.
        double hole = Double.NaN;
        assertFlows(new double[] {0.02, 0.03, 0.04}, delivery(0, 0.01, 0.02, hole, 0.04));
        Delivery open = delivery(0, 0.01, 0.02, hole, hole, 0.04);
        assertFlows(new double[] {0.02, 0, 0, 0.04}, open);
        assertEquals("{0, 3}", on(open));
        assertFalse(open.known(0, 0, 1));
        assertFalse(open.known(0, 0, 2));
        assertTrue(open.known(0, 0, 3));
        Delivery ends = delivery(0, 0.01, hole, 0.02, 0.02, hole);
        assertEquals("{1, 2}", on(ends));
        assertFalse(ends.known(0, 0, 0));
        assertFalse(ends.known(0, 0, 3));
        assertTrue(delivery(0, 0.01, 0.02, hole, 0.04).allKnown(0, 0));
    }

    @Test
    void a_lag_moves_unknown_readings_as_it_moves_flow() {
        // The meter shows at record i what left one second before: records 3 to 5 blank, so steps 2 to 4 are unknown.
        double hole = Double.NaN;
        Delivery delivery = delivery(1, 0.01, 0.02, 0.02, 0.02, hole, hole, hole, 0.02, 0.02);
        assertTrue(delivery.known(0, 0, 1));
        for (int k = 2; k <= 4; k++) {
            assertFalse(delivery.known(0, 0, k), "step " + k);
        }
        assertTrue(delivery.known(0, 0, 5));
    }

    @Test
    void lifted_steps_deliver_nothing_whatever_flows() {
        PoseColumns north = SteadyMotion.north(2, 4, 1);
        north.pass[1] = 0;
        Rig rig = SteadyMotion.rig(ONE_METRE, 0.01, 0);
        LogTable log = SteadyMotion.log(north, SteadyMotion.steadyFlows(4, 0.02));
        Delivery delivery = DeliveryBuilder.build(
                log, rig, new Strips(SteadyMotion.track(north).poses(), ONE_METRE));
        assertTrue(delivery.delivering(0, 0));
        assertFalse(delivery.delivering(0, 1));
        assertEquals("{0, 2, 3}", on(delivery));
    }

    @Test
    void a_logged_target_goes_before_the_rigs_and_holes_in_it_take_the_rigs() {
        Delivery delivery = targeted(0.012, new double[] {0.01, Double.NaN, 0.02}, 0.0015, 0.0015, 0.0015);
        assertEquals(0.01, delivery.targetLPerM2(0, 0, 0));
        assertEquals(0.012, delivery.targetLPerM2(0, 0, 1));
        assertEquals(0.02, delivery.targetLPerM2(0, 0, 2));
        // Limits 0.001, 0.0012 and 0.002 L/s against 0.0015.
        assertEquals("{0, 1}", on(delivery));
    }

    @Test
    void a_prescription_goes_before_the_rigs_target_and_after_the_logs() {
        double none = Double.NaN;
        // Steps 1 to 4 in zones 0, 1, none and 1; zone 1 says nothing of the product.
        PrescribedRates planned = new PrescribedRates(1, new short[] {0, 0, 1, -1}, new double[][] {{0.03, none}});
        Delivery delivery =
                targeted(0.012, new double[] {0.01, none, none, none}, planned, 0.0015, 0.0015, 0.0015, 0.0015);
        assertEquals(0.01, delivery.targetLPerM2(0, 0, 0), "the log");
        assertEquals(0.03, delivery.targetLPerM2(0, 0, 1), "the prescription");
        assertEquals(0.012, delivery.targetLPerM2(0, 0, 2), "a zone that says nothing: the rig file");
        assertEquals(0.012, delivery.targetLPerM2(0, 0, 3), "no zone: the rig file");
        // Limits 0.001, 0.003, 0.0012 and 0.0012 L/s against 0.0015.
        assertEquals("{0, 2, 3}", on(delivery));
        Delivery without = targeted(NO_TARGET, new double[] {none, none, none, none}, planned, 0, 0, 0, 0);
        assertTrue(Double.isNaN(without.targetLPerM2(0, 0, 3)), "no zone and nothing in the rig file");
    }

    @Test
    void rows_in_two_zones_have_their_own_targets_and_the_bar_their_mean() {
        List<Band> two = List.of(new Band(1, -0.5, -1, 0, 1, null), new Band(2, 0.5, 0, 1, 1, null));
        PoseColumns north = SteadyMotion.north(2, 2, 1);
        Rig rig = SteadyMotion.rig(two, NO_TARGET, 0);
        Strips strips = new Strips(SteadyMotion.track(north).poses(), two);
        PrescribedRates planned = new PrescribedRates(2, new short[] {0, 1, 1, 1}, new double[][] {{0.01, 0.03}});
        Delivery delivery = DeliveryBuilder.build(
                SteadyMotion.log(north, SteadyMotion.steadyFlows(2, 0.02, 0.02)), rig, strips, planned);
        assertEquals(0.01, delivery.targetLPerM2(0, 0, 0));
        assertEquals(0.03, delivery.targetLPerM2(0, 1, 0));
        assertEquals(0.02, delivery.meanTargetLPerM2(0, 0, 2, 0), 1e-12);
        assertTrue(delivery.targetsDiffer(0, 0));
        assertFalse(delivery.targetsDiffer(0, 1));
    }

    @Test
    void where_neither_log_nor_rig_has_a_target_the_usual_flow_decides() {
        Delivery delivery = targeted(NO_TARGET, new double[] {0.01, Double.NaN, Double.NaN, 0.01}, 0.02, 0.02, 0, 0.02);
        assertEquals("{0, 1, 3}", on(delivery));
    }

    private static Delivery targeted(double rigTarget, double[] logged, double... flow) {
        return targeted(rigTarget, logged, null, flow);
    }

    private static Delivery targeted(double rigTarget, double[] logged, PrescribedRates planned, double... flow) {
        PoseColumns north = SteadyMotion.north(2, flow.length, 1);
        LogColumns c = new LogColumns();
        c.products = List.of("uan");
        c.timeS = new double[flow.length];
        Arrays.setAll(c.timeS, i -> i + 0.5);
        c.latDeg = new double[flow.length];
        c.lonDeg = new double[flow.length];
        c.breakBefore = new boolean[flow.length];
        c.flowLPerS = new double[][][] {{flow}};
        c.targetLPerM2 = new double[][] {logged};
        c.totalLPerS = new double[1][0];
        Rig rig = SteadyMotion.rig(ONE_METRE, rigTarget, 0);
        Strips strips = new Strips(SteadyMotion.track(north).poses(), ONE_METRE);
        return DeliveryBuilder.build(new LogTable(c, List.of()), rig, strips, planned);
    }
}
