package io.rowledger.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageOptions;
import io.rowledger.coverage.Coverages;
import io.rowledger.finding.FindingKind;
import io.rowledger.geo.LocalPlane;
import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.DeliveryBuilder;
import io.rowledger.rate.Rates;
import io.rowledger.rate.RatesBuilder;
import io.rowledger.rate.SteadyMotion;
import io.rowledger.rig.Band;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.track.Pass;
import io.rowledger.track.PoseColumns;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import io.rowledger.track.TrackQuality;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * One pass of a twelve-row bar, 400 m straight at 2 m/s, a record a second: every row puts down 0.06 L/s for 200 s, 12 L, and
 * the bar 144 L, whatever the log shows. The rows' areas are 304.8 m² each.
 */
class FaultyMetersByHandTest {
    private static final int ROWS = 12;
    private static final int SECONDS = 200;
    private static final double BAND_M = 0.762;
    private static final double FLOW = 0.06;
    private static final double TRUTH_L = 144;
    /** Of UAN 32-0-0 as {@link SteadyMotion#rig} has it: 1.32528 kg/L, 32 %. */
    private static final double NITROGEN_KG_PER_L = 1.32528 * 0.32;

    private static double[][] flows() {
        double[] flows = new double[ROWS];
        Arrays.fill(flows, FLOW);
        double[][] columns = SteadyMotion.steadyFlows(SECONDS, flows);
        // Row 12 wavers by the last digit, 0.0001 L/s, about the same mean.
        Arrays.setAll(columns[ROWS - 1], i -> FLOW + (i % 2 == 0 ? 0.0001 : -0.0001));
        return columns;
    }

    private static Intervals intervals(double[][] flows, MeterFault... faults) {
        return intervals(flows, SECONDS, 0, List.of(faults));
    }

    /** The pass ends after so many seconds, and the log shows the flow to be so much later than the rig file says. */
    private static Intervals intervals(double[][] flows, int passS, double lateS, List<MeterFault> faults) {
        Work work = work(flows, passS, lateS, faults);
        return IntervalsBuilder.of(work.job, work.rates, work.coverage, 1);
    }

    private record Work(UncertaintyInputs job, Rates rates, Coverage coverage) {}

    private static Work work(double[][] flows, int passS, double lateS, List<MeterFault> faults) {
        PoseColumns columns = SteadyMotion.north(2, SECONDS, 1);
        double[] widths = new double[ROWS];
        Arrays.fill(widths, BAND_M);
        List<Band> bands = SteadyMotion.bandsOfWidth(widths);
        Rig rig = SteadyMotion.rig(bands, FLOW / BAND_M / 2, 0);
        LogTable log = SteadyMotion.log(columns, flows);
        int[] byFix = new int[10];
        byFix[4] = SECONDS;
        Track track = new Track(
                new LocalPlane(42, -93),
                new Poses(columns),
                List.of(new Pass(1, 0, passS, 0, passS, 2 * passS, 0)),
                new TrackQuality(1, 0, 0, false, new double[10], byFix));
        Strips strips = new Strips(track.poses(), bands);
        Delivery delivery = DeliveryBuilder.build(log, rig, strips);
        Rates rates = RatesBuilder.build(track, strips, delivery);
        Coverage coverage = Coverages.of(track, strips, delivery, null, CoverageOptions.defaults(1));
        return new Work(
                new UncertaintyInputs(log, rig, track, strips, delivery, faults, List.of(lateS)), rates, coverage);
    }

    private static MeterFault fault(FindingKind kind, double fromS, double toS, Integer... rows) {
        return new MeterFault(List.of(0), kind, List.of(rows), fromS, toS);
    }

    private static double width(Interval interval) {
        return interval.high() - interval.low();
    }

