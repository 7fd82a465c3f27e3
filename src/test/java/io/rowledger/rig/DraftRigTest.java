package io.rowledger.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.LogNotes;
import io.rowledger.log.LogReader;
import io.rowledger.log.LogReading;
import io.rowledger.log.header.LogHints;
import io.rowledger.log.header.LogOptions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DraftRigTest {
    private static final Path CASES = Path.of("src/test/resources/cases/good-log");

    @TempDir
    Path folder;

    private Path draft(String name) {
        Path log = CASES.resolve(name).resolve("log.csv");
        Path file = folder.resolve(name + ".yaml");
        DraftRig.write(file, LogNotes.inspection(List.of(log)), LogHints.NONE, LogNotes::text);
        return file;
    }

    @Test
    void a_draft_left_as_it_is_says_which_lengths_to_measure() {
        Path file = draft("many-names");
        UnusableInputException e = assertThrows(UnusableInputException.class, () -> RigReader.read(file));
        assertEquals(
                file + ":6: found lengths nobody has measured yet: rig.antenna.ahead_of_axle, "
                        + "rig.antenna.right_of_center, rig.axle_to_hitch, rig.hitch_to_wheels, rig.hitch_to_drop, "
                        + "rows.spacing; places still to be filled in: rig.hitch, rows.outer_share, products.liquid.name, "
                        + "products.liquid.density, products.liquid.analysis, products.liquid.target; expected a figure "
                        + "with its unit for each, such as 5.9 m or 19 ft 4 in. Hint: measure the machine as the "
                        + "README shows and write each figure over the words that stand there.",
                e.getMessage());
    }

    @Test
    void a_draft_filled_in_reads_its_log_as_it_was_understood() throws IOException {
        for (String name : List.of("many-names", "volume-totals", "nmea-positions", "date-and-time", "gps-week-ms")) {
            Path file = draft(name);
            String text = Files.readString(file)
                    .replace("ahead_of_axle: measure this", "ahead_of_axle: 1.6 m")
                    .replace("right_of_center: measure this", "right_of_center: 0 m")
                    .replace("spacing: measure this", "spacing: 30 in")
                    .replace("measure this", "5 m")
                    .replace("name: fill in", "name: UAN")
                    .replace("hitch: fill in", "hitch: pull-type")
                    .replace("outer_share: fill in", "outer_share: 1")
                    .replace("density: fill in", "density: 11.06 lb/gal")
                    .replace("analysis: fill in", "analysis: 32-0-0")
                    .replace("target: fill in", "target: 42 gal/ac");
            Files.writeString(file, text);
            Rig rig = RigReader.read(file).rig();
            assertEquals(3, rig.rows());
            Path log = CASES.resolve(name).resolve("log.csv");
            LogReading reading = LogReader.read(
                    List.of(log), new LogOptions(rig.columns(), List.of("liquid"), rig.rows(), rig.logHints()));
            assertEquals(12, reading.table().records(), name);
            // The plain log's first flow, 0.9 gal/min at 6.309020e-2 L/s (NIST SP 811 App. B.8).
            assertEquals(0.9 * 6.309020e-2, reading.table().flowLPerS(0, 0, 0), 1e-7, name);
            assertEquals(41.7, reading.table().latDeg(0), 1e-12, name);
        }
    }

    /** One meter does not tell how many rows it feeds: "count: 1" would make a bar of 12 rows one row wide. */
    @Test
    void the_rows_of_a_bar_with_one_meter_are_left_to_fill_in() throws IOException {
        for (String name :
                List.of("one-flow-for-the-bar", "one-total-for-the-bar", "one-rate-and-switches-for-the-bar")) {
            String text = Files.readString(draft(name));
            assertTrue(text.contains("  count: fill in "), text);
        }
        assertTrue(Files.readString(draft("rate-per-row")).contains("  count: 4 "));
    }

    @Test
    void a_file_that_is_there_is_never_replaced() throws IOException {
        Path file = Files.writeString(folder.resolve("plain.yaml"), "mine");
        UnusableInputException e = assertThrows(UnusableInputException.class, () -> draft("plain"));
        assertTrue(e.getMessage().contains("a file that is there already"), e.getMessage());
        assertEquals("mine", Files.readString(file));
    }
}
