package io.rowledger.rate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.log.LogTable;
import io.rowledger.rig.Band;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.track.PoseColumns;
import io.rowledger.track.Track;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Expectations worked by hand, on a straight pass at 2 m/s with steps of a second or on a clockwise circle. */
class RatesBuilderTest {
    private static final double TINY = 1e-12;

    @Test
    void a_straight_pass_sums_area_volume_and_target() {
        // Two rows of 1 m and 0.5 m, 10 steps of 2 m: 20 m² and 10 m². Flows 0.02 and 0.012 L/s: 0.2 and 0.12 L. Target
        // 0.01 L/m²: 0.2 and 0.1 L. So row 1 is on target and row 2 20 % over.
        PoseColumns north = SteadyMotion.north(2, 10, 1);
        Rig rig = SteadyMotion.rig(SteadyMotion.bandsOfWidth(1, 0.5), 0.01, 0);
        Rates rates = SteadyMotion.rates(north, rig, SteadyMotion.steadyFlows(10, 0.02, 0.012));
        RowTotals one = rates.rows().get(0);
        RowTotals two = rates.rows().get(1);
        assertEquals(20, one.sweptAreaM2(), TINY);
        assertEquals(10, two.sweptAreaM2(), TINY);
        assertEquals(30, rates.sweptAreaM2(), TINY);
        assertEquals(0.2, one.products().get(0).volumeL(), TINY);
        assertEquals(0.12, two.products().get(0).volumeL(), TINY);
        assertEquals(0.2, one.products().get(0).targetVolumeL(), TINY);
        assertEquals(0.1, two.products().get(0).targetVolumeL(), TINY);
        assertEquals(0, one.products().get(0).deviationPct(), 1e-10);
        assertEquals(20, two.products().get(0).deviationPct(), 1e-10);
        assertEquals(0, two.turn().meanAbs(), TINY, "no turn, no turn error");
    }

    @Test
    void passes_and_their_rows_add_up_to_the_job() {
        PoseColumns north = SteadyMotion.north(2, 10, 1);
        north.pass = new int[] {1, 1, 1, 0, 0, 2, 2, 2, 2, 0};
        Rig rig = SteadyMotion.rig(SteadyMotion.bandsOfWidth(1, 1), 0.01, 0);
        double[][] flow = SteadyMotion.steadyFlows(10, 0.02, 0.01);
        Rates rates = SteadyMotion.rates(north, rig, flow);
        assertEquals(2, rates.passes().size());
        // Three and four steps of 2 m over 2 m; 0.03 L a step.
        assertEquals(12, rates.passes().get(0).sweptAreaM2(), TINY);
        assertEquals(16, rates.passes().get(1).sweptAreaM2(), TINY);
        assertEquals(0.09, rates.passes().get(0).volumeL()[0], TINY);
        assertEquals(0.12, rates.passes().get(1).volumeL()[0], TINY);
        assertEquals(0.12, rates.passes().get(0).targetVolumeL()[0], TINY);
        assertEquals(28, rates.sweptAreaM2(), TINY);
        for (int r = 0; r < 2; r++) {
            double sum = 0;
            for (List<RowTotals> pass : rates.passRows()) {
                sum += pass.get(r).products().get(0).volumeL();
            }
            assertEquals(sum, rates.rows().get(r).products().get(0).volumeL(), TINY);
        }
        // What flowed while lifted, three steps of 0.03 L, is in no row but is told.
        Track track = SteadyMotion.track(north);
        LogTable log = SteadyMotion.log(north, flow);
        Delivery delivery = DeliveryBuilder.build(log, rig, new Strips(track.poses(), rig.bands()));
        assertEquals(0.09, VolumeBalance.of(log, track, delivery, 0).outsideWorkL(), TINY);
    }

    @Test
    void a_gap_in_the_log_is_neither_work_nor_flow() {
        PoseColumns north = SteadyMotion.north(2, 4, 1);
        north.record[2] = -1;
        north.pass[2] = 0;
        Rig rig = SteadyMotion.rig(SteadyMotion.bandsOfWidth(1), 0.01, 0);
        Track track = SteadyMotion.track(north);
        LogTable log = SteadyMotion.log(north, SteadyMotion.steadyFlows(4, 0.02));
        Delivery delivery = DeliveryBuilder.build(log, rig, new Strips(track.poses(), rig.bands()));
        assertEquals(0, VolumeBalance.of(log, track, delivery, 0).outsideWorkL(), 0);
    }

