package io.rowledger.diagnose.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.log.LogColumns;
import io.rowledger.log.LogTable;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** What a log can resolve, from columns made by hand. */
class LogLimitsTest {
    private static final double GAL_PER_MIN = 3.785411784 / 60;

    /** Four rows alike at 1 Hz, flow in gal/min by record. */
    private static LogLimits limits(int n, IntToDoubleFunction gpm) {
        LogColumns c = new LogColumns();
        c.products = List.of("uan");
        c.timeS = new double[n];
        c.breakBefore = new boolean[n];
        c.flowLPerS = new double[1][4][n];
        for (int i = 0; i < n; i++) {
            c.timeS[i] = i;
            for (double[] row : c.flowLPerS[0]) {
                row[i] = gpm.applyAsDouble(i) * GAL_PER_MIN;
            }
        }
        return LogLimits.of(new LogTable(c, List.of()), 0, 4);
    }

    /** A flow that is no multiple of anything. */
    private static double wandering(double i) {
        return 0.8 + 0.1 * Math.sin(0.7 * i) + 0.03 * Math.sin(2.9 * i);
    }

    @Test
    void readings_of_tenths_resolve_a_tenth_of_a_gallon() {
        double[] readings = {0.7, 0.8, 1.0, 0.8, 0.8};
        LogLimits limits = limits(60, i -> readings[i % readings.length]);
        assertEquals(0.1 * GAL_PER_MIN, limits.quantumLPerS(0), 1e-9);
        assertEquals(0.125, limits.resolution(0), 1e-9);
    }

    @Test
    void a_flow_that_is_not_rounded_has_no_quantum() {
        LogLimits limits = limits(300, LogLimitsTest::wandering);
        assertEquals(0, limits.quantumLPerS(0));
        assertEquals(1, limits.intervalS(), 1e-9);
        assertEquals(1, limits.holdS(), 1e-9);
        assertEquals(0, limits.averagingS());
    }

    @Test
    void a_ramp_at_every_stop_shows_the_averaging() {
        // 0.8, then 0.6, 0.4, 0.2, 0 at one-second intervals: from 0.64 to 0.16 in 2.4 s, an averaging of 3 s.
        double[] fall = {0.6, 0.4, 0.2, 0, 0, 0};
        LogLimits limits = limits(400, i -> i % 40 < 34 ? 0.8 : fall[i % 40 - 34]);
        assertEquals(3, limits.averagingS(), 1e-9);
    }

    @Test
    void a_sudden_stop_shows_none() {
        assertEquals(0, limits(400, i -> i % 40 < 34 ? wandering(i) : 0).averagingS());
    }

    @Test
    void readings_that_change_every_third_record_are_held() {
        assertEquals(3, limits(600, i -> wandering(Math.floorDiv(i, 3))).holdS(), 1e-9);
    }

    @Test
    void a_flow_that_varies_by_a_quantum_dithers_the_rounding_away_and_a_steady_one_does_not() {
        double steady = limits(400, i -> i % 50 == 0 ? 0.1 : i % 50 == 1 ? 0.4 : i % 50 == 2 ? 1.2 : 0.8)
                .resolutionOfMean(0);
        double[] swinging = new double[400];
        Arrays.setAll(swinging, i -> Math.rint(10 * (0.85 + 0.15 * Math.sin(0.37 * i))) / 10);
        double dithered = limits(400, i -> swinging[i]).resolutionOfMean(0);
        assertEquals(0.05 / 0.8, steady, 1e-9);
        assertEquals(0, dithered, 1e-3);
    }

    /**
     * Six rows at 5 Hz that work for 32 s of every 40: row r starts and stops so late, by default r · 0.4 s, its valve opens from 65 % within 1.2 s.
     * Flow varies with the speed of the bar, in the log by so much later for row r.
     */
    private static LogLimits inTurn(double followsS, double wander) {
        return inTurn(new double[] {0, 0.4, 0.8, 1.2, 1.6, 2}, followsS, wander);
    }