    @Test
    void healthy_meters_keep_narrow_bounds() {
        Intervals healthy = intervals(flows());
        assertEquals(TRUTH_L, healthy.products().get(0).volumeL().value(), 1e-9);
        // Twelve meters of 2 %: u = 0.874 %, 90 % of about 1.6 u.
        assertEquals(
                2 * 1.6 * 0.00874 * TRUTH_L, width(healthy.products().get(0).volumeL()), 0.3);
    }

    @Test
    void flow_that_the_log_shows_late_leaves_bounds_that_hold_what_was_metered_after_the_lift() {
        // 190 s of work put down 136.8 L; meters 4 s late show 186 s of it in the pass and 4 s after it.
        double[][] flows = flows();
        for (double[] row : flows) {
            Arrays.fill(row, 0, 4, 0);
            Arrays.fill(row, 194, SECONDS, 0);
        }
        double truthL = 190 * ROWS * FLOW;
        Interval told = intervals(flows, 190, 4, List.of()).products().get(0).volumeL();
        assertEquals(186 * ROWS * FLOW, told.value(), 0.01);
        assertTrue(told.holds(truthL), told.toString());
        assertTrue(told.low() > 0.98 * told.value() && told.high() < 1.02 * truthL, told.toString());
        Interval without = intervals(flows, 190, 0, List.of()).products().get(0).volumeL();
        assertFalse(without.holds(truthL), without.toString());
    }

    @Test
    void readings_that_are_means_over_eight_seconds_leave_bounds_that_hold_what_trails() {
        // 40 s of work; half of a step shows after 4 s, all of it after 8 s: 4 s of the liquid stand after the lift.
        double[][] flows = flows();
        for (double[] row : flows) {
            for (int i = 0; i < SECONDS; i++) {
                double on = Math.min(1, (i + 0.5) / 8);
                double off = Math.min(1, Math.max(0, (i + 0.5 - 40) / 8));
                row[i] *= on - off;
            }
        }
        double truthL = 40 * ROWS * FLOW;
        Interval told = intervals(flows, 40, 4, List.of()).products().get(0).volumeL();
        assertEquals(36 * ROWS * FLOW, told.value(), 0.01);
        assertTrue(told.holds(truthL), told.toString());
        assertTrue(told.high() < 1.02 * truthL, told.toString());
    }

    @Test
    void one_blank_row_leaves_bounds_that_hold_what_it_put_down() {
        double[][] flows = flows();
        Arrays.fill(flows[4], Double.NaN);
        Intervals blank = intervals(flows);
        Interval volume = blank.products().get(0).volumeL();
        // 11 rows metered; the twelfth gave 0 to what its peers gave, 12 L.
        assertEquals(132, volume.value(), 1e-9);
        assertTrue(volume.low() > 128 && volume.low() < 132, volume.toString());
        assertTrue(volume.high() > TRUTH_L && volume.high() < 148, volume.toString());
        Interval nitrogen = blank.nitrogenKg();
        assertEquals(132 * NITROGEN_KG_PER_L, nitrogen.value(), 1e-6);
        assertTrue(nitrogen.holds(TRUTH_L * NITROGEN_KG_PER_L), nitrogen.toString());
        assertTrue(blank.products().get(0).nitrogenKg().holds(TRUTH_L * NITROGEN_KG_PER_L));
        Intervals.OfRow row = blank.rows().get(4);
        assertTrue(Double.isNaN(row.products().get(0).volumeL().value()));
        assertFalse(row.products().get(0).volumeL().known());
        assertFalse(row.products().get(0).deviationPct().known());
        // Its 304.8 m² may have been served.
        assertTrue(row.appliedAreaM2().high() >= 304.8, row.toString());
        assertTrue(
                blank.coveredAreaM2().high() >= 12 * 304.8,
                blank.coveredAreaM2().toString());
        assertEquals(1 / 12.0, blank.basis().liquids().get(0).unknownShare(), 1e-9);
    }