    @Test
    void unsettled_steps_are_counted_and_told() {
        PoseColumns north = SteadyMotion.north(2, 10, 1);
        for (int k = 0; k < 3; k++) {
            north.unsettled[k] = true;
        }
        Rig rig = SteadyMotion.rig(SteadyMotion.bandsOfWidth(1, 1), 0.01, 0);
        Rates rates = SteadyMotion.rates(north, rig, SteadyMotion.steadyFlows(10, 0.02, 0.02));
        assertEquals(40, rates.sweptAreaM2(), TINY);
        assertEquals(12, rates.unsettledAreaM2(), TINY);
    }

    @Test
    void a_row_that_does_not_deliver_sweeps_but_applies_nothing() {
        PoseColumns north = SteadyMotion.north(2, 4, 1);
        double[][] flow = {{0.02, 0.02, 0, 0}};
        Rates rates = SteadyMotion.rates(north, SteadyMotion.rig(SteadyMotion.bandsOfWidth(1), 0.01, 0), flow);
        RowTotals row = rates.rows().get(0);
        assertEquals(8, row.sweptAreaM2(), TINY);
        assertEquals(4, row.appliedAreaM2(), TINY);
        assertEquals(0.08, row.products().get(0).targetVolumeL(), TINY, "the target counts the whole swept area");
        assertEquals(-50, row.products().get(0).deviationPct(), 1e-10);
    }

    @Test
    void on_a_circle_the_outer_row_runs_fast_and_the_inner_slow() {
        // Clockwise, R = 10 m, rows of 2 m at 2 m and 0 m outward and 2 m inward: they move at 1.2, 1 and 0.8 of the
        // bar's
        // speed, so uniform flow errs by 1/1.2 - 1 = -16.667 %, 0 and 1/0.8 - 1 = +25 %.
        PoseColumns circle = SteadyMotion.circle(10, 0.01, 200, 0.05);
        Rig rig = SteadyMotion.rig(SteadyMotion.bandsOfWidth(2, 2, 2), 0.01, 0);
        Rates rates = SteadyMotion.rates(circle, rig, SteadyMotion.steadyFlows(200, 0.04, 0.04, 0.04));
        assertEquals(-1 / 6.0, rates.rows().get(0).turn().maxUnder(), 1e-10);
        assertEquals(1 / 6.0, rates.rows().get(0).turn().meanAbs(), 1e-10);
        assertEquals(0, rates.rows().get(1).turn().meanAbs(), 1e-10);
        assertEquals(0.25, rates.rows().get(2).turn().maxOver(), 1e-10);
        // Uniform flow leaves all of it.
        assertEquals(0.25, rates.rows().get(2).turnRemaining().maxOver(), 1e-10);
        // Flows in proportion to the rows' speeds take all of it out.
        Rates even = SteadyMotion.rates(circle, rig, SteadyMotion.steadyFlows(200, 0.048, 0.04, 0.032));
        for (RowTotals row : even.rows()) {
            assertEquals(0, row.turnRemaining().meanAbs(), 1e-10);
        }
        assertEquals(0.25, even.rows().get(2).turn().maxOver(), 1e-10, "the row would still have seen it");
    }

    /** A clockwise circle of R = 10 m after 60 m straight, at 2 m/s and 0.1 s a step; three rows of 2 m at 12, 10 and 8 m. */
    private static Rates straightThenCircle(double first, double second, double third) {
        int straight = 300;
        int turning = 300;
        PoseColumns c = SteadyMotion.north(2, straight + turning, 0.1);
        for (int i = straight; i <= straight + turning; i++) {
            double angle = 0.02 * (i - straight);
            c.dropEastM[i] = 10 * (1 - Math.cos(angle));
            c.dropNorthM[i] = 2 * 0.1 * straight + 10 * Math.sin(angle);
            c.barHeadingRad[i] = angle;
            c.barSin[i] = Math.sin(angle);
            c.barCos[i] = Math.cos(angle);
        }
        double[][] flow = SteadyMotion.steadyFlows(straight + turning, first, second, third);
        return SteadyMotion.rates(c, SteadyMotion.rig(SteadyMotion.bandsOfWidth(2, 2, 2), 0.01, 0), flow);
    }

