package io.rowledger.output;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.faults.FaultyFiles;
import io.rowledger.faults.FaultyFiles.Fault;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.output.OutputFaults.Tally;
import io.rowledger.results.ResultFile;
import io.rowledger.results.SummaryReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Kills, full disks and other faults at every change that writing results makes. */
class OutputFaultsTest {
    private static final List<String> NAMES = List.of("summary.json", "rows.csv", "layers/a.geojson");

    @TempDir
    Path temp;

    private static final ResultsFolder.Kind KIND = new ResultsFolder.Kind(
            Pattern.compile("summary\\.json|rows\\.csv|layers/a\\.geojson"),
            ResultFile.SUMMARY,
            Set.of("job"),
            folder -> Set.of("job"));

    private static void asFolder(Path folder, int generation) {
        ResultsFolder.replace(folder, OutputFaults.outputs(generation, NAMES), List.of(), KIND, 2);
    }

    private static void asFiles(Path folder, int generation) {
        OutputFaults.outputs(generation, NAMES).writeTo(folder, 1);
    }

    @Test
    void a_folder_of_results_is_old_or_new_after_every_fault() throws IOException {
        Tally tally = new OutputFaults(temp, OutputFaultsTest::asFolder)
                .run(true, Fault.KILL, Fault.FAIL_ONCE, Fault.DISK_FULL, Fault.READ_ONLY);
        assertTrue(tally.killed() > 15, tally.toString());
        assertTrue(tally.keptOld() > 20 && tally.gotNew() > 10, tally.toString());
        // Between the two renames of a kill, and where the disk turns read-only there.
        assertEquals(2, tally.incomplete(), tally.toString());
    }

    @Test
    void a_new_folder_is_there_or_not_after_every_fault() throws IOException {
        Tally tally = new OutputFaults(temp, OutputFaultsTest::asFolder).run(false, Fault.KILL, Fault.FAIL_ONCE);
        assertEquals(0, tally.incomplete(), tally.toString());
    }

    @Test
    void a_set_of_files_is_never_of_two_runs() throws IOException {
        Tally tally = new OutputFaults(temp, OutputFaultsTest::asFiles)
                .run(true, Fault.KILL, Fault.FAIL_ONCE, Fault.DISK_FULL, Fault.READ_ONLY);
        assertTrue(tally.killed() > 15, tally.toString());
        // Among the six renames and the folder and mark between them, for a kill and for a disk that turns read-only.
        assertTrue(tally.incomplete() <= 20, tally.toString());
    }

    @Test
    void whoever_looks_between_the_renames_is_told_how_to_get_the_results_back() {
        Path folder = temp.resolve("job");
        asFolder(folder, 1);
        for (int at = 0; Files.exists(folder); at++) {
            FaultyFiles files = new FaultyFiles(Fault.KILL, at);
            // Thrown as such, or as the cause of what the thread that writes met.
            assertThrows(Throwable.class, () -> asFolder(files.path(folder), 2));
        }
        String message = String.valueOf(assertThrows(UnusableInputException.class, () -> SummaryReader.figures(folder))
                .getMessage());
        assertTrue(message.contains("found no such folder; ") && message.contains("call that command again"), message);
        asFolder(folder, 3);
        assertTrue(Files.exists(folder.resolve("summary.json")));
    }
}
