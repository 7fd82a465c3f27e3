package io.rowledger.log.taskdata;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.text.TestNotes;
import io.rowledger.finding.UnusableInputException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Controllers that log the rate on the tank. Four sections of 3 m, 200 L/ha (2,000,000 of 0.01 mm³/m²) at 2 m/s for 60 s;
 * from the 31st second on the two right sections are off. By hand: 0.02 L/m² × 12 m × 2 m/s = 0.48 L/s, then half of it.
 */
class TankTaskDataTest {
    private static final int RECORDS = 60;
    private static final int RATE = 2_000_000;
    /** Positions are whole units of 1e-7 degrees: 1.1 cm in 4 m. */
    private static final double MLS = 3;

    @TempDir
    Path folder;

    private static TaskDataBuild bar() {
        return new TaskDataBuild(4, RECORDS, 2)
                .log(2, "DET-2", i -> RATE)
                .log(1, "DET-2", i -> RATE)
                // Two bits a section, the left one lowest: 01 on.
                .log(161, "DET-1", i -> i < 30 ? 0b01010101 : 0b0101);
    }

    private TaskLog only(TaskDataBuild build) {
        TaskData.Reading reading = TaskData.read(build.writeTo(folder), 4);
        assertEquals(1, reading.logs().size());
        return reading.logs().get(0);
    }

    private static void assertFlows(TaskLog log, double first, double second) {
        int flow = log.headers().indexOf("flow[ml/s]");
        assertTrue(flow > 0, log.headers().toString());
        assertEquals(first, Double.parseDouble(log.fields(10)[flow]), MLS);
        assertEquals(second, Double.parseDouble(log.fields(45)[flow]), MLS);
        int on = log.headers().indexOf("on_01");
        assertEquals(List.of("1", "1", "1", "1"), List.of(log.fields(10)).subList(on, on + 4));
        assertEquals(List.of("1", "1", "0", "0"), List.of(log.fields(45)).subList(on, on + 4));
        int target = log.headers().indexOf("target[L/ha]");
        assertEquals("200.0000", log.fields(10)[target]);
    }

    @Test
    void the_width_stands_on_the_tanks_parent() {
        assertFlows(only(bar().log(67, "DET-1", i -> i < 30 ? 12_000 : 6_000)), 480, 240);
    }

    /** A maximum width doesn't change: which sections are on tells the width. */
    @Test
    void the_sections_that_are_on_tell_the_width_where_only_the_largest_is_logged() {
        assertFlows(only(bar().log(70, "DET-1", i -> 12_000).logSections(3)), 480, 240);
    }

    @Test
    void the_widths_of_the_sections_add_up() {
        assertFlows(only(bar().logSections(3)), 480, 240);
    }

    @Test
    void the_largest_width_of_the_parent_does_where_nothing_else_is_known() {
        assertFlows(only(bar().log(70, "DET-1", i -> 12_000)), 480, 480);
    }

    @Test
    void a_rate_without_any_width_is_asked_about() {
        String text = assertThrows(UnusableInputException.class, () -> TaskData.read(bar().writeTo(folder), 4))
                .getMessage();
        assertTrue(text.contains("a rate per area of bin 1 (DET-2, Tank) without a working width"), text);
    }

    @Test
    void three_time_logs_with_the_same_stamps_are_columns_of_one() {
        TaskDataBuild build =
                bar().log(67, "DET-1", i -> i < 30 ? 12_000 : 6_000).spread(0, 1, 2, 1);
        TaskData.Reading reading = TaskData.read(build.writeTo(folder), 4);
        assertEquals(1, reading.logs().size());
        assertFlows(reading.logs().get(0), 480, 240);
        assertEquals(RECORDS, reading.logs().get(0).records());
        // TASKDATA.XML, three headers and the two binary files that were joined.
        assertEquals(6, reading.others().size());
    }

    @Test
    void values_of_unknown_elements_are_noted_once() {
        TaskDataBuild build =
                bar().log(67, "DET-1", i -> 12_000).log(67, "DET-99", i -> 1).log(2, "DET-98", i -> 1);
        TaskLog log = only(build);
        assertEquals(
                1,
                TestNotes.texts(log.notes()).stream()
                        .filter(note -> note.contains("DET-99, DET-98"))
                        .count(),
                TestNotes.texts(log.notes()).toString());
    }

    /** A rate per area times no motion is no liquid: a receiver that hangs takes it out of every figure, which is told. */
    @Test
    void a_rate_without_motion_is_noted() {
        TaskDataBuild hangs =
                new TaskDataBuild(4, RECORDS, 0).log(2, "DET-2", i -> RATE).log(67, "DET-1", i -> 12_000);
        List<String> notes = TestNotes.texts(only(hangs).notes());
        assertTrue(
                notes.stream()
                        .anyMatch(note -> note.contains("60 records have a rate while the position does not change")),
                notes.toString());
        List<String> driven =
                TestNotes.texts(only(bar().log(67, "DET-1", i -> 12_000)).notes());
        assertTrue(driven.stream().noneMatch(note -> note.contains("position does not change")), driven.toString());
    }

