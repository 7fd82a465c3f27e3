package io.rowledger.log.read;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
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
import java.util.stream.IntStream;
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

    /** Also checks the volume of the truth: the total itself, rounded down at both ends, may differ from it by a step. */
    private static double[] evened(IntToDoubleFunction flowLPerS, double stepL, boolean @Nullable [] working) {
        double[] evened = evenedTotal(total(flowLPerS, stepL), stepL, working);
        double truthL = IntStream.range(0, RECORDS - 1).mapToDouble(flowLPerS).sum();
        // The last jump is known to half a record, and so is the first.
        assertEquals(truthL, evened[RECORDS - 1] - evened[0], FLOW_L_PER_S + 1e-9);
        return evened;
    }

    private static double[] evenedTotal(double[] total, double stepL, boolean @Nullable [] working) {
        double[] evened = total.clone();
        CoarseTotals.Evened how = CoarseTotals.even(evened, log(), working);
        assertNotNull(how);
        assertEquals(stepL, how.stepL(), 1e-9);
        return evened;
    }

    private static double flow(double[] total, int i) {
        return total[i + 1] - total[i];
    }

    /** Out of steps of a gallon comes the flow, and a pause of 60 s to four seconds at either end. */
    @Test
    void a_pause_shows_where_no_column_tells_it() {
        IntToDoubleFunction truth = i -> i < 300 || i >= 360 ? FLOW_L_PER_S : 0;
        double[] evened = evened(truth, GALLON_L, null);
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
        double[] evened = evened(truth, GALLON_L, down);
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
        double[] evened = evened(i -> FLOW_L_PER_S, GALLON_L, down);
        assertEquals(100 * FLOW_L_PER_S, evened[500] - evened[400], 3);
    }

    /** Tenths of a gallon: a jump at most records, of one step or of two. */
    @Test
    void small_steps_at_every_record_are_evened_too() {
        double stepL = GALLON_L / 10;
        IntToDoubleFunction truth = i -> FLOW_L_PER_S * (i < 450 ? 1 : 1.2);
        double[] total = total(truth, stepL);
        double[] evened = evened(truth, stepL, null);
        assertTrue(flow(total, 30) != flow(total, 31) || flow(total, 31) != flow(total, 32));
        for (int i = 20; i < RECORDS - 20; i++) {
            if (Math.abs(i - 450) > 13) {
                double flow = truth.applyAsDouble(i);
                assertEquals(flow, flow(evened, i), MAX_ERROR * flow, "second " + i);
            }
        }
    }

    /** 0.063 L/s, a gallon a minute: 14 jumps in 15 minutes, the last of them 20 s before the end. */
    @Test
    void a_gallon_a_minute_is_a_flow_from_the_first_record_to_the_last() {
        double flow = GALLON_L / 60;
        IntToDoubleFunction truth = i -> flow;
        double[] evened = evened(truth, GALLON_L, null);
        for (int i = 0; i + 1 < RECORDS; i++) {
            assertEquals(flow, flow(evened, i), MAX_ERROR * flow, "second " + i);
        }
        CoarseTotals.Evened how = CoarseTotals.even(total(truth, GALLON_L), log(), null);
        assertNotNull(how);
        assertEquals(60, how.overS(), 1);
    }

    /** Fewer than 20 jumps, from record to record: the flow of a short log, which needs no evening. */
    @Test
    void a_short_burst_is_no_coarse_total() {
        assertNull(CoarseTotals.even(total(i -> i >= 400 && i < 415 ? GALLON_L : 0, GALLON_L), log(), null));
    }

    @Test
    void fine_and_steady_totals_stay_as_they_are() {
        for (double[] total : List.of(
                total(i -> FLOW_L_PER_S * (1 + 0.1 * Math.sin(i)), FLOW_L_PER_S / 50),
                total(i -> i % 100 < 70 ? FLOW_L_PER_S : 0, FLOW_L_PER_S))) {
            double[] kept = total.clone();
            assertNull(CoarseTotals.even(kept, log(), null));
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
