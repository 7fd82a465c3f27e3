package io.rowledger.log.read;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.log.LogNotes;
import io.rowledger.log.LogReader;
import io.rowledger.log.LogReading;
import io.rowledger.log.header.LogOptions;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Totals of a known flow, written in steps, a record a second. */
class CoarseTotalsTest {
    private static final double GALLON_L = 3.785411784;
    /** 7.93 gal/min: a step of a gallon every 7.6 s. */
    private static final double FLOW_L_PER_S = 0.5;

    private static final int RECORDS = 900;

    /** A jump is known to half a record at either end of a flow that is even between them. */
    private static final double MAX_ERROR = 1.0 / CoarseTotals.MIN_INTERVALS;

    private static RawLog log() {
        RawLog log = new RawLog(1, 0);
        for (int i = 0; i < RECORDS; i++) {
            log.timeS[log.records] = i;
            log.accept();
        }
        return log;
    }

    /** Returns the running total of a flow (L/s by second) in steps, L. */
    private static double[] total(IntToDoubleFunction flowLPerS, double stepL) {
        double[] total = new double[RECORDS];
        double exactL = 0.37 * stepL;
        for (int i = 0; i < RECORDS; i++) {
            total[i] = Math.floor(exactL / stepL) * stepL;
            exactL += flowLPerS.applyAsDouble(i);
        }
        return total;
    }

    private static double[] evened(double[] total, double stepL, boolean @Nullable [] working) {
        double[] evened = total.clone();
        assertEquals(stepL, CoarseTotals.even(evened, log(), working), 1e-9);
        double metered = total[RECORDS - 1] - total[0];
        assertEquals(metered, evened[RECORDS - 1] - evened[0], 1e-9, "the volume is what the meter says");
        return evened;
    }

    private static double flow(double[] total, int i) {
        return total[i + 1] - total[i];
    }

    /** Out of steps of a gallon comes the flow, and a pause of 60 s to four seconds at either end. */
    @Test
    void a_pause_shows_where_no_column_tells_it() {
        IntToDoubleFunction truth = i -> i < 300 || i >= 360 ? FLOW_L_PER_S : 0;
        double[] evened = evened(total(truth, GALLON_L), GALLON_L, null);
        for (int i = 20; i < RECORDS - 20; i++) {
            boolean nearAnEnd = Math.abs(i - 300) <= 4 || Math.abs(i - 360) <= 4;
            if (!nearAnEnd) {
                assertEquals(truth.applyAsDouble(i), flow(evened, i), MAX_ERROR * FLOW_L_PER_S, "second " + i);
            }
        }
    }

    @Test
    void where_the_work_state_is_known_nothing_flows_while_lifted() {
        IntToDoubleFunction truth = i -> i % 150 < 110 ? FLOW_L_PER_S : 0;
        boolean[] down = new boolean[RECORDS];
        for (int i = 0; i < RECORDS; i++) {
            down[i] = truth.applyAsDouble(i) > 0;
        }
        double[] evened = evened(total(truth, GALLON_L), GALLON_L, down);
        for (int i = 20; i < RECORDS - 20; i++) {
            if (down[i] == down[i + 1]) {
                assertEquals(truth.applyAsDouble(i), flow(evened, i), MAX_ERROR * FLOW_L_PER_S, "second " + i);
            }
        }
    }

    /** A valve that does not close: the total rises by gallons while the bar is lifted, and they count there. */
    @Test
    void what_runs_while_lifted_is_not_moved_into_the_work() {
        boolean[] down = new boolean[RECORDS];
        for (int i = 0; i < RECORDS; i++) {
            down[i] = i < 400 || i >= 500;
        }
        double[] evened = evened(total(i -> FLOW_L_PER_S, GALLON_L), GALLON_L, down);
        assertEquals(100 * FLOW_L_PER_S, evened[500] - evened[400], 3);
    }

    /** Tenths of a gallon: a jump at most records, of one step or of two. */
    @Test
    void small_steps_at_every_record_are_evened_too() {
        double stepL = GALLON_L / 10;
        double[] total = total(i -> FLOW_L_PER_S * (i < 450 ? 1 : 1.2), stepL);
        double[] evened = evened(total, stepL, null);
        assertTrue(flow(total, 30) != flow(total, 31) || flow(total, 31) != flow(total, 32));
        for (int i = 20; i < RECORDS - 20; i++) {
            if (Math.abs(i - 450) > 13) {
                double truth = FLOW_L_PER_S * (i < 450 ? 1 : 1.2);
                assertEquals(truth, flow(evened, i), MAX_ERROR * truth, "second " + i);
            }
        }
    }

    @Test
    void fine_and_steady_totals_stay_as_they_are() {
        for (double[] total : List.of(
                total(i -> FLOW_L_PER_S * (1 + 0.1 * Math.sin(i)), FLOW_L_PER_S / 50),
                total(i -> i % 100 < 70 ? FLOW_L_PER_S : 0, FLOW_L_PER_S))) {
            double[] kept = total.clone();
            assertTrue(Double.isNaN(CoarseTotals.even(kept, log(), null)));
            assertArrayEquals(total, kept);
        }
    }

    /** 3.8 gal/min of 3.785411784 L: 0.23974 L/s. */
    @Test
    void a_log_in_tenths_of_a_gallon_gives_its_flow_and_says_so() throws IOException {
        Path log = Path.of("src/test/resources/cases/coarse-log/tenths-of-a-gallon/log.csv");
        LogReading reading = LogReader.read(List.of(log), new LogOptions(Map.of(), List.of("uan"), 12));
        String note = LogNotes.of(reading).stream()
                .filter(each -> each.contains("moves in steps of"))
                .findFirst()
                .orElseThrow();
        assertTrue(note.startsWith("Total Applied (gal): the total moves in steps of 0.1 gal"), note);
        double[] flow = reading.table().meterColumn(0, 0);
        for (int i : new int[] {20, 40, 100, 140}) {
            assertEquals(0.23974, flow[i], MAX_ERROR * 0.23974, "record " + i);
        }
        assertEquals(0, flow[70], 1e-9);
    }
}