    @Test
    void a_restricted_rows_own_fault_is_no_turn_error() {
        // Row 3 gives half of the others all day, 0.02 of 0.04 L/s. On straight ground its level is 0.02/(0.1/3) = 0.6,
        // the
        // others' 1.2; without it every row is even, and uniform flow leaves the whole turn: 10/12 - 1 and 10/8 - 1.
        Rates rates = straightThenCircle(0.04, 0.04, 0.02);
        assertEquals(-1 / 6.0, rates.rows().get(0).turnRemaining().maxUnder(), 1e-3);
        assertEquals(0.25, rates.rows().get(2).turnRemaining().maxOver(), 1e-3);
        assertEquals(0, rates.rows().get(2).turnRemaining().maxUnder(), 1e-3);
        assertEquals(0, rates.rows().get(1).turnRemaining().meanAbs(), 1e-3);
    }

    @Test
    void on_straight_ground_nothing_of_a_turn_remains_whatever_a_row_gives() {
        PoseColumns north = SteadyMotion.north(2, 60, 1);
        Rates rates = SteadyMotion.rates(
                north,
                SteadyMotion.rig(SteadyMotion.bandsOfWidth(1, 0.5), 0.01, 0),
                SteadyMotion.steadyFlows(60, 0.02, 0.012));
        assertEquals(0, rates.rows().get(1).turnRemaining().meanAbs(), TINY);
        assertEquals(0, rates.rows().get(1).turnRemaining().beyond5M2(), 0);
    }

    @Test
    void the_largest_over_is_taken_only_where_a_row_moves_at_more_than_a_fifth_of_the_bars_speed() {
        // Clockwise, R = 10 m: rows 7.5 m and 8.5 m inward make 25 % and 15 % of the bar's speed. Errors 1/0.25 - 1 =
        // 300 %
        // and 1/0.15 - 1 = 567 %; the second is in the mean and not among the largest. Two rows outward keep the mean
        // at 10 m.
        List<Band> bands = SteadyMotion.bandsAt(0.1, -8.5, -7.5, 7.5, 8.5);
        PoseColumns circle = SteadyMotion.circle(10, 0.01, 20, 0.05);
        Rates rates = SteadyMotion.rates(
                circle, SteadyMotion.rig(bands, 0.01, 0), SteadyMotion.steadyFlows(20, 0.01, 0.01, 0.01, 0.01));
        assertEquals(3, rates.rows().get(2).turn().maxOver(), 1e-9);
        assertEquals(0, rates.rows().get(3).turn().maxOver(), 0);
        assertEquals(1 / 0.15 - 1, rates.rows().get(3).turn().meanAbs(), 1e-9);
    }

    @Test
    void a_row_whose_flow_is_never_known_has_no_volume_and_the_job_the_others() {
        PoseColumns north = SteadyMotion.north(2, 10, 1);
        Rates rates = SteadyMotion.rates(
                north,
                SteadyMotion.rig(SteadyMotion.bandsOfWidth(1, 1), 0.01, 0),
                SteadyMotion.steadyFlows(10, 0.02, Double.NaN));
        RowTotals.ProductTotals blank = rates.rows().get(1).products().get(0);
        assertTrue(Double.isNaN(blank.volumeL()));
        assertTrue(Double.isNaN(blank.deviationPct()), "not -100 %");
        assertEquals(20, blank.unknownAreaM2(), TINY);
        assertEquals(0.2, blank.targetVolumeL(), TINY, "target × swept area, known or not");
        assertEquals(0.2, rates.volumeL(0), TINY, "0.02 L/s for 10 s, row 1 alone");
        assertEquals(0.2, rates.passes().get(0).volumeL()[0], TINY);
        assertEquals(0, rates.passes().get(0).deviationPct(0), 1e-10);
    }

    @Test
    void half_a_row_unknown_is_held_against_the_target_of_the_other_half() {
        // Ten of twenty seconds blank: 0.2 L metered on 20 m² of 40, target 0.01 L/m².
        PoseColumns north = SteadyMotion.north(2, 20, 1);
        double[][] flow = SteadyMotion.steadyFlows(20, 0.02);
        java.util.Arrays.fill(flow[0], 10, 20, Double.NaN);
        RowTotals row = SteadyMotion.rates(north, SteadyMotion.rig(SteadyMotion.bandsOfWidth(1), 0.01, 0), flow)
                .rows()
                .get(0);
        RowTotals.ProductTotals product = row.products().get(0);
        assertEquals(0.2, product.volumeL(), TINY);
        assertEquals(20, product.unknownAreaM2(), TINY);
        assertEquals(0.4, product.targetVolumeL(), TINY);
        assertEquals(0, product.deviationPct(), 1e-10);
        assertEquals(0.01, row.meanRateLPerM2(0), TINY);
    }

