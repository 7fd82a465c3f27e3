package io.rowledger.diagnose.setup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.text.Messages;
import io.rowledger.rig.Rig;
import io.rowledger.rig.RigReader;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Geometric cases whose answers are arithmetic. */
class SetupByHandTest {
    private static final double[] EVEN = {2, 2, 2, 2, 2, 2, 2, 2};
    private static final double[] SEVERAL = {1.6, 1.7, 1.8, 2.2, 2.3, 2.8, 2.9, 3};

    @TempDir
    Path folder;

    private SetupCheck check(HandMadeLog made, String rigText) throws IOException {
        Path log = Files.writeString(folder.resolve("log.csv"), made.csv());
        Rig rig = RigReader.ofText("rig.yaml", rigText);
        return Checking.of(Checking.log(log, rig), rig);
    }

    private static SetupMeasurement of(SetupCheck check, SetupParameter what) {
        return check.measurements().stream()
                .filter(m -> m.parameter() == what)
                .findFirst()
                .orElseThrow();
    }

    private static String text(SetupMeasurement m) {
        return Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC)).text(m.basis());
    }

    /** Ends of passes 9 m apart on the line y = slope·x, north first, each set so far back as driven and late by so much. */
    private static List<PassEnd> ends(double backM, double lateS, double slope, double... speedsMps) {
        List<PassEnd> ends = new ArrayList<>();
        for (int i = 0; i < speedsMps.length; i++) {
            boolean north = i % 2 == 0;
            double forward = north ? 1 : -1;
            double y = slope * 9 * i + forward * (speedsMps[i] * lateS - backM);
            ends.add(new PassEnd(i + 1, north, 100.0 * i, 9.0 * i, y, north ? 0 : Math.PI, speedsMps[i], 0));
        }
        return ends;
    }

    @Test
    void a_drop_line_set_up_one_metre_too_far_back_makes_a_mismatch_of_two_metres_at_the_headland() {
        // The package's worked example: starts at y = -1 m, stops at y = +1 m.
        List<PassEnd> ends = ends(1, 0, 0, EVEN);
        assertEquals(-1, ends.get(0).northM());
        assertEquals(1, ends.get(1).northM());
        List<Contrast> contrasts = PassEnds.contrasts(ends, 9);
        // The outermost passes have a neighbor on one side only.
        assertEquals(6, contrasts.size());
        for (Contrast c : contrasts) {
            assertEquals(-2, c.valueM(), 1e-12);
            assertEquals(-2, c.effect(), 1e-12);
        }
        DriftFit.Fitted error = DriftFit.error(contrasts, PassEnds.times(ends), new double[ends.size()], 5, 0);
        assertNotNull(error);
        assertEquals(1, error.value(), 1e-9);
    }

    @Test
    void a_slanting_headland_makes_no_mismatch_of_its_own() {
        List<PassEnd> straight = ends(0, 0, 0.3, EVEN);
        DriftFit.Fitted none = DriftFit.error(
                PassEnds.contrasts(straight, 9), PassEnds.times(straight), new double[straight.size()], 5, 0);
        assertNotNull(none);
        assertEquals(0, none.value(), 1e-9);
        List<PassEnd> wrong = ends(-0.4, 0, 0.3, EVEN);
        DriftFit.Fitted error =
                DriftFit.error(PassEnds.contrasts(wrong, 9), PassEnds.times(wrong), new double[wrong.size()], 5, 0);
        assertNotNull(error);
        assertEquals(-0.4, error.value(), 1e-9);
    }

    private static HeadlandEstimate together(List<PassEnd> ends) {
        HeadlandEstimate estimate = DriftFit.together(PassEnds.contrasts(ends, 9), PassEnds.times(ends), 5, 0);
        assertNotNull(estimate);
        return estimate;
    }

    @Test
    void at_several_speeds_a_habit_and_a_wrong_length_are_told_apart() {
        double[] speeds = {1.5, 3, 2, 1.5, 2.5, 3, 1.8, 2.2, 2.9, 1.6};
        HeadlandEstimate both = together(ends(0.7, 0.5, 0, speeds));
        assertEquals(0.7, both.errorM(), 1e-3);
        assertEquals(0.5, both.habitS(), 1e-3);
        HeadlandEstimate length = together(ends(0.7, 0, 0, speeds));
        assertEquals(0.7, length.errorM(), 1e-3);
        assertEquals(0, length.habitS(), 1e-3);
        HeadlandEstimate habit = together(ends(0, 1.4, 0, speeds));
        assertEquals(0, habit.errorM(), 1e-3);
        assertEquals(1.4, habit.habitS(), 1e-3);
    }

    @Test
    void lowering_and_lifting_unlike_count_by_their_mean() {
        // On the line y = 0, starts 2 s late and stops on time: half of each is 1 s, by which both stand for one habit.
        double[] speeds = {1.5, 3, 2, 1.5, 2.5, 3, 1.8, 2.2, 2.9, 1.6};
        List<PassEnd> ends = new ArrayList<>();
        for (int i = 0; i < speeds.length; i++) {
            boolean north = i % 2 == 0;
            double y = north ? speeds[i] * 2 : 0;
            ends.add(new PassEnd(i + 1, north, 100.0 * i, 9.0 * i, y, north ? 0 : Math.PI, speeds[i], 0));
        }
        HeadlandEstimate estimate = together(ends);
        assertEquals(1, estimate.habitS(), 1e-3);
        assertEquals(0, estimate.errorM(), 3e-3);
    }

    @Test
    void at_one_speed_only_the_mismatch_is_known_and_the_habits_prior_bounds_the_length() {
        // 1.4 s late at 2 m/s looks as a length that is 2.8 m too short does. With a habit known to 1 s beforehand, the
        // length
        // is known to 2 m, about -2.8 m: not beyond 3.3 sigmas.
        HeadlandEstimate estimate = together(ends(0, 1.4, 0, EVEN));
        assertEquals(-2.8, estimate.mismatchM(2), 1e-3);
        assertEquals(0, estimate.mismatchSigmaM(2), 1e-3);
        assertEquals(2, estimate.errorSigmaM(), 1e-3);
        assertEquals(1, estimate.habitSigmaS(), 1e-3);
        assertEquals(-2.8, estimate.errorM(), 1e-2);
    }

    @Test
    void most_lengths_are_right_so_that_a_small_mismatch_is_mostly_a_habit() {
        // Known to a centimeter: beyond the limit or not.
        assertEquals(0, TapeErrors.chanceBeyond(0.15, 0.05, 0.01), 1e-6);
        assertEquals(1, TapeErrors.chanceBeyond(0.15, 0.6, 0.01), 1e-6);
        // Nothing known: the share of the mixture beyond 0.15 m. By the normal table: 0.08·0.2113 (1.25 sigmas of
        // 0.12), 0.05
        // of a foot (0.1548 m beyond, 3.9 sigmas), 0.07·0.9005 (0.125 sigmas of 1.2): 0.0169 + 0.05 + 0.0630.
        assertEquals(0.1299, TapeErrors.chanceBeyond(0.15, 0, 1e6), 1e-3);
    }

    @Test
    void independent_errors_give_the_mean_and_its_standard_error() {
        // Contrasts that share no observation: y = 1 ± 0.1, sixteen of them. The mean is 1, its standard error
        // 0.1·√(16/15)/√16 = 0.0258, times √(15/13) for the t distribution of 15 degrees of freedom: 0.0277.
        List<Contrast> contrasts = new ArrayList<>();
        double[] times = new double[48];
        for (int i = 0; i < 48; i++) {
            times[i] = 1e6 * i;
        }
        for (int i = 0; i < 16; i++) {
            contrasts.add(new Contrast(3 * i, 3 * i + 1, 3 * i + 2, 0.5, 0, i % 2 == 0 ? 1.1 : 0.9, 1, 0, 0));
        }
        DriftFit.Fitted error = DriftFit.error(contrasts, times, new double[48], 5, 0);
        assertNotNull(error);
        assertEquals(1, error.value(), 1e-9);
        assertEquals(0.0277, error.sigma(), 2e-4);
    }

    @Test
    void a_log_written_down_by_hand_gives_back_length_side_and_lag() throws IOException {
        // Flow follows after 1.3 s, and valves are allowed 0.26 s to open and 0.24 s to close: 1.05 s are the meter's.
        // The file has the drop line 1 m too far back, the bar 0.2 m too far right, no lag.
        SetupCheck check = check(new HandMadeLog(1.3, 0, SEVERAL), HandMadeLog.rig("6 m", "0.2 m", "0 s"));
        assertEquals(5, of(check, SetupParameter.DROP_OFFSET).estimate(), 0.05);
        assertEquals(0, of(check, SetupParameter.SIDE_OFFSET).estimate(), 0.002);
        assertEquals(1.05, of(check, SetupParameter.FLOW_LAG).estimate(), 0.005);
        assertEquals(3, check.differing().size());
        assertEquals(
                List.of("products.uan.flow_lag", "rig.hitch_to_drop", "rig.bar_right_of_center"),
                check.changes().stream().map(change -> change.path()).toList());
    }

    @Test
    void a_lag_of_half_the_time_that_the_console_averages_over_is_told_as_that() throws IOException {
        // Means over 4 s pass half 2 s after the flow, which follows after 0.25 s; valves are allowed as much.
        HandMadeLog averaged = new HandMadeLog(0.25, 0, SEVERAL).averaged(4);
        SetupMeasurement lag = of(check(averaged, HandMadeLog.rig("5 m", "0 m", "0 s")), SetupParameter.FLOW_LAG);
        assertEquals(2, lag.estimate(), 0.02);
        assertTrue(lag.differs());
        // Measured from a fall by 0.6 of it in 2.4 s, less a record: 3.9 s.
        assertTrue(text(lag).contains("averages the flows over about 3.9"), text(lag));
        assertTrue(text(lag).contains("1.95"), text(lag));
    }

    @Test
    void a_lag_beyond_half_of_the_averaging_is_not_explained_by_it() throws IOException {
        HandMadeLog averaged = new HandMadeLog(1.3, 0, SEVERAL).averaged(4);
        SetupMeasurement lag = of(check(averaged, HandMadeLog.rig("5 m", "0 m", "0 s")), SetupParameter.FLOW_LAG);
        assertEquals(3.05, lag.estimate(), 0.02);
        assertFalse(text(lag).contains("averages"), text(lag));
        // The rig file says the meters' own 1.05 s: the rest is the averaging's.
        SetupMeasurement rest = of(check(averaged, HandMadeLog.rig("5 m", "0 m", "1.05 s")), SetupParameter.FLOW_LAG);
        assertTrue(text(rest).contains("averages"), text(rest));
    }

    @Test
    void at_one_speed_a_wrong_length_and_a_habit_are_both_said_and_the_length_is_left_alone() throws IOException {
        SetupCheck check = check(new HandMadeLog(1.3, 0, EVEN), HandMadeLog.rig("6 m", "0 m", "1.05 s"));
        SetupMeasurement drop = of(check, SetupParameter.DROP_OFFSET);
        assertFalse(drop.determined());
        assertFalse(drop.differs());
        assertTrue(check.changes().isEmpty());
        // The starts and stops lie 2 m apart: the drop line 5 m behind the pin, or 1 m at 2 m/s is 0.5 s early.
        String text = text(drop).replace((char) 0xa0, ' ');
        assertTrue(text.contains("6 ft 6") || text.contains("6.6 ft"), text);
        assertTrue(text.contains("0.5 s early"), text);
    }

    @Test
    void a_right_setup_is_left_alone_on_a_slanting_headland_at_many_speeds() throws IOException {
        SetupCheck check = check(
                new HandMadeLog(1.3, 0.25, 2, 2.5, 1.6, 2.2, 2.8, 1.9, 2.4, 2),
                HandMadeLog.rig("5 m", "0 m", "1.05 s"));
        assertEquals(5, of(check, SetupParameter.DROP_OFFSET).estimate(), 0.03);
        assertTrue(check.differing().isEmpty(), check.differing().toString());
        assertTrue(check.changes().isEmpty());
    }

    @Test
    void what_the_log_cannot_tell_is_said_with_what_driving_would_let_it() throws IOException {
        SetupCheck check = check(new HandMadeLog(1.3, 0, 2, 2), HandMadeLog.rig("6 m", "0.2 m", "0 s"));
        for (SetupParameter parameter :
                List.of(SetupParameter.DROP_OFFSET, SetupParameter.SIDE_OFFSET, SetupParameter.HITCH_TO_WHEELS)) {
            SetupMeasurement m = of(check, parameter);
            assertFalse(m.determined(), parameter.toString());
            assertFalse(m.differs());
            assertTrue(text(m).contains("Drive"), text(m));
        }
        assertTrue(text(of(check, SetupParameter.ANTENNA_AHEAD)).contains("yaw_rate"));
    }

    @Test
    void without_a_work_state_a_late_meter_and_a_wrong_length_are_not_told_apart() throws IOException {
        Path log = Files.writeString(
                folder.resolve("log.csv"),
                new HandMadeLog(1.3, 0, EVEN).csv().replaceAll("(?m)^([^,]*,[^,]*,[^,]*),[^,]*", "$1"));
        Rig rig = RigReader.ofText("rig.yaml", HandMadeLog.rig("6 m", "0 m", "0 s"));
        SetupCheck check = Checking.of(Checking.log(log, rig), rig);
        assertFalse(of(check, SetupParameter.DROP_OFFSET).determined());
        assertFalse(of(check, SetupParameter.FLOW_LAG).determined());
        assertTrue(text(of(check, SetupParameter.FLOW_LAG)).contains("on_01"));
    }
}
