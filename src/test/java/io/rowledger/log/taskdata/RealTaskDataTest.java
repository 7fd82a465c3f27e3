package io.rowledger.log.taskdata;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import io.rowledger.document.text.TestNotes;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Public task data of a boom with 16 sections, from a folder that {@code -Dreal.data=DIR} names: the rate stands on the
 * tank, widths and offsets are logged. {@link TaskDataDecoder} gives volume and area.
 */
class RealTaskDataTest {
    private static Path folder = Path.of("");

    @BeforeAll
    static void needsTheFolder() {
        folder = Path.of(System.getProperty("real.data", ""), "taskdata-sections");
        assumeTrue(
                Files.exists(folder.resolve("TASKDATA.XML")),
                "needs -Dreal.data=DIR with taskdata-sections/TASKDATA.XML");
    }

    @Test
    void volume_and_area_are_those_of_an_independent_decoder() throws IOException {
        double[] expected = TaskDataDecoder.volumeAndArea(folder, "TLG00011");
        // About 1.8 ha and 5.8 L: the controller writes its actual rate some 100 times too small.
        assertEquals(18_000, expected[1], 1000);
        assertEquals(5.8, expected[0], 0.3);
        TaskData.Reading reading = TaskData.read(folder.resolve("TLG00011.BIN"), 16);
        ControllerTotals totals = reading.totals().get(0);
        // A speed over two seconds is a little smoother than the steps it comes from.
        assertEquals(expected[0], totals.added().volumeL(), 0.02 * expected[0]);
        assertEquals(expected[1], totals.added().areaM2(), 0.02 * expected[1]);
        assertEquals(685, totals.controller().volumeL(), 0);
        assertEquals(18_610, totals.controller().areaM2(), 0);
        assertTrue(totals.disagree());
        assertEquals(118, totals.volumeRatio(), 4);
    }

    @Test
    void sections_lie_where_the_log_says() {
        BarGeometry geometry = TaskData.read(folder.resolve("TLG00011.BIN"), 0).geometry();
        assertEquals(16, geometry.leftM().size());
        assertEquals(-14.5, geometry.leftM().get(0), 1e-9);
        assertEquals(14.5, geometry.rightM().get(15), 1e-9);
        for (int s = 1; s < 16; s++) {
            assertEquals(geometry.rightM().get(s - 1), geometry.leftM().get(s), 1e-9);
        }
        assertEquals(8, geometry.hitchToDropM(), 1e-9);
        assertEquals("mounted", geometry.hitch());
    }

    /** The terminal's day is 15633 after 1980-01-01, the receiver's 15632; the meeting was on 2022-10-20. */
    @Test
    void a_day_that_is_one_off_is_told() {
        TaskLog log = TaskData.read(folder.resolve("TLG00011.BIN"), 16).logs().get(0);
        assertTrue(log.fields(0)[0].startsWith("2022-10-20T08:44:09"), log.fields(0)[0]);
        assertTrue(
                TestNotes.texts(log.notes()).stream().anyMatch(note -> note.contains("one day off")),
                TestNotes.texts(log.notes()).toString());
    }

    /** 18 records while standing with everything off. */
    @Test
    void a_task_in_which_nothing_was_applied_has_no_volume() throws IOException {
        for (String name : List.of("TLG00012", "TLG00005")) {
            assertEquals(0, TaskDataDecoder.volumeAndArea(folder, name)[0], 0);
            ControllerTotals totals =
                    TaskData.read(folder.resolve(name + ".BIN"), 16).totals().get(0);
            assertEquals(0, totals.added().volumeL(), 0);
            assertEquals(0, totals.controller().volumeL(), 0);
            assertTrue(!totals.disagree());
        }
    }

    @Test
    void three_tasks_are_asked_about_in_few_words() {
        String text = org.junit.jupiter.api.Assertions.assertThrows(
                        io.rowledger.finding.UnusableInputException.class, () -> TaskData.read(folder, 16))
                .getMessage();
        assertTrue(text.contains("found 3 tasks: TSK-10 (Task 10): TLG00005; TSK-22 (Task 22): TLG00011;"), text);
        assertTrue(text.length() < 600, text);
    }
}
