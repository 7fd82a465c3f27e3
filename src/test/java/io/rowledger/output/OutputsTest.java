package io.rowledger.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.document.pdf.Paper;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.report.common.Audience;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputsTest {
    @TempDir
    private Path temp;

    private static Outputs.Content words(String words) {
        return out -> out.write(words.getBytes(StandardCharsets.UTF_8));
    }

    private static Outputs.Content fullDisk() {
        return out -> {
            out.write(1);
            throw new IOException("No space left on device");
        };
    }

    private static List<String> files(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile)
                    .map(file -> folder.relativize(file).toString())
                    .sorted()
                    .toList();
        }
    }

    @Test
    void everything_of_a_run_is_written_into_a_new_folder() throws IOException {
        ReportOptions options = new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneOffset.UTC, null, "test");
        Path folder = temp.resolve("a/b");
        Reports.write(
                new SyntheticJob().build(),
                options,
                folder,
                EnumSet.of(Audience.APPLICATOR, Audience.DEALER),
                List.of(),
                2);
        assertEquals(
                List.of(
                        "diagnosis.json",
                        "layers/field.gpkg",
                        "layers/findings.geojson",
                        "layers/overlaps.geojson",
                        "layers/places.gpx",
                        "layers/received.tif",
                        "layers/setbacks.geojson",
                        "layers/skips.geojson",
                        "layers/strips.geojson",
                        "pass-review.pdf",
                        "passes.csv",
                        "review.html",
                        "row-diagnosis.pdf",
                        "rows.csv",
                        "setup-check.json",
                        "summary.json"),
                files(folder));
        try (Stream<Path> all = Files.list(folder)) {
            assertEquals(9, all.count(), "eight files, one folder, nothing hidden left");
        }
    }

    @Test
    void any_number_of_threads_writes_the_same_bytes() throws IOException {
        ReportOptions options = new ReportOptions(UnitSystem.METRIC, Paper.A4, ZoneOffset.UTC, null, "test");
        SyntheticJob job = new SyntheticJob().withFinding().withSecondProduct();
        Path one = temp.resolve("one");
        Path four = temp.resolve("four");
        Reports.write(job.build(), options, one, EnumSet.allOf(Audience.class), List.of(), 1);
        Reports.write(job.build(), options, four, EnumSet.allOf(Audience.class), List.of(), 4);
        assertEquals(files(one), files(four));
        for (String file : files(one)) {
            assertEquals(-1, Files.mismatch(one.resolve(file), four.resolve(file)), file);
        }
    }

    @Test
    void without_the_applicator_there_is_no_pass_review() throws IOException {
        ReportOptions options = new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneOffset.UTC, null, "test");
        Reports.write(new SyntheticJob().build(), options, temp, EnumSet.noneOf(Audience.class), List.of(), 1);
        assertFalse(files(temp).contains("pass-review.pdf"));
        assertTrue(files(temp).contains("summary.json"));
    }

    @Test
    void old_outputs_are_replaced_and_other_files_left_alone() throws IOException {
        Files.writeString(temp.resolve("one.txt"), "old");
        Files.writeString(temp.resolve("mine.txt"), "mine");
        new Outputs()
                .add("one.txt", words("new"))
                .add("sub/two.txt", words("two"))
                .writeTo(temp, 2);
        assertEquals("new", Files.readString(temp.resolve("one.txt")));
        assertEquals("mine", Files.readString(temp.resolve("mine.txt")));
        assertEquals(List.of("mine.txt", "one.txt", "sub/two.txt"), files(temp));
    }

    @Test
    void a_disk_that_fills_up_changes_nothing() throws IOException {
        Files.writeString(temp.resolve("one.txt"), "old");
        Outputs outputs = new Outputs().add("one.txt", words("new")).add("two.txt", fullDisk());
        UnusableInputException e = assertThrows(UnusableInputException.class, () -> outputs.writeTo(temp, 2));
        assertTrue(e.getMessage().contains("No space left on device"), e.getMessage());
        assertEquals("old", Files.readString(temp.resolve("one.txt")));
        assertEquals(List.of("one.txt"), files(temp));
        try (Stream<Path> all = Files.list(temp)) {
            assertEquals(1, all.count());
        }
    }

    @Test
    void a_folder_made_for_a_run_that_fails_is_taken_away_again() {
        Path folder = temp.resolve("fresh");
        assertThrows(
                UnusableInputException.class,
                () -> new Outputs().add("two.txt", fullDisk()).writeTo(folder, 2));
        assertFalse(Files.exists(folder));
    }

    @Test
    void a_bug_while_writing_changes_nothing_either() throws IOException {
        Outputs outputs = new Outputs().add("one.txt", words("new")).add("two.txt", out -> {
            throw new IllegalStateException("bug");
        });
        assertThrows(IllegalStateException.class, () -> outputs.writeTo(temp, 2));
        assertEquals(List.of(), files(temp));
    }

    @Test
    void a_file_where_the_folder_should_be_is_refused() throws IOException {
        Path file = Files.writeString(temp.resolve("out"), "x");
        UnusableInputException e = assertThrows(
                UnusableInputException.class,
                () -> new Outputs().add("a", words("a")).writeTo(file, 2));
        assertTrue(e.getMessage().contains("a file where the output folder should be"), e.getMessage());
        assertEquals("x", Files.readString(file));
    }

    @Test
    void a_folder_below_a_file_is_refused() throws IOException {
        Path file = Files.writeString(temp.resolve("out"), "x");
        assertThrows(
                UnusableInputException.class,
                () -> new Outputs().add("a", words("a")).writeTo(file.resolve("deeper"), 2));
    }

    @Test
    void a_folder_where_a_file_should_go_is_refused_before_anything_is_written() throws IOException {
        Files.createDirectory(temp.resolve("two.txt"));
        Outputs outputs = new Outputs().add("one.txt", words("1")).add("two.txt", words("2"));
        UnusableInputException e = assertThrows(UnusableInputException.class, () -> outputs.writeTo(temp, 2));
        assertTrue(e.getMessage().contains("two.txt"), e.getMessage());
        assertEquals(List.of(), files(temp));
    }

    /** A file named like a folder of ours makes the last rename fail after others have been done. */
    @Test
    void a_rename_that_fails_takes_back_those_before_it() throws IOException {
        Files.writeString(temp.resolve("one.txt"), "old");
        Files.writeString(temp.resolve("layers"), "a file");
        Outputs outputs = new Outputs().add("one.txt", words("new")).add("layers/two.txt", words("2"));
        assertThrows(UnusableInputException.class, () -> outputs.writeTo(temp, 2));
        assertEquals("old", Files.readString(temp.resolve("one.txt")));
        assertEquals(List.of("layers", "one.txt"), files(temp));
    }

    @Test
    void only_the_files_named_are_finished() throws IOException {
        Outputs outputs = new Outputs().add("a.pdf", words("a")).add("b.pdf", words("b"));
        assertEquals(
                List.of("b.pdf"),
                outputs.finishing(
                        Set.of("b.pdf", "c.pdf"),
                        whole -> (new String(whole, StandardCharsets.UTF_8) + " signed")
                                .getBytes(StandardCharsets.UTF_8)));
        outputs.writeTo(temp.resolve("out"), 2);
        assertEquals("a", Files.readString(temp.resolve("out/a.pdf")));
        assertEquals("b signed", Files.readString(temp.resolve("out/b.pdf")));
    }

    @Test
    void a_file_that_cannot_be_finished_leaves_nothing_behind() {
        Outputs outputs = new Outputs().add("a.pdf", words("a"));
        outputs.finishing(Set.of("a.pdf"), whole -> {
            throw new IOException("No");
        });
        assertThrows(UnusableInputException.class, () -> outputs.writeTo(temp.resolve("out"), 1));
        assertFalse(Files.exists(temp.resolve("out")));
    }
}
