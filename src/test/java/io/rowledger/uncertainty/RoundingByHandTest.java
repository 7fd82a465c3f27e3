package io.rowledger.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.log.LogColumns;
import io.rowledger.log.LogTable;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.DeliveryBuilder;
import io.rowledger.rate.Rates;
import io.rowledger.rate.RatesBuilder;
import io.rowledger.rate.SteadyMotion;
import io.rowledger.rig.Band;
import io.rowledger.rig.Rig;
import io.rowledger.strip.Strips;
import io.rowledger.track.PoseColumns;
import io.rowledger.track.Track;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** One pass of twelve rows, 200 records a second apart, in logs that round flows to 0.02 L/s: uncertainty worked by hand. */
class RoundingByHandTest {
    private static final int ROWS = 12;
    private static final int SECONDS = 200;
    private static final double BAND_M = 0.762;
    private static final double STEP = 0.02;
    /** Of meters good to 2 %. */
    private static final double OWN = 0.02 / Math.sqrt(6);
    /** A step stands for any flow within half of it: a rectangle. */
    private static final double STANDING = STEP / Math.sqrt(12);

    private static final double TARGET = 0.04;

    /** Sixteen positions of the steps give a rectangle's deviation to 0.2 %. */
    private static final double PHASES = 0.003;

    private static final class Work {
        private final UncertaintyInputs job;
        private final Rates rates;

        /** The bar at these speeds, m/s, with one column of flow for each row or one for the bar. */
        Work(IntToDoubleFunction speedMps, double[]... flows) {
            PoseColumns poses = SteadyMotion.columns(SECONDS, 1);
            double northM = 0;
            for (int i = 0; i <= SECONDS; i++) {
                SteadyMotion.put(poses, i, 0, northM, 0);
                northM += speedMps.applyAsDouble(i);
            }
            double[] widths = new double[ROWS];
            Arrays.fill(widths, BAND_M);
            List<Band> bands = SteadyMotion.bandsOfWidth(widths);
            Rig rig = SteadyMotion.rig(bands, TARGET, 0);
            LogTable log = flows.length == 1 ? oneMeter(poses, flows[0]) : SteadyMotion.log(poses, flows);
            Track track = SteadyMotion.track(poses);
            Strips strips = new Strips(track.poses(), bands);
            Delivery delivery = DeliveryBuilder.build(log, rig, strips);
            job = new UncertaintyInputs(log, rig, track, strips, delivery, List.of(), List.of(0.0));
            rates = RatesBuilder.build(track, strips, delivery);
        }

        private static LogTable oneMeter(PoseColumns poses, double[] flow) {
            LogColumns c = new LogColumns();
            c.products = List.of("uan");
            c.timeS = Arrays.copyOf(poses.timeS, SECONDS);
            c.latDeg = new double[SECONDS];
            c.lonDeg = new double[SECONDS];
            c.breakBefore = new boolean[SECONDS];
            c.flowLPerS = new double[1][ROWS][SECONDS];
            int[] all = new int[ROWS];
            Arrays.setAll(all, r -> r);
            c.meterRows = new int[][][] {{all}};
            c.meterFlowLPerS = new double[][][] {{flow}};
            c.targetLPerM2 = new double[1][0];
            c.totalLPerS = new double[1][0];
            return new LogTable(c, List.of());
        }

        RoundingUncertainty rounding() {
            return new RoundingUncertainty(job, rates.rows(), 0, STEP, OWN);
        }

        MeterUncertainty meters() {
            return new MeterUncertainty(job, rates.rows(), 0);
        }
    }

    private static double[][] rows(IntToDoubleFunction flow) {
        double[][] rows = new double[ROWS][SECONDS];
        for (double[] row : rows) {
            Arrays.setAll(row, flow);
        }
        return rows;
    }

    @Test
    void rows_that_stand_at_the_same_flow_are_rounded_alike_and_do_not_cancel() {
        RoundingUncertainty rounding = new Work(i -> 2, rows(i -> 0.06)).rounding();
        // 0.0057735 of 0.06 L/s.
        assertEquals(0.096225, rounding.ofRow(3), PHASES * 0.096225);
        // Own errors of 0.00049 L/s part the rows by little: ρ = exp(−4π²·0.0244949²) = 0.97659.
        assertEquals(0.095187, rounding.ofBarL() / (12 * 12), PHASES * 0.095187);
        assertEquals(rounding.ofBarL(), rounding.ofBarL(0, 1), 1e-12);
    }

