package io.rowledger.batch;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobFiles;
import io.rowledger.batch.BatchPlan.PlannedJob;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.report.season.BatchFigures;
import io.rowledger.report.season.BatchOutcome;
import io.rowledger.report.season.BatchOutcome.Result;
import io.rowledger.results.BatchLedger.Entry;
import io.rowledger.results.SummaryReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * Does the jobs of a folder, some at a time, the largest first so that none is left over at the end. A job that fails
 * stops no other. The results of a job are those that {@code report} writes for its files, byte for byte.
 */
public final class Batch {
    private final Setting setting;
    private final Work work;
    private final Listener listener;
    private final MemoryShare memory;

    private Batch(Setting setting, Work work, Listener listener) {
        this.setting = setting;
        this.work = work;
        this.listener = listener;
        this.memory = new MemoryShare(setting.heapBytes);
    }

    /**
     * What is to be done.
     *
     * @param folder of the logs
     * @param rig for logs without a rig file beside or above them, or null
     * @param each what makes a job
     * @param out the folder of the results, not that of the logs
     * @param version of the program
     * @param options that the results depend on, as words by name
     * @param again true where what was done is done again
     * @param jobs how many are done at a time
     * @param threads of all jobs together
     * @param heapBytes memory that they share
     */
    public record Setting(
            Path folder,
            @Nullable Path rig,
            JobGrouping each,
            Path out,
            String version,
            Map<String, String> options,
            boolean again,
            int jobs,
            int threads,
            long heapBytes) {}

    /** Does one job. */
    @FunctionalInterface
    public interface Work {
        /**
         * Analyzes the files and writes the results.
         *
         * @param check what the analysis must stand before anything is written
         * @param folder to be made and written to
         * @throws UnusableInputException where the files can't be used
         */
        void run(JobFiles files, Check check, Path folder, int threads);
    }

    /** Refuses an analysis that is of more than was meant. */
    @FunctionalInterface
    public interface Check {
        /** Throws {@link UnusableInputException} where it is. */
        void require(Analysis analysis);
    }

    /** Hears what becomes of the jobs. */
    public interface Listener {
        /** The folder has been looked through. */
        void planned(int jobs, int logs, int toDo);

        /** A job begins, perhaps by waiting for memory; several threads may say so at once. */
        void begins(String name);

        /** A job has ended; said by one thread at a time. */
        void ended(BatchOutcome outcome, int ended, int of);
    }

    /**
     * Does all jobs.
     *
     * @return what became of each, by name
     * @throws UnusableInputException where the folder, or that of the results, can't be used
     */
    public static List<BatchOutcome> run(Setting setting, Work work, Listener listener) {
        return run(setting, name -> true, null, work, listener);
    }

    /**
     * Does the jobs of one shard; without a shard, all jobs, those that shards have done being taken over.
     *
     * @return what became of each of these, by name
     * @throws UnusableInputException where the folder, or that of the results, can't be used
     */
    public static List<BatchOutcome> run(Setting setting, @Nullable Shard shard, Work work, Listener listener) {
        return run(setting, name -> true, shard, work, listener);
    }

    /**
     * Does some of the jobs and leaves the others as they are.
     *
     * @param only names of the jobs to do
     * @return what became of each of these, by name
     * @throws UnusableInputException where the folder, or that of the results, can't be used
     */
    public static List<BatchOutcome> run(Setting setting, Predicate<String> only, Work work, Listener listener) {
        return run(setting, only, null, work, listener);
    }

    private static List<BatchOutcome> run(
            Setting setting, Predicate<String> only, @Nullable Shard shard, Work work, Listener listener) {
        if (isSame(setting.folder, setting.out)) {
            throw UnusableInputException.found("the folder of the logs as that of the results")
                    .inFile(setting.out.toString())
                    .expected("two folders")
                    .hint("name another with --out, or leave it out");
        }
        List<FieldJob> all = BatchFolder.jobs(setting.folder, setting.rig, setting.each, setting.out);
        try (BatchStore store = BatchStore.open(setting.out, shard)) {
            all.stream()
                    .map(FieldJob::name)
                    .filter(name -> Shard.has(shard, name))
                    .forEach(store::recover);
            store.clearShards();
            List<FieldJob> jobs =
                    all.stream().filter(job -> only.test(job.name())).toList();
            return new Batch(setting, work, listener).all(jobs, shard, store);
        }
    }

    private static boolean isSame(Path a, Path b) {
        return a.toAbsolutePath().normalize().equals(b.toAbsolutePath().normalize());
    }

