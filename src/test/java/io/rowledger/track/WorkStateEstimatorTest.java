package io.rowledger.track;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.log.LogColumns;
import io.rowledger.log.LogTable;
import io.rowledger.rig.Rig;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Work states from flows, in logs without a work state: six outlets, a record a second, passes of 60 s with turns of 20 s between. */
class WorkStateEstimatorTest {
    private static final int RECORDS = 300;
    private static final Rig RIG = TestLogs.rig(0, 1, 4, 5, 6);

    private interface Flow {
        boolean on(int row, int second);
    }

    private static boolean passes(int second) {
        return second % 80 < 60;
    }

    private static boolean[] lowered(Flow flow) {
        LogColumns c = new LogColumns();
        c.products = List.of("uan");
        c.timeS = new double[RECORDS];
        c.latDeg = new double[RECORDS];
        c.lonDeg = new double[RECORDS];
        c.breakBefore = new boolean[RECORDS];
        c.flowLPerS = new double[1][6][RECORDS];
        for (int i = 0; i < RECORDS; i++) {
            c.timeS[i] = i;
            for (int r = 0; r < 6; r++) {
                c.flowLPerS[0][r][i] = flow.on(r, i) ? 0.1 : 0;
            }
        }
        return WorkStateEstimator.of(new LogTable(c, List.of()), RIG);
    }

    @Test
    void a_meter_that_sticks_through_turns_does_not_lower_the_bar() {
        boolean[] lowered = lowered((r, s) -> (r == 2 && s > 100) || passes(s));
        assertFalse(lowered[150]);
        assertFalse(lowered[230]);
        assertTrue(lowered[110]);
    }

    @Test
    void the_last_row_of_each_pass_works_as_long_as_it_flows() {
        // Point rows: the outermost row runs 12 s longer than the others and stops in the turn.
        boolean[] lowered = lowered((r, s) -> passes(s) || (r == 5 && s % 80 < 72));
        assertTrue(lowered[65]);
        assertTrue(lowered[230]);
        assertFalse(lowered[75]);
    }

    @Test
    void a_row_that_is_alone_once_in_a_pass_works() {
        boolean[] lowered = lowered((r, s) -> passes(s) && (r == 2 || s % 80 < 20 || s % 80 > 35));
        assertTrue(lowered[25]);
        assertTrue(lowered[105]);
    }
}
