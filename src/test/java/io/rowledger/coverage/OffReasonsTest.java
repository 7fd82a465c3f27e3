package io.rowledger.coverage;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.rowledger.coverage.CoverageDefect.Cause;
import io.rowledger.coverage.sections.OffReasons;
import io.rowledger.coverage.sections.OffReasons.Fault;
import io.rowledger.log.LogColumns;
import io.rowledger.log.LogTable;
import io.rowledger.track.Poses;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A row without flow is a place to drive back to, a doubtful place or section control, by what explains it. */
class OffReasonsTest {
    private static final int ROWS = 6;
    /** Seconds from before to after all that these drives do. */
    private static final double ALWAYS_S = 1e6;

    /** Row 3 has no flow for 40 m of a pass of 100 m: a band of 40 m². */
    private static Drive rowWithoutFlow() {
        return new Drive(ROWS, 1.0)
                .lift(0, 0, 0)
                .lower()
                .ahead(30)
                .rows(false, 3)
                .ahead(40)
                .rows(true, 3)
                .ahead(30);
    }

    private static Coverage coverage(Drive drive, OffReasons reasons) {
        Poses poses = drive.poses();
        return Coverages.of(
                drive.track(poses),
                drive.strips(poses),
                drive.delivery(),
                null,
                List.of(),
                reasons,
                CoverageOptions.defaults(1));
    }

    /** A log in which every row has the command that the function of row and step gives. */
    private static LogTable commands(Drive drive, int row, byte command) {
        LogColumns c = new LogColumns();
        int n = drive.poses().steps();
        c.timeS = new double[n];
        c.on = new byte[ROWS][n];
        for (int r = 0; r < ROWS; r++) {
            Arrays.fill(c.on[r], r == row - 1 ? command : (byte) 1);
        }
        return new LogTable(c, List.of());
    }

    @Test
    void a_dead_meter_makes_the_skip_doubtful() {
        Fault dead = new Fault(true, List.of(3), -ALWAYS_S, ALWAYS_S);
        Coverage c =
                coverage(rowWithoutFlow(), OffReasons.of(new LogTable(new LogColumns(), List.of()), List.of(dead)));
        assertEquals(List.of(), c.skips());
        assertEquals(1, c.doubtfulSkips().size());
        CoverageDefect doubtful = c.doubtfulSkips().get(0);
        assertEquals(Cause.METER_READS_ZERO, doubtful.cause());
        assertEquals(1, doubtful.number());
        assertEquals(List.of(3), doubtful.rows());
        assertEquals(40, doubtful.areaM2(), 1e-6);
        assertEquals(40, c.skipAreaM2(), 1e-6);
        assertEquals(0, c.shutOffs().offOverUncoveredM2(), 0);
    }

    @Test
    void a_dead_meter_of_another_row_or_at_another_time_leaves_the_skip_as_it_is() {
        LogTable log = new LogTable(new LogColumns(), List.of());
        for (Fault fault : List.of(
                new Fault(true, List.of(4), -ALWAYS_S, ALWAYS_S),
                new Fault(true, List.of(3), ALWAYS_S, 2 * ALWAYS_S))) {
            Coverage c = coverage(rowWithoutFlow(), OffReasons.of(log, List.of(fault)));
            assertEquals(Cause.ROW_NOT_DELIVERING, c.skips().get(0).cause());
            assertEquals(List.of(), c.doubtfulSkips());
            assertEquals(40, c.shutOffs().offOverUncoveredM2(), 1e-6);
        }
    }

    @Test
    void a_plugged_row_is_a_skip_and_no_section_control() {
        Fault plugged = new Fault(false, List.of(3), -ALWAYS_S, ALWAYS_S);
        Coverage c =
                coverage(rowWithoutFlow(), OffReasons.of(new LogTable(new LogColumns(), List.of()), List.of(plugged)));
        assertEquals(Cause.ROW_NOT_DELIVERING, c.skips().get(0).cause());
        assertEquals(0, c.shutOffs().offOverUncoveredM2(), 0);
        assertEquals(0, c.shutOffs().skippedL(), 0);
    }

    @Test
    void commands_decide_where_the_log_has_them() {
        Drive drive = rowWithoutFlow();
        Coverage on = coverage(drive, OffReasons.of(commands(drive, 3, (byte) 1), List.of()));
        assertEquals(0, on.shutOffs().offOverUncoveredM2(), 0);
        assertEquals(1, on.skips().size());
        // Commanded off is section control, whatever else is wrong with the row.
        Fault dead = new Fault(true, List.of(3), -ALWAYS_S, ALWAYS_S);
        Coverage off = coverage(drive, OffReasons.of(commands(drive, 3, (byte) 0), List.of(dead)));
        assertEquals(40, off.shutOffs().offOverUncoveredM2(), 1e-6);
        assertEquals(Cause.ROW_NOT_DELIVERING, off.skips().get(0).cause());
    }

    /**
     * A pass of 6 rows runs into ground covered before at a slope of 45 degrees. Rows are commanded off one by one where
     * each of them reaches it: 6 bands of different lengths, all right; only the corners of the cut by whole steps overlap.
     */
    @Test
    void rows_commanded_off_along_a_sloped_end_are_right() {
        Drive drive = new Drive(ROWS, 1.0);
        drive.lift(-20, 20, Math.PI / 4 + Math.PI / 2).lower().ahead(60);
        drive.lift(0, -40, 0).lower();
        for (int i = 0; i < 400; i++) {
            double north = -40 + 0.1 * (i + 1);
            for (int r = 1; r <= ROWS; r++) {
                // The covered strip's near side: 3 m from its center line n = −e.
                double reached = -(r - 3.5) - 3 * Math.sqrt(2);
                drive.rows(north < reached, r);
            }
            drive.pose(0, north, 0);
        }
        LogTable log = commandsOf(drive);
        Coverage c = coverage(drive, OffReasons.of(log, List.of()));
        // Off over covered ground: to n = 0 row r runs from −(y) − 3√2 to 0, 4.24 m + y on average 4.24 m; 6 rows.
        assertEquals(6 * 3 * Math.sqrt(2), c.shutOffs().offOverCoveredM2(), 1.5);
        // A row of 1 m reaches a slope of 45 degrees with its far edge 1 m after its near edge: half a square meter
        // each.
        assertEquals(0, c.shutOffs().offOverUncoveredM2(), 6 * 0.5);
        assertEquals(0, c.shutOffs().onOverCoveredM2(), 6 * 0.5);
    }

    private static LogTable commandsOf(Drive drive) {
        Poses poses = drive.poses();
        LogColumns c = new LogColumns();
        c.timeS = new double[poses.steps()];
        c.on = new byte[ROWS][poses.steps()];
        for (int r = 0; r < ROWS; r++) {
            for (int k = 0; k < poses.steps(); k++) {
                c.on[r][k] = (byte) (drive.delivery().delivering(r, k) ? 1 : 0);
            }
        }
        return new LogTable(c, List.of());
    }
}