    @Test
    void all_rows_blank_for_half_of_the_time_leave_bounds_up_to_twice_the_metered_volume() {
        double[][] flows = flows();
        for (double[] row : flows) {
            Arrays.fill(row, 100, 200, Double.NaN);
        }
        Intervals half = intervals(flows);
        Interval volume = half.products().get(0).volumeL();
        assertEquals(TRUTH_L / 2, volume.value(), 1e-9);
        assertTrue(volume.low() < TRUTH_L / 2 && volume.low() > 0.97 * TRUTH_L / 2, volume.toString());
        assertTrue(volume.holds(TRUTH_L), volume.toString());
        assertTrue(half.nitrogenKg().holds(TRUTH_L * NITROGEN_KG_PER_L));
        assertTrue(half.passes().get(0).products().get(0).volumeL().holds(TRUTH_L));
        // On target where it is known: held against that part's target.
        Interval deviation = half.passes().get(0).products().get(0).deviationPct();
        assertEquals(0, deviation.value(), 1e-9);
        assertTrue(deviation.low() > -5 && deviation.high() < 5, deviation.toString());
    }

    @Test
    void all_blank_has_no_figure_and_no_bounds() {
        double[][] flows = flows();
        for (double[] row : flows) {
            Arrays.fill(row, Double.NaN);
        }
        Intervals none = intervals(flows);
        assertTrue(Double.isNaN(none.products().get(0).volumeL().value()));
        assertFalse(none.products().get(0).volumeL().known(), "not 0 to 0");
        assertTrue(Double.isNaN(none.nitrogenKg().value()));
        assertFalse(none.nitrogenKg().known());
        assertTrue(
                none.coveredAreaM2().high() >= 12 * 304.8, none.coveredAreaM2().toString());
    }

    @Test
    void a_stuck_meter_may_be_off_by_what_it_lacks_of_its_peers() {
        double[][] flows = flows();
        // From 100 s on it shows 0.02 L/s: 2 L instead of 6.
        Arrays.fill(flows[2], 100, 200, 0.02);
        Intervals stuck = intervals(flows, fault(FindingKind.METER_STUCK, 100, 200, 3));
        Interval row = stuck.rows().get(2).products().get(0).volumeL();
        assertEquals(8, row.value(), 1e-9);
        assertTrue(row.low() < 8 && row.low() > 7.5, row.toString());
        assertTrue(row.high() > 12 && row.high() < 13.2, row.toString());
        assertTrue(stuck.products().get(0).volumeL().holds(TRUTH_L));
        assertTrue(stuck.nitrogenKg().holds(TRUTH_L * NITROGEN_KG_PER_L));
        Interval deviation = stuck.rows().get(2).products().get(0).deviationPct();
        assertEquals(-100 / 3.0, deviation.value(), 1e-9);
        assertTrue(deviation.holds(0), deviation.toString());
        assertTrue(stuck.rows().get(2).products().get(0).meanRateLPerM2().holds(FLOW / BAND_M / 2));
        Intervals unseen = intervals(flows);
        assertFalse(unseen.rows().get(2).products().get(0).volumeL().holds(12), "the meter alone would deny the truth");
        assertEquals(List.of(3), stuck.basis().faults().get(0).rows());
    }

    @Test
    void zeros_of_a_dead_meter_may_be_served_ground() {
        double[][] flows = flows();
        Arrays.fill(flows[7], 50, 150, 0);
        Intervals dead = intervals(flows, fault(FindingKind.METER_DROPOUT, 50, 150, 8));
        assertTrue(dead.products().get(0).volumeL().holds(TRUTH_L));
        assertTrue(dead.coveredAreaM2().holds(12 * 304.8), dead.coveredAreaM2().toString());
        assertTrue(dead.rows().get(7).appliedAreaM2().holds(304.8));
        assertEquals(0, dead.skipAreaM2().low(), 1e-9);
    }