    @Test
    void offsets_and_widths_of_the_log_make_the_draft() {
        BarGeometry geometry = TaskData.read(
                        bar().log(70, "DET-1", i -> 12_000)
                                .logSections(3)
                                .log(134, "DET-3", i -> 1400)
                                .writeTo(folder),
                        0)
                .geometry();
        assertEquals(List.of(-6.0, -3.0, 0.0, 3.0), geometry.leftM());
        assertEquals(List.of(-3.0, 0.0, 3.0, 6.0), geometry.rightM());
        assertEquals(5.9, geometry.hitchToDropM(), 1e-9);
    }

    @Test
    void one_row_in_the_rig_file_is_not_enough_for_sections_that_switch() {
        Path data = bar().log(67, "DET-1", i -> i < 30 ? 12_000 : 6_000).writeTo(folder);
        String text = assertThrows(UnusableInputException.class, () -> TaskData.read(data, 1))
                .getMessage();
        assertTrue(text.contains("only some of the 4 sections on in 50% of the records"), text);
        String three = assertThrows(UnusableInputException.class, () -> TaskData.read(data, 3))
                .getMessage();
        assertTrue(three.contains("found one flow for 4 sections where the rig file has 3 rows"), three);
        assertNotNull(TaskData.read(data, 8));
    }

    /** 30 s × 24 m²/s + 29 s × 12 m²/s = 1068 m², 21.36 L; the controller says a hundred times as much, or as much. */
    @Test
    void the_controllers_totals_are_held_against_its_rates() {
        TaskDataBuild build = bar().log(67, "DET-1", i -> i < 30 ? 12_000 : 6_000)
                .log(80, "DET-1", i -> 7 + 2136 * i / 59)
                .log(116, "DET-1", i -> 5000 + 1068 * i / 59);
        TaskData.Reading wrong = TaskData.read(build.writeTo(folder.resolve("wrong")), 4);
        ControllerTotals totals = wrong.totals().get(0);
        assertEquals(2136, totals.controller().volumeL(), 1e-9);
        assertEquals(1068, totals.controller().areaM2(), 1e-9);
        assertEquals(21.36, totals.added().volumeL(), 0.01 * 21.36);
        assertEquals(1068, totals.added().areaM2(), 0.01 * 1068);
        assertTrue(totals.disagree());
        assertEquals(100, totals.volumeRatio(), 1);
        assertEquals(1, totals.areaRatio(), 0.01);

        TaskDataBuild right = bar().log(67, "DET-1", i -> i < 30 ? 12_000 : 6_000)
                .log(351, "DET-1", i -> 21_360 * i / 59)
                .log(116, "DET-1", i -> 1068 * i / 59);
        TaskData.Reading agreed = TaskData.read(right.writeTo(folder.resolve("right")), 4);
        assertEquals(21.36, agreed.totals().get(0).controller().volumeL(), 1e-9);
        assertFalse(agreed.totals().get(0).disagree());
    }

    @Test
    void two_tanks_are_two_products() {
        TaskDataBuild build =
                new TaskDataBuild(2, 10, 2).log(37, "DET-2", i -> 480_000).log(37, "DET-3", i -> 60_000);
        TaskData.Reading reading = TaskData.read(build.writeTo(folder), 2);
        assertTrue(
                reading.logs().get(0).headers().containsAll(List.of("tank.flow[ml/s]", "connector.flow[ml/s]")),
                reading.logs().get(0).headers().toString());
    }

    private TaskData.Reading timed(String name, int... totals) {
        TaskDataBuild build = bar().log(67, "DET-1", i -> i < 30 ? 12_000 : 6_000);
        for (int i = 0; i < totals.length; i += 2) {
            build.time(80, totals[i], 116, totals[i + 1]);
        }
        return TaskData.read(build.writeTo(folder.resolve(name)), 4);
    }

    /** The same 21.36 L and 1068 m², with the totals only in the task's times. */
    @Test
    void totals_at_the_end_of_the_tasks_times_are_held_against_its_rates() {
        TaskData.Reading wrong = timed("wrong", 2136, 1068);
        ControllerTotals totals = wrong.totals().get(wrong.totals().size() - 1);
        assertEquals(2136, totals.controller().volumeL(), 1e-9);
        assertEquals(100, totals.volumeRatio(), 1);
        assertTrue(totals.offScale());
        assertTrue(wrong.notes().stream().anyMatch(note -> note.key().equals("notes.totals.volume.less")));
        // Carried on from time to time, or started over: both add up to what flowed.
        for (TaskData.Reading right : List.of(timed("carried", 10, 500, 21, 1068), timed("anew", 10, 500, 11, 568))) {
            assertTrue(right.notes().stream().noneMatch(note -> note.key().startsWith("notes.totals.")));
        }
    }
}
