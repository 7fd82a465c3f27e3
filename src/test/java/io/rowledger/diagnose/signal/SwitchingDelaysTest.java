package io.rowledger.diagnose.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Rows and bars that are late pass after pass, from delays written down by hand. */
class SwitchingDelaysTest {
    private static List<SwitchingDelays.Ends> late(double intervalS, double... ofPassS) {
        double[][] delayS = new double[6][];
        Arrays.setAll(delayS, r -> ofPassS.clone());
        return SwitchingDelays.find(
                delayS,
                true,
                false,
                new SwitchingDelays.Resolved(intervalS, intervalS, intervalS > 2 ? 2.5 : 0),
                SwitchingDelays.ON);
    }

    @Test
    void a_bar_that_comes_on_with_the_next_record_of_a_sparse_log_is_not_late() {
        // One record every 5 s, and too few starts and stops to tell whether each is a mean over up to 5 s: known to
        // half of that.
        assertTrue(late(5, 5, 5, 0, 5, 5, 5, 5, 5).isEmpty());
    }

    @Test
    void a_bar_that_comes_on_two_records_late_is() {
        assertEquals(10, late(5, 10, 10, 10, 10, 10, 10, 10, 10).get(0).delayS(), 1e-9);
    }

    @Test
    void at_a_record_a_second_two_seconds_are_late() {
        assertEquals(2, late(1, 2, 2, 2, 2, 2, 2).get(0).delayS(), 1e-9);
    }

    private static final double NOT = Double.NaN;

    /** Delays by row and pass at 5 Hz. */
    private static List<SwitchingDelays.Ends> of(double[]... delayS) {
        return SwitchingDelays.find(
                delayS, true, false, new SwitchingDelays.Resolved(0.2, 0.2, 0), SwitchingDelays.OFF);
    }

    private static double[] always(double delayS) {
        return new double[] {delayS, delayS, delayS, delayS};
    }

    private static List<List<Integer>> rows(List<SwitchingDelays.Ends> found) {
        return found.stream().map(SwitchingDelays.Ends::rows).toList();
    }

    @Test
    void rows_of_a_bar_that_stops_at_once_along_a_slope_are_told_once() {
        double[][] alongSlope = new double[12][];
        Arrays.setAll(alongSlope, r -> always(0.2 * r));
        assertEquals(List.of(List.of()), rows(of(alongSlope)));
        alongSlope[11] = always(4);
        assertEquals(List.of(List.of(), List.of(11)), rows(of(alongSlope)));
    }

    @Test
    void a_bar_along_laps_is_told_by_the_rows_beside_covered_ground() {
        double[] outside = {3, 3, 3, 3, 3};
        double[] inside = {3, NOT, 3, NOT, NOT};
        assertEquals(List.of(List.of()), rows(of(outside, outside, outside, inside, inside, inside, inside, inside)));
        // Two rows of eight are no bar.
        double[] never = {3, NOT, NOT, NOT, NOT};
        assertEquals(List.of(List.of(0, 1)), rows(of(outside, outside, never, never, never, never, never, never)));
    }

    @Test
    void one_pass_in_which_a_row_of_a_sparse_log_is_off_for_long_makes_no_early_row() {
        double[][] delayS = new double[6][];
        Arrays.setAll(delayS, r -> always(1));
        delayS[4] = new double[] {1, 11, 1, 1};
        SwitchingDelays.Resolved sparse = new SwitchingDelays.Resolved(5, 5, 0.5);
        assertTrue(SwitchingDelays.find(delayS, true, false, sparse, SwitchingDelays.OFF)
                .isEmpty());
        delayS[4] = new double[] {6, 6, 1, 6};
        assertEquals(List.of(List.of(4)), rows(SwitchingDelays.find(delayS, true, false, sparse, SwitchingDelays.OFF)));
    }
}