    @Test
    void nothing_known_at_all_is_not_zero() {
        PoseColumns north = SteadyMotion.north(2, 10, 1);
        Rates rates = SteadyMotion.rates(
                north,
                SteadyMotion.rig(SteadyMotion.bandsOfWidth(1, 1), 0.01, 0),
                SteadyMotion.steadyFlows(10, Double.NaN, Double.NaN));
        assertTrue(Double.isNaN(rates.volumeL(0)));
        assertTrue(Double.isNaN(rates.passes().get(0).volumeL()[0]));
        Rig rig = SteadyMotion.rig(SteadyMotion.bandsOfWidth(1, 1), 0.01, 0);
        Nutrients nutrients = Nutrients.of(rig, rates, 0);
        assertTrue(Double.isNaN(nutrients.jobKg().nitrogenKg()));
        assertEquals(1, nutrients.missing().size());
    }

    @Test
    void a_row_at_the_pivot_is_not_evaluated_and_one_beyond_it_sweeps_nothing() {
        // Clockwise, R = 10 m: a row 9.6 m inward makes 4 % of the bar's speed (under 5 %), one 12 m inward goes
        // backward.
        List<Band> bands = SteadyMotion.bandsAt(0.1, -21.6, 0, 9.6, 12);
        PoseColumns circle = SteadyMotion.circle(10, 0.01, 20, 0.05);
        // Mean of the four: the bar's speed is that of its band-weighted mean, here 0 m from the center.
        Rates rates = SteadyMotion.rates(
                circle, SteadyMotion.rig(bands, 0.01, 0), SteadyMotion.steadyFlows(20, 0.01, 0.01, 0.01, 0.01));
        assertEquals(0, rates.rows().get(1).turn().meanAbs(), 1e-9);
        RowTotals pivot = rates.rows().get(2);
        assertTrue(Double.isNaN(pivot.turn().meanAbs()));
        // It still sweeps: 0.4 m × sin 0.01 × 20 × 0.1 m (chords).
        assertEquals(0.4 * Math.sin(0.01) * 20 * 0.1, pivot.sweptAreaM2(), 1e-12);
        RowTotals backward = rates.rows().get(3);
        assertTrue(Double.isNaN(backward.turn().meanAbs()));
        assertEquals(0, backward.sweptAreaM2(), 0);
        assertEquals(0, backward.appliedAreaM2(), 0);
        assertEquals(0.01, backward.products().get(0).volumeL(), 1e-12, "its liquid is counted all the same");
    }

    @Test
    void without_a_target_there_is_no_deviation() {
        PoseColumns north = SteadyMotion.north(2, 4, 1);
        Rates rates = SteadyMotion.rates(
                north,
                SteadyMotion.rig(SteadyMotion.bandsOfWidth(1), Double.NaN, 0),
                SteadyMotion.steadyFlows(4, 0.02));
        RowTotals.ProductTotals product = rates.rows().get(0).products().get(0);
        assertTrue(Double.isNaN(product.targetVolumeL()));
        assertTrue(Double.isNaN(product.deviationPct()));
        assertEquals(0.08, product.volumeL(), TINY);
    }

    @Test
    void what_remains_of_the_turn_is_not_read_while_a_valve_moves() {
        // Straight at 2 m/s, two equal rows; row 2 comes on a second late, at a tenth of its rate for a second.
        PoseColumns north = SteadyMotion.north(2, 10, 1);
        double[][] flow = SteadyMotion.steadyFlows(10, 0.02, 0.02);
        flow[1][0] = 0;
        flow[1][1] = 0.002;
        Rates rates = SteadyMotion.rates(north, SteadyMotion.rig(SteadyMotion.bandsOfWidth(1, 1), 0.01, 0), flow);
        assertEquals(0, rates.rows().get(1).turnRemaining().meanAbs(), TINY);
        assertEquals(0, rates.rows().get(1).turnRemaining().maxUnder(), TINY);
    }
}
