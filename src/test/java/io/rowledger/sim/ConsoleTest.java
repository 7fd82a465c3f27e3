package io.rowledger.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The console on series written by hand. */
class ConsoleTest {
    private static final double GAL_PER_MIN = 3.785411784 / 60;

    private static List<SimRecord> records(double hz, double... galPerMin) {
        List<SimRecord> records = new ArrayList<>();
        for (int k = 0; k < galPerMin.length; k++) {
            SimRecord record = new SimRecord();
            record.timeS = k / hz;
            record.flowLPerS = new double[][] {{galPerMin[k] * GAL_PER_MIN, galPerMin[k] * GAL_PER_MIN}};
            record.totalLPerS = new double[] {2 * galPerMin[k] * GAL_PER_MIN};
            records.add(record);
        }
        return records;
    }

    private static double shown(List<SimRecord> records, int k, int row0) {
        return records.get(k).flowLPerS[0][row0] / GAL_PER_MIN;
    }

    @Test
    void without_a_console_the_records_are_the_machines() {
        List<SimRecord> records = records(1, 1, 2, 3);
        assertSame(records, Console.NONE.write(records, true));
    }

    @Test
    void flows_are_rounded_in_the_unit_of_the_log_and_the_machines_stay() {
        List<SimRecord> records = records(1, 1.04, 1.06, 0.249);
        List<SimRecord> written = Console.NONE.rounded(0.1).write(records, true);
        assertEquals(1.0, shown(written, 0, 0), 1e-12);
        assertEquals(1.1, shown(written, 1, 0), 1e-12);
        assertEquals(0.2, shown(written, 2, 1), 1e-12);
        assertEquals(1.04, shown(records, 0, 0), 1e-12);
    }

    @Test
    void a_step_takes_as_long_as_the_average() {
        List<SimRecord> written = Console.NONE.averaged(3).write(records(1, 0, 0, 0, 3, 3, 3, 3), true);
        assertEquals(0, shown(written, 2, 0), 1e-12);
        assertEquals(1, shown(written, 3, 0), 1e-12);
        assertEquals(2, shown(written, 4, 0), 1e-12);
        assertEquals(3, shown(written, 5, 0), 1e-12);
    }

    @Test
    void a_held_flow_changes_when_it_is_read_again() {
        List<SimRecord> written = Console.NONE.held(2).write(records(1, 1, 2, 3, 4, 5), true);
        assertEquals(1, shown(written, 1, 0), 1e-12);
        assertEquals(3, shown(written, 2, 0), 1e-12);
        assertEquals(3, shown(written, 3, 0), 1e-12);
    }

    @Test
    void one_record_in_five_is_written() {
        List<SimRecord> written = Console.NONE.oneIn(5).write(records(5, 0, 1, 2, 3, 4, 5, 6), true);
        assertEquals(2, written.size());
        assertEquals(5, shown(written, 1, 0), 1e-12);
    }

    @Test
    void the_second_row_is_read_later() {
        List<SimRecord> written = Console.NONE.skewed(0.4).write(records(5, 0, 1, 2, 3, 4, 5), true);
        assertEquals(4, shown(written, 4, 0), 1e-12);
        assertEquals(2, shown(written, 4, 1), 1e-12);
    }
}
