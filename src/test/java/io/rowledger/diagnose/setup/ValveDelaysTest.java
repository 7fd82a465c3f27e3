package io.rowledger.diagnose.setup;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import io.rowledger.log.LogColumns;
import io.rowledger.log.LogTable;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Delays from the work state to the flow, from records written down by hand. */
class ValveDelaysTest {
    /** Four rows alike, one record every 5 s; work state and flow by record. */
    private static ValveDelays delays(int[] down, double[] flow) {
        LogColumns c = new LogColumns();
        c.products = List.of("uan");
        c.timeS = new double[down.length];
        c.breakBefore = new boolean[down.length];
        c.down = new byte[down.length];
        c.flowLPerS = new double[1][4][];
        for (int i = 0; i < down.length; i++) {
            c.timeS[i] = 5 * i;
            c.down[i] = (byte) down[i];
        }
        Arrays.setAll(c.flowLPerS[0], r -> flow.clone());
        return ValveDelays.of(new LogTable(c, List.of()), 0, 5);
    }

    @Test
    void in_a_sparse_log_flow_that_comes_with_the_work_state_has_no_delay() {
        // The first start and both stops show in the record of the switch, the second start one record later.
        int[] down = {0, 0, 1, 1, 1, 1, 0, 0, 0, 1, 1, 1, 1, 0, 0, 0};
        double[] flow = {0, 0, 1, 1, 1, 1, 0, 0, 0, 0, 1, 1, 1, 0, 0, 0};
        ValveDelays delays = delays(down, flow);
        assertArrayEquals(new double[] {0, 5}, delays.on(), 1e-9);
        assertArrayEquals(new double[] {0, 0}, delays.off(), 1e-9);
    }

    /** One start at record 10, a record a second; each row comes on so many records after it. */
    private static double[] starts(int... after) {
        LogColumns c = new LogColumns();
        c.products = List.of("uan");
        c.timeS = new double[30];
        c.breakBefore = new boolean[30];
        c.down = new byte[30];
        c.flowLPerS = new double[1][after.length][30];
        for (int i = 0; i < 30; i++) {
            c.timeS[i] = i;
            c.down[i] = (byte) (i >= 10 ? 1 : 0);
            for (int r = 0; r < after.length; r++) {
                c.flowLPerS[0][r][i] = i >= 10 + after[r] ? 1 : 0;
            }
        }
        return ValveDelays.of(new LogTable(c, List.of()), 0, 1).on();
    }

    @Test
    void rows_that_come_on_one_after_another_along_a_sloped_end_tell_no_delay() {
        assertArrayEquals(new double[] {1}, starts(1, 1, 1, 1, 1, 1, 1, 1), 1e-9);
        assertArrayEquals(new double[0], starts(2, 2, 2, 1, 1, 1, 1, 1), 1e-9);
        assertArrayEquals(new double[0], starts(1, 1, 1, 1, 1, 2, 2, 2), 1e-9);
        // As many late rows here and there are late, not on a slope.
        assertArrayEquals(new double[] {1}, starts(1, 2, 1, 1, 2, 1, 2, 1), 1e-9);
    }
}
