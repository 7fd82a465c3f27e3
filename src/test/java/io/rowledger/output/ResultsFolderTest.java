package io.rowledger.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.pdf.Paper;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.report.common.Audience;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.ZoneOffset;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ResultsFolderTest {
    private static final ReportOptions OPTIONS =
            new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneOffset.UTC, null, "test");
    private static final Set<String> LOGS = Set.of("ab".repeat(32));

    @TempDir
    Path temp;

    private Path folder() {
        return temp.resolve("north");
    }

    private static Analysis job() {
        return new SyntheticJob().build();
    }

    private void write(Set<Audience> audiences) {
        Reports.write(job(), OPTIONS, folder(), audiences, List.of(), 2);
    }

    private static String refusal(Outputs outputs, Path folder, Set<String> logs) {
        return String.valueOf(assertThrows(
                        UnusableInputException.class,
                        () -> ResultsFolder.replace(folder, outputs, List.of(), ResultsFolder.job(logs), 1))
                .getMessage());
    }

    private static Outputs one() {
        return new Outputs().add("rows.csv", out -> out.write('x'));
    }

    private List<String> beside() throws IOException {
        try (Stream<Path> files = Files.list(temp)) {
            return files.map(file -> String.valueOf(file.getFileName()))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void a_run_replaces_all_of_an_earlier_one_of_the_same_log() throws IOException {
        write(EnumSet.allOf(Audience.class));
        assertTrue(Files.exists(folder().resolve("nitrogen-record.pdf")));
        write(EnumSet.of(Audience.DEALER));
        assertFalse(Files.exists(folder().resolve("nitrogen-record.pdf")), "a stale record");
        assertTrue(Files.exists(folder().resolve("row-diagnosis.pdf")));
        assertEquals(List.of("north"), beside());
    }

    @Test
    void a_run_replaces_what_another_version_wrote_of_the_same_log() throws IOException {
        write(EnumSet.noneOf(Audience.class));
        Path summary = folder().resolve("summary.json");
        String inputs = "\"inputs\": [{\"sha256\": \"" + LOGS.iterator().next() + "\"}]";
        Files.writeString(summary, "{\"schema\": \"rowledger-summary/1\", " + inputs + "}");
        write(EnumSet.noneOf(Audience.class));
        assertTrue(Files.readString(summary).contains("\"rowledger-summary/2\""));
    }

    /** Two products, setbacks and a finding: every name that a run writes is one that a later run replaces. */
    @Test
    void every_file_of_a_run_is_known_as_a_result() {
        List<SyntheticJob> jobs =
                List.of(new SyntheticJob().withFinding().withSecondProduct(), new SyntheticJob().withSetbacks());
        for (int j = 0; j < jobs.size(); j++) {
            SyntheticJob job = jobs.get(j);
            Path folder = temp.resolve("job" + j);
            for (int i = 0; i < 2; i++) {
                Reports.write(job.build(), OPTIONS, folder, EnumSet.allOf(Audience.class), List.of(), 2);
            }
            assertTrue(Files.exists(folder.resolve("layers/setbacks.geojson")));
        }
    }

    @Test
    void the_results_of_another_log_are_refused() throws IOException {
        write(EnumSet.noneOf(Audience.class));
        byte[] before = Files.readAllBytes(folder().resolve("summary.json"));
        String message = refusal(one(), folder(), Set.of("cd".repeat(32)));
        assertTrue(message.contains("the results of another log") && message.contains("Hint: "), message);
        assertEquals(List.of("north"), beside());
        assertEquals(-1, Files.mismatch(folder().resolve("summary.json"), Files.write(temp.resolve("copy"), before)));
    }

    @Test
    void files_that_are_no_results_are_refused() throws IOException {
        Files.createDirectories(folder());
        Files.writeString(folder().resolve("rows.csv"), "my own rows");
        String own = refusal(one(), folder(), LOGS);
        assertTrue(own.contains("a file that isn't a result: rows.csv"), own);
        assertEquals("my own rows", Files.readString(folder().resolve("rows.csv")));
        Files.delete(folder().resolve("rows.csv"));
        write(EnumSet.noneOf(Audience.class));
        Files.writeString(folder().resolve("notes.txt"), "mine");
        String beside = refusal(one(), folder(), LOGS);
        assertTrue(beside.contains("notes.txt"), beside);
        assertTrue(Files.exists(folder().resolve("summary.json")));
    }

    @Test
    void the_current_folder_and_no_name_are_refused() {
        assertTrue(refusal(one(), Path.of(""), LOGS).contains("the folder you are in"));
        assertTrue(refusal(one(), Path.of("").toAbsolutePath().getRoot(), LOGS).contains("the folder you are in"));
    }

    @Test
    void a_file_that_was_handed_in_is_refused_in_the_folder() throws IOException {
        write(EnumSet.noneOf(Audience.class));
        Path input = folder().resolve("layers/strips.geojson");
        UnusableInputException e = assertThrows(
                UnusableInputException.class,
                () -> Reports.write(job(), OPTIONS, folder(), Set.of(), List.of(input), 1));
        assertTrue(String.valueOf(e.getMessage()).contains("handed in"), e.getMessage());
        assertTrue(Files.exists(input));
    }

    @Test
    void a_run_that_fails_leaves_the_old_folder_and_nothing_else() throws IOException {
        write(EnumSet.of(Audience.DEALER));
        Outputs full = one().add("passes.csv", out -> {
            throw new IOException("No space left on device");
        });
        assertTrue(refusal(full, folder(), logs()).contains("No space left on device"));
        assertTrue(Files.exists(folder().resolve("row-diagnosis.pdf")));
        assertEquals(List.of("north"), beside());
        assertThrows(
                UnusableInputException.class,
                () -> ResultsFolder.replace(temp.resolve("a/b/c"), full, List.of(), ResultsFolder.job(LOGS), 1));
        assertEquals(List.of("north"), beside());
    }

    private static Set<String> logs() {
        return Set.of(job().log().sources().get(0).sha256());
    }

    /** As a run leaves it that is killed between its two renames. */
    @Test
    void the_old_folder_comes_back_after_a_kill_between_the_renames() throws IOException {
        write(EnumSet.of(Audience.DEALER));
        Path work = Files.createDirectory(temp.resolve(".north.rowledger"));
        Files.createFile(work.resolve("lock"));
        Files.createDirectory(work.resolve("new"));
        Files.move(folder(), work.resolve("old"));
        Outputs failing = new Outputs().add("rows.csv", out -> {
            throw new IOException("No");
        });
        refusal(failing, folder(), logs());
        assertTrue(Files.exists(folder().resolve("row-diagnosis.pdf")), "the old results are back");
        assertEquals(List.of("north"), beside());
    }

    @Test
    void another_run_at_work_is_left_alone() throws IOException {
        Path work = Files.createDirectory(temp.resolve(".north.rowledger"));
        try (FileChannel other =
                        FileChannel.open(work.resolve("lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
                FileLock held = other.lock()) {
            assertTrue(held.isValid());
            assertTrue(refusal(one(), folder(), LOGS).contains("another run"));
        }
        ResultsFolder.replace(folder(), one(), List.of(), ResultsFolder.job(LOGS), 1);
        assertEquals(List.of("north"), beside());
    }
}
