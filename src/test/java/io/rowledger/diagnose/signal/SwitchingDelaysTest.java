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
        return SwitchingDelays.find(delayS, true, false, intervalS, SwitchingDelays.ON);
    }

    @Test
    void a_bar_that_comes_on_with_the_next_record_of_a_sparse_log_is_not_late() {
        // One record every 5 s, each a mean over 3 s: flow that is up after 2 s shows with this record or the next.
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
}