    /** Plans all jobs, since only together they show which logs are handed in twice, and does those of the shard. */
    private List<BatchOutcome> all(List<FieldJob> jobs, @Nullable Shard shard, BatchStore store) {
        List<PlannedJob> plan = BatchPlan.of(jobs, setting.version, setting.options, store, setting.again).stream()
                .filter(planned -> Shard.has(shard, planned.job().name()))
                .toList();
        List<PlannedJob> toDo = new ArrayList<>();
        List<BatchOutcome> outcomes = new ArrayList<>();
        for (PlannedJob planned : plan) {
            if (planned.basis() != null && planned.before() == null) {
                toDo.add(planned);
            }
        }
        listener.planned(
                plan.size(),
                plan.stream().mapToInt(planned -> planned.job().logs().size()).sum(),
                toDo.size());
        for (PlannedJob planned : plan) {
            if (planned.basis() == null || planned.before() != null) {
                end(outcomes, notDone(planned, store), plan.size());
            }
        }
        Map<String, Long> bytes = new HashMap<>();
        toDo.forEach(planned -> bytes.put(planned.job().name(), textBytes(planned.job())));
        toDo.sort(Comparator.comparing(
                (PlannedJob planned) -> -bytes.getOrDefault(planned.job().name(), 0L)));
        ExecutorService pool = Executors.newFixedThreadPool(setting.jobs);
        try {
            List<Future<?>> ends = new ArrayList<>();
            for (PlannedJob planned : toDo) {
                long size = bytes.getOrDefault(planned.job().name(), 0L);
                ends.add(pool.submit(() -> {
                    end(outcomes, done(planned, size, store), plan.size());
                    return null;
                }));
            }
            for (Future<?> end : ends) {
                end.get();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted; what is done stays done", e);
        } catch (ExecutionException e) {
            throw new IllegalStateException("a job that did not end as jobs do", e.getCause());
        } finally {
            pool.shutdownNow();
        }
        outcomes.sort(Comparator.comparing(BatchOutcome::name));
        return List.copyOf(outcomes);
    }

    private static long textBytes(FieldJob job) {
        return job.logs().stream().mapToLong(MemoryShare::textBytes).sum();
    }

    private void end(List<BatchOutcome> outcomes, BatchOutcome outcome, int of) {
        synchronized (outcomes) {
            outcomes.add(outcome);
            listener.ended(outcome, outcomes.size(), of);
        }
    }

    private BatchOutcome notDone(PlannedJob planned, BatchStore store) {
        FieldJob job = planned.job();
        Entry before = planned.before();
        if (job.problem() != null) {
            return failed(job, Result.UNUSABLE, String.valueOf(job.problem().getMessage()), store);
        }
        if (before != null && before.name().equals(job.name()) && store.doneByShards(job.name())) {
            return outcome(job, Result.DONE, "", job.name(), store);
        }
        if (before != null) {
            String message = before.name().equals(job.name())
                    ? "The same files and options as before."
                    : "The same files and options as before, when it was named " + before.name() + ".";
            return outcome(job, Result.AS_BEFORE, message, before.name(), store);
        }
        String message = "Its logs are those of " + planned.sameAs() + ", and are counted there.";
        return failed(job, Result.SAME_LOG, message, store);
    }

    /** Does a job when there is memory for it; where that was too little after all, again with all of it. */
    private BatchOutcome done(PlannedJob planned, long size, BatchStore store) throws InterruptedException {
        listener.begins(planned.job().name());
        int threads = memory.isAlone(size) ? setting.threads : Math.max(1, setting.threads / setting.jobs);
        try {
            return memory.with(size, () -> tried(planned, threads, store));
        } catch (OutOfMemoryError e) {
            return memory.with(Long.MAX_VALUE, () -> triedAlone(planned, store));
        }
    }

    private BatchOutcome triedAlone(PlannedJob planned, BatchStore store) {
        try {
            return tried(planned, 1, store);
        } catch (OutOfMemoryError e) {
            String message = "found logs too large for the " + setting.heapBytes / (1 << 20)
                    + " MB this program may use; expected logs that fit. Hint: give it more, such as java -Xmx8g -jar ...";
            return failed(planned.job(), Result.UNUSABLE, message, store);
        }
    }

    private BatchOutcome tried(PlannedJob planned, int threads, BatchStore store) {
        FieldJob job = planned.job();
        JobFiles files = Objects.requireNonNull(job.files());
        try {
            Path fresh = store.room(job);
            work.run(files, check(job), fresh, threads);
            store.requireSameSeason(job, fresh);
            store.put(job, Objects.requireNonNull(planned.basis()), fresh);
            return outcome(job, Result.DONE, "", job.name(), store);
        } catch (UnusableInputException e) {
            return failed(job, Result.UNUSABLE, String.valueOf(e.getMessage()), store);
        } catch (IOException e) {
            return failed(job, Result.UNUSABLE, "found that the results can't be written (" + e + ").", store);
        } catch (RuntimeException e) {
            return failed(job, Result.FAILED, trace(e), store);
        }
    }

    /** Who says what a job is knows better than the distance between its logs. */
    private Check check(FieldJob job) {
        boolean taken = setting.each == JobGrouping.UNSAID && job.logs().size() > 1;
        return analysis -> {
            if (taken) {
                OneField.require(
                        analysis, Objects.requireNonNull(job.logs().get(0).getParent()));
            }
        };
    }

    private static BatchOutcome outcome(FieldJob job, Result result, String message, String results, BatchStore store) {
        BatchFigures figures = SummaryReader.figuresWithRows(store.results(results));
        return new BatchOutcome(job.name(), result, job.logs().size(), job.how(), message, results, figures);
    }

    private static BatchOutcome failed(FieldJob job, Result result, String message, BatchStore store) {
        boolean old = result != Result.FAILED && store.ledger().entry(job.name()) != null;
        String text = old ? message + " The results in " + job.name() + " are of an earlier run." : message;
        return new BatchOutcome(job.name(), result, job.logs().size(), job.how(), text, null, null);
    }

    private static String trace(RuntimeException e) {
        StringWriter text = new StringWriter();
        e.printStackTrace(new PrintWriter(text));
        return text.toString().replace("\r", "");
    }
}
