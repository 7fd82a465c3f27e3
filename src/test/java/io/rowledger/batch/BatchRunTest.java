package io.rowledger.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.analysis.JobFiles;
import io.rowledger.document.pdf.Paper;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.output.Reports;
import io.rowledger.report.common.Audience;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.report.season.BatchOutcome;
import io.rowledger.report.season.BatchOutcome.Result;
import io.rowledger.results.BatchLedger;
import io.rowledger.units.UnitSystem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The doing of many jobs, with a stand-in for the analysis that writes results of a made-up job. */
@Tag("slow")
class BatchRunTest {
    private static final long GIGABYTE = 1L << 30;
    private static final ReportOptions LOOK = new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneOffset.UTC, null, "1");

    @TempDir
    private Path temporary;

    private Path season;
    private Path out;
    private final List<String> worked = Collections.synchronizedList(new ArrayList<>());

    @BeforeEach
    void three_fields() throws IOException {
        season = Files.createDirectory(temporary.resolve("season"));
        out = temporary.resolve("out");
        Files.writeString(season.resolve("rig.yaml"), BatchFolderTest.RIG);
        for (String name : List.of("north", "hill", "creek")) {
            log(name, "log.csv", "time of " + name);
        }
    }

    private Path log(String field, String name, String text) throws IOException {
        Files.createDirectories(season.resolve(field));
        return Files.writeString(season.resolve(field).resolve(name), text);
    }

    private Batch.Setting setting(int jobs, long heapBytes) {
        return new Batch.Setting(
                season, null, JobGrouping.UNSAID, out, "1", Map.of("units", "us"), false, jobs, jobs, heapBytes);
    }

    private void write(JobFiles files, Batch.Check check, Path folder, int threads) {
        worked.add(files.logs().get(0).getParent().getFileName().toString());
        Reports.write(new SyntheticJob().build(), LOOK, folder, EnumSet.noneOf(Audience.class), List.of(), threads);
    }

    private Map<String, BatchOutcome> run(Batch.Setting setting, Batch.Work work) {
        Map<String, BatchOutcome> outcomes = new TreeMap<>();
        Batch.run(setting, work, new Silent()).forEach(outcome -> outcomes.put(outcome.name(), outcome));
        return outcomes;
    }

    private Map<String, BatchOutcome> run() {
        worked.clear();
        return run(setting(2, GIGABYTE), this::write);
    }

    private static class Silent implements Batch.Listener {
        @Override
        public void planned(int jobs, int logs, int toDo) {}

        @Override
        public void begins(String name) {}

        @Override
        public void ended(BatchOutcome outcome, int ended, int of) {}
    }

    @Test
    void a_shard_does_its_own_fields_and_writes_no_ledger_but_its_own() {
        List<String> done = new ArrayList<>();
        for (int i = 1; i <= 2; i++) {
            worked.clear();
            Shard shard = new Shard(i, 2);
            Batch.run(setting(1, GIGABYTE), shard, this::write, new Silent());
            assertTrue(worked.stream().allMatch(shard::holds), worked.toString());
            done.addAll(worked);
            assertFalse(Files.exists(out.resolve(BatchLedger.FILE)));
        }
        Collections.sort(done);
        assertEquals(List.of("creek", "hill", "north"), done);
        worked.clear();
        assertEquals(
                List.of(Result.DONE, Result.DONE, Result.DONE),
                run().values().stream().map(BatchOutcome::result).toList());
        assertEquals(List.of(), worked);
        assertFalse(Files.exists(out.resolve(".rowledger-batch/shard-1-of-2")));
        assertEquals(Result.AS_BEFORE, run().get("hill").result());
    }

    @Test
    void a_run_without_a_shard_is_refused_while_a_shard_is_at_work() throws IOException {
        Path hidden = Files.createDirectories(out.resolve(".rowledger-batch"));
        Files.createDirectories(hidden.resolve("shard-1-of-2"));
        try (BatchLocks shard = BatchLocks.take(out, hidden, new Shard(1, 2))) {
            assertNotNull(shard);
            assertTrue(assertThrows(UnusableInputException.class, this::run)
                    .getMessage()
                    .contains("another batch at work"));
        }
        assertEquals(Result.DONE, run().get("hill").result());
    }

    @Test
    void a_shard_is_a_number_of_a_number() {
        assertEquals(new Shard(2, 4), Shard.of("2/4"));
        for (String wrong : List.of("0/4", "5/4", "2", "a/b", "-1/4", "2/4/6", "")) {
            assertTrue(assertThrows(UnusableInputException.class, () -> Shard.of(wrong))
                    .getMessage()
                    .contains("I/N"));
        }
    }

    @Test
    void a_job_that_fails_stops_no_other_and_is_tried_again() {
        Map<String, BatchOutcome> first = run(setting(2, GIGABYTE), (files, check, folder, threads) -> {
            if (files.logs().get(0).toString().contains("hill")) {
                throw new IllegalStateException("a bug");
            }
            if (files.logs().get(0).toString().contains("creek")) {
                throw UnusableInputException.found("nonsense").inFile("creek/log.csv");
            }
            write(files, check, folder, threads);
        });
        assertEquals(Result.DONE, first.get("north").result());
        assertEquals(Result.FAILED, first.get("hill").result());
        assertTrue(first.get("hill").message().startsWith("java.lang.IllegalStateException: a bug\n\tat "));
        assertEquals(Result.UNUSABLE, first.get("creek").result());
        assertEquals("creek/log.csv: found nonsense.", first.get("creek").message());
        assertFalse(Files.exists(out.resolve("creek")));
        Map<String, BatchOutcome> second = run();
        assertEquals(Result.AS_BEFORE, second.get("north").result());
        assertEquals(List.of("creek", "hill"), worked.stream().sorted().toList());
    }

    @Test
    void only_what_changed_is_done_again() throws IOException {
        run();
        assertEquals(3, worked.size());
        run();
        assertEquals(List.of(), worked);
        log("hill", "log.csv", "another log");
        run();
        assertEquals(List.of("hill"), worked);
        Files.writeString(season.resolve("creek/boundary.geojson"), "{}");
        run();
        assertEquals(List.of("creek"), worked);
        Files.writeString(
                season.resolve("rig.yaml"), BatchFolderTest.RIG.replace("hitch_to_drop: 2 m", "hitch_to_drop: 3 m"));
        run();
        assertEquals(3, worked.size());
        worked.clear();
        run(
                new Batch.Setting(
                        season, null, JobGrouping.UNSAID, out, "2", Map.of("units", "us"), false, 1, 1, GIGABYTE),
                this::write);
        assertEquals(3, worked.size(), "another version of the program");
        worked.clear();
        run(
                new Batch.Setting(
                        season, null, JobGrouping.UNSAID, out, "2", Map.of("units", "metric"), false, 1, 1, GIGABYTE),
                this::write);
        assertEquals(3, worked.size(), "other units");
    }

    @Test
    void results_that_were_taken_away_or_changed_are_made_again() throws IOException {
        run();
        Files.delete(out.resolve("hill/rows.csv"));
        Files.writeString(out.resolve("creek/summary.json"), "{}");
        run();
        assertEquals(List.of("creek", "hill"), worked.stream().sorted().toList());
        assertTrue(Files.exists(out.resolve("hill/rows.csv")));
    }

    @Test
    void a_field_that_was_renamed_has_its_results_under_the_old_name() throws IOException {
        run();
        Files.move(season.resolve("hill"), season.resolve("hill-2026"));
        BatchOutcome outcome = run().get("hill-2026");
        assertEquals(List.of(), worked);
        assertEquals(Result.AS_BEFORE, outcome.result());
        assertEquals("hill", outcome.results());
        assertTrue(outcome.message().endsWith("when it was named hill."), outcome.message());
    }

    @Test
    void a_log_seen_in_another_field_is_skipped_and_named() throws IOException {
        log("copy-of-hill", "download.csv", "time of hill");
        log("north", "log (1).csv", "time of north");
        Map<String, BatchOutcome> outcomes = run();
        assertEquals(Result.DONE, outcomes.get("copy-of-hill").result());
        assertEquals(Result.SAME_LOG, outcomes.get("hill").result());
        assertEquals(
                "Its logs are those of copy-of-hill, and are counted there.",
                outcomes.get("hill").message());
        assertEquals(1, outcomes.get("north").logs());
        assertTrue(outcomes.get("north").how().contains("log.csv is the same file as log (1).csv and was left out."));
        assertEquals(3, worked.size());
    }

    @Test
    void a_part_of_the_logs_of_another_field_is_skipped() throws IOException {
        log("whole", "a.csv", "time of hill");
        log("whole", "b.csv", "the afternoon");
        Map<String, BatchOutcome> outcomes = run();
        assertEquals(Result.DONE, outcomes.get("whole").result());
        assertEquals(Result.SAME_LOG, outcomes.get("hill").result());
        assertEquals(
                "Its logs are those of whole, and are counted there.",
                outcomes.get("hill").message());
    }

    @Test
    void fields_that_share_some_of_their_logs_are_asked_about() throws IOException {
        log("day-1", "a.csv", "the morning");
        log("day-1", "b.csv", "the afternoon");
        log("day-2", "b.csv", "the afternoon");
        log("day-2", "c.csv", "the next day");
        Map<String, BatchOutcome> outcomes = run();
        assertEquals(Result.DONE, outcomes.get("day-1").result());
        assertEquals(Result.UNUSABLE, outcomes.get("day-2").result());
        assertTrue(
                outcomes.get("day-2")
                        .message()
                        .contains(
                                "found a log that day-1 has too, beside logs that it has not; expected each log in one job"),
                outcomes.get("day-2").message());
    }

    @Test
    void two_work_at_a_time_and_a_log_too_large_to_share_the_memory_works_alone() throws IOException {
        for (String name : List.of("north", "hill", "creek")) {
            log(name, "log.csv", name + " ".repeat(4 << 20));
        }
        assertEquals(2, mostAtOnce(2 * GIGABYTE));
        out = temporary.resolve("out-of-little");
        // Any log asks for more than half of what a heap of 200 MB gives out.
        assertEquals(1, mostAtOnce(200L << 20));
    }

    private int mostAtOnce(long heapBytes) {
        AtomicInteger now = new AtomicInteger();
        AtomicInteger most = new AtomicInteger();
        Map<String, BatchOutcome> outcomes = run(setting(2, heapBytes), (files, check, folder, threads) -> {
            most.accumulateAndGet(now.incrementAndGet(), Math::max);
            try {
                Thread.sleep(150);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
            write(files, check, folder, threads);
            now.decrementAndGet();
        });
        assertTrue(outcomes.values().stream().allMatch(outcome -> outcome.result() == Result.DONE), outcomes::toString);
        return most.get();
    }

    @Test
    void a_job_that_ran_out_of_memory_is_tried_again_alone() {
        AtomicInteger tries = new AtomicInteger();
        Map<String, BatchOutcome> outcomes = run(setting(2, GIGABYTE), (files, check, folder, threads) -> {
            String log = files.logs().get(0).toString();
            if (log.contains("creek") || (log.contains("hill") && tries.incrementAndGet() == 1)) {
                throw new OutOfMemoryError("Java heap space");
            }
            write(files, check, folder, threads);
        });
        assertEquals(Result.DONE, outcomes.get("hill").result());
        assertEquals(Result.DONE, outcomes.get("north").result());
        assertEquals(Result.UNUSABLE, outcomes.get("creek").result());
        assertTrue(outcomes.get("creek")
                .message()
                .startsWith("found logs too large for the 1024 MB this program may use;"));
    }

    @Test
    void results_that_no_longer_hold_are_said_to_be_old() throws IOException {
        run();
        Files.writeString(season.resolve("hill/rig.yaml"), "rig: {}");
        BatchOutcome outcome = run().get("hill");
        assertEquals(Result.UNUSABLE, outcome.result());
        assertTrue(outcome.message().endsWith(" The results in hill are of an earlier run."), outcome.message());
        assertTrue(Files.exists(out.resolve("hill/summary.json")));
    }

    @Test
    void results_of_another_season_are_not_replaced() throws IOException {
        run();
        Path summary = out.resolve("hill/summary.json");
        String old = Pattern.compile("\"20(\\d\\d)(-\\d\\d-\\d\\dT)")
                .matcher(Files.readString(summary))
                .replaceAll(m -> "\"19" + m.group(1) + m.group(2));
        Files.writeString(summary, old);
        log("hill", "log.csv", "the log of this year");
        BatchOutcome hill = run().get("hill");
        assertEquals(Result.UNUSABLE, hill.result());
        assertTrue(hill.message().contains("results of work on 19"), hill.message());
        assertTrue(hill.message().contains("name another folder with --out"), hill.message());
        assertEquals(old, Files.readString(summary));
    }

    @Test
    void what_a_person_put_beside_the_results_stays() throws IOException {
        run();
        Files.writeString(out.resolve("hill/my notes.txt"), "wet spot");
        log("hill", "log.csv", "another log");
        run();
        assertEquals(List.of("hill"), worked);
        assertEquals("wet spot", Files.readString(out.resolve("hill/my notes.txt")));
    }

    @Test
    void killed_between_the_two_renames_the_old_results_come_back() throws IOException {
        run();
        Path before = out.resolve(".rowledger-batch/before");
        Files.createDirectories(before);
        Files.move(out.resolve("hill"), before.resolve("hill"));
        run();
        assertEquals(List.of(), worked);
        assertTrue(Files.exists(out.resolve("hill/summary.json")));
        // Killed after them: the new results stand, the person's file comes over, the old results go.
        Files.createDirectories(before.resolve("hill"));
        Files.writeString(before.resolve("hill/rows.csv"), "old");
        Files.writeString(before.resolve("hill/notes.txt"), "wet spot");
        run();
        assertEquals(List.of(), worked);
        assertEquals("wet spot", Files.readString(out.resolve("hill/notes.txt")));
        assertFalse(Files.readString(out.resolve("hill/rows.csv")).equals("old"));
        assertFalse(Files.exists(before.resolve("hill")));
    }

    @Test
    void a_folder_that_is_no_result_is_not_replaced() throws IOException {
        Files.createDirectories(out.resolve("hill"));
        Files.writeString(out.resolve("hill/photo.jpg"), "a photo");
        Map<String, BatchOutcome> outcomes = run();
        assertEquals(Result.UNUSABLE, outcomes.get("hill").result());
        assertTrue(outcomes.get("hill").message().contains("something that is no result of a batch"));
        assertEquals(Result.DONE, outcomes.get("north").result());
        assertEquals("a photo", Files.readString(out.resolve("hill/photo.jpg")));
    }

    @Test
    void two_batches_do_not_write_into_one_folder_nor_one_into_the_logs() {
        Map<String, BatchOutcome> outcomes = run(setting(1, GIGABYTE), (files, check, folder, threads) -> run());
        assertTrue(outcomes.get("hill").message().contains("found another batch at work"), outcomes::toString);
        out = season;
        assertTrue(assertThrows(UnusableInputException.class, this::run)
                .getMessage()
                .contains("found the folder of the logs as that of the results"));
    }

    @Test
    void a_ledger_that_is_none_is_said() throws IOException {
        Files.createDirectories(out);
        Files.writeString(out.resolve(BatchLedger.FILE), "{\"schema\": \"rowledger-batch-ledger/9\"}");
        String message = assertThrows(UnusableInputException.class, this::run).getMessage();
        assertTrue(message.contains("rowledger-batch-ledger/9"), message);
    }
}