    @Test
    void own_errors_of_several_steps_make_rows_independent() {
        // 0.01 L/s of 2.4 L/s: its meters' own errors, 0.0196 L/s, are two steps.
        double standing = 0.01 / Math.sqrt(12) * SECONDS;
        Work work = new Work(i -> 2, rows(i -> 2.4));
        RoundingUncertainty fine = new RoundingUncertainty(work.job, work.rates.rows(), 0, 0.01, OWN);
        assertEquals(standing * Math.sqrt(12), fine.ofBarL(), PHASES * standing * Math.sqrt(12));
    }

    /** 0.05 to 0.11 L/s: three whole steps, so that every error comes up as often as every other. */
    @Test
    void flow_that_follows_a_speed_through_whole_steps_has_no_error_left() {
        IntToDoubleFunction speed = i -> (0.05 + 0.06 * (i + 0.5) / SECONDS) / TARGET / BAND_M;
        RoundingUncertainty rounding = new Work(
                        speed, rows(i -> STEP * Math.round(speed.applyAsDouble(i) * TARGET * BAND_M / STEP)))
                .rounding();
        // How far the readings follow the speed is read from rounded readings, so that a little is left.
        assertTrue(rounding.ofBarL() < 0.1 * STANDING * SECONDS * ROWS, rounding.ofBarL() + " L");
        // The same speeds with a flow that stands: off all the time, whatever the target asked.
        // Own errors of 0.00065 L/s: ρ = exp(−4π²·0.0326599²) = 0.95876, and √(0.95876 + 0.04124/12) = 0.98091.
        RoundingUncertainty standing = new Work(speed, rows(i -> 0.08)).rounding();
        double standingL = 0.98091 * STANDING * SECONDS * ROWS;
        assertEquals(standingL, standing.ofBarL(), PHASES * standingL);
    }

    @Test
    void one_meter_for_the_bar_has_its_whole_own_error_and_one_rounding() {
        double[] flow = new double[SECONDS];
        Arrays.fill(flow, ROWS * 0.06);
        flow[0] += 2 * STEP;
        flow[1] -= STEP;
        flow[2] -= STEP;
        MeterUncertainty meter = new Work(i -> 2, flow).meters();
        // Shared and own 6.66667e-5 each, 1 % scatter over 200 readings 5e-7, start and stop 4.16667e-6,
        // a step of 0.02 in 0.72 L/s 6.43004e-5.
        double own = Math.sqrt(6.66667e-5 + 5e-7 + 4.16667e-6 + 6.43004e-5);
        assertEquals(own, Math.hypot(meter.ofBar(), meter.roundingOfBar() / Math.sqrt(3)), 0.002 * own);
        assertEquals(own, Math.hypot(meter.ofRow(4), meter.roundingOfRow(4) / Math.sqrt(3)), 0.002 * own);
    }

    /** 0.3 m/s ask 0.009 L/s of a row, less than half a step: eleven rows read nothing and may have given up to 0.01 L/s. */
    @Test
    void flow_below_half_a_step_reads_as_nothing_and_is_not_nothing() {
        double[][] flows = rows(i -> 0);
        Arrays.setAll(flows[11], i -> i % 2 == 0 ? 0.02 : 0.04);
        Work work = new Work(i -> 0.3, flows);
        VolumeBounds bounds = new VolumeBounds(work.job, work.rates);
        assertEquals(11 * SECONDS * 0.01, bounds.ofBar(0).highL(), 1e-9);
        assertEquals(0, bounds.ofBar(0).lowL(), 1e-9);
        assertEquals(0, bounds.ofRow(0, 11).highL(), 1e-9);
        // At 2 m/s the target is three steps: a row that reads nothing gives nothing.
        Work fast = new Work(i -> 2, flows);
        assertEquals(0, new VolumeBounds(fast.job, fast.rates).ofBar(0).highL(), 1e-9);
    }

    @Test
    void a_product_that_never_leaves_one_step_has_the_consoles_step() {
        double[][] flows = rows(i -> 0.06);
        assertEquals(0, new Work(i -> 2, flows).rounding().ofRow(20), 0, "no such row");
        assertEquals(0, new Work(i -> 2, flows).meters().roundingOfRow(3), 0);
        flows[11][0] = 0.08;
        flows[11][1] = 0.04;
        // Half a step of 0.06 L/s.
        assertEquals(1 / 6.0, new Work(i -> 2, flows).meters().roundingOfRow(3), PHASES / 6);
    }
}