    private static LogLimits inTurn(double[] lateS, double followsS, double wander) {
        int n = 4000;
        LogColumns c = new LogColumns();
        c.products = List.of("uan");
        c.timeS = new double[n];
        c.breakBefore = new boolean[n];
        c.flowLPerS = new double[1][6][n];
        SplittableRandom noise = new SplittableRandom(3);
        for (int i = 0; i < n; i++) {
            c.timeS[i] = i * 0.2;
            for (int r = 0; r < 6; r++) {
                double inPassS = (c.timeS[i] - lateS[r] + 40) % 40;
                double speed = wander * wandering((c.timeS[i] - followsS * r) / 2) + (1 - wander);
                double opened = inPassS >= 32 ? 0 : Math.min(1, 0.65 + 0.3 * inPassS);
                c.flowLPerS[0][r][i] = opened * (speed + noise.nextDouble(-0.002, 0.002)) * GAL_PER_MIN;
            }
        }
        return LogLimits.of(new LogTable(c, List.of()), 0, 6);
    }

    @Test
    void rows_that_start_stop_and_follow_the_speed_in_turn_are_written_in_turn() {
        LogLimits limits = inTurn(0.4, 1);
        assertEquals(2.0, limits.skewS(), 0.2);
        assertEquals(1.0, limits.skewS(5), 0.1);
    }

    @Test
    void rows_that_start_and_stop_in_turn_and_follow_the_speed_together_run_to_a_sloped_end() {
        assertEquals(0, inTurn(0, 1).skewS());
    }

    @Test
    void rows_whose_valves_open_in_turn_at_a_steady_speed_run_to_a_sloped_end() {
        // The ramps of the valves are as late as the rows are: they follow nothing.
        assertEquals(0, inTurn(0, 0.01).skewS());
    }

    @Test
    void rows_that_start_and_stop_in_turn_but_not_evenly_at_a_steady_speed_run_to_a_bent_end() {
        assertEquals(0, inTurn(new double[] {0, 0, 0, 0.4, 1, 2}, 0, 0).skewS());
    }

    @Test
    void rows_written_in_the_second_they_are_read_in_begin_anew() {
        assertEquals(0.8, inTurn(new double[] {0, 0.4, 0.8, 0, 0.4, 0.8}, 0, 0).skewS(), 0.1);
    }

    /** Six rows, a record in 5 s, that work for 60.9 s of every 82.7; each reading is the mean over so many seconds before it. */
    private static LogLimits sparse(double meanS) {
        int n = 400;
        LogColumns c = new LogColumns();
        c.products = List.of("uan");
        c.timeS = new double[n];
        c.breakBefore = new boolean[n];
        c.flowLPerS = new double[1][6][n];
        for (int i = 0; i < n; i++) {
            c.timeS[i] = i * 5;
            double on = 0;
            for (double before = 0.05; before < meanS; before += 0.1) {
                on += (c.timeS[i] - before + 82.7) % 82.7 < 60.9 ? 0.1 / meanS : 0;
            }
            for (int r = 0; r < 6; r++) {
                c.flowLPerS[0][r][i] = on * GAL_PER_MIN * (1 + 0.01 * r);
            }
        }
        return LogLimits.of(new LogTable(c, List.of()), 0, 6);
    }

    @Test
    void readings_between_shut_and_open_tell_over_what_a_sparse_log_takes_its_means() {
        assertEquals(2.5, sparse(5).sparseLagS(), 0.4);
        assertEquals(1.0, sparse(2).sparseLagS(), 0.4);
        assertEquals(0, sparse(0.1).sparseLagS(), 0.1);
        // 48 starts and stops: √(0.6 · 0.4 / 48) of 0.6, times 5 s, half of it.
        assertEquals(0.29, sparse(5).sparseLagErrorS(), 0.05);
    }
}