    /** 144 L on 3,657.6 m² or 138 L on 3,505.2 m²: the same rate. Held apart, the ends would be 4 % off on either side. */
    @Test
    void liquid_behind_a_dead_meter_lies_on_the_ground_it_served() {
        double[][] flows = flows();
        Arrays.fill(flows[7], 50, 150, 0);
        Interval healthy = intervals(flows()).products().get(0).meanRateLPerM2();
        Interval dead = intervals(flows, fault(FindingKind.METER_DROPOUT, 50, 150, 8))
                .products()
                .get(0)
                .meanRateLPerM2();
        assertTrue(dead.holds(TRUTH_L / (ROWS * 304.8)), dead.toString());
        assertTrue(width(dead) < 1.1 * width(healthy), dead + ", " + healthy);
    }

    @Test
    void rows_in_order_tell_how_rows_differ() {
        double[][] flows = new double[ROWS][SECONDS];
        for (int r = 0; r < ROWS; r++) {
            Arrays.fill(flows[r], FLOW * (r % 2 == 0 ? 1.03 : 0.97));
        }
        Work work = work(flows, SECONDS, 0, List.of(fault(FindingKind.METER_STUCK, 0, 200, 12)));
        // Of the other eleven six are 3 % over and five 3 % under: mean 1.0027273, s² = 0.00098182/1.0027273² =
        // 0.00097648,
        // with 10/8 for a t distribution 0.00122060; a meter's own error 0.02²/6 = 0.0000667; all times 12/11:
        // 0.00140429.
        double sigma = Math.sqrt(0.00140429);
        assertEquals(
                sigma * 1.0027273 * 12,
                new VolumeBounds(work.job, work.rates).ofRow(0, 11).sigmaL(),
                1e-5);
        // With two rows in order nobody can tell: 5 %.
        Integer[] most = {3, 4, 5, 6, 7, 8, 9, 10, 11, 12};
        Work few = work(flows, SECONDS, 0, List.of(fault(FindingKind.METER_STUCK, 0, 200, most)));
        assertEquals(
                0.05 * 12, new VolumeBounds(few.job, few.rates).ofRow(0, 11).sigmaL(), 1e-9);
    }

    @Test
    void swapped_rows_have_each_others_volume_and_leave_the_bars_alone() {
        double[][] flows = flows();
        Arrays.fill(flows[1], 0.03);
        Intervals plain = intervals(flows);
        Intervals swapped = intervals(flows, fault(FindingKind.CHANNELS_SWAPPED, 0, 200, 2, 9));
        assertTrue(swapped.rows().get(1).products().get(0).volumeL().holds(12));
        assertTrue(swapped.rows().get(8).products().get(0).volumeL().holds(6));
        assertEquals(
                width(plain.products().get(0).volumeL()),
                width(swapped.products().get(0).volumeL()),
                1e-9);
    }

    @Test
    void a_scale_that_is_off_widens_to_the_peers_only_while_the_fault_lasts() {
        double[][] flows = flows();
        Arrays.fill(flows[0], 0.072);
        Intervals scaled = intervals(flows, fault(FindingKind.METER_SCALE, 0, 200, 1));
        Interval row = scaled.rows().get(0).products().get(0).volumeL();
        // 14.4 L metered, 12 L by the peers.
        assertEquals(14.4, row.value(), 1e-9);
        assertTrue(row.low() < 12 && row.low() > 10.5, row.toString());
        assertTrue(row.high() > 14.4 && row.high() < 16, row.toString());
        Intervals before = intervals(flows, fault(FindingKind.METER_SCALE, 1000, 2000, 1));
        assertFalse(before.rows().get(0).products().get(0).volumeL().holds(12));
        // The meter of another product leaves the bounds of this one as they are.
        Intervals other = intervals(flows, new MeterFault(List.of(1), FindingKind.METER_SCALE, List.of(1), 0, 200));
        assertEquals(
                intervals(flows).rows().get(0).products().get(0).volumeL(),
                other.rows().get(0).products().get(0).volumeL());
    }
}
