package io.rowledger.workbench;

import io.rowledger.analysis.LogDates;
import io.rowledger.analysis.Progress;
import io.rowledger.batch.Batch;
import io.rowledger.batch.BatchOptions;
import io.rowledger.batch.BatchRun;
import io.rowledger.batch.FieldFiles;
import io.rowledger.batch.JobGrouping;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.report.common.Audience;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.season.BatchOutcome;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Fields at work, one call after the other, by the batch that the command line has: the same ledger, the same results to
 * the byte, and a stop at any moment loses nothing.
 */
final class Runs implements AutoCloseable {
    /** Phases of the pipeline in their order, each with the share of the time that is over when it begins, percent. */
    private static final Map<String, Integer> PHASES = phases();

    private static final Set<Audience> EVERYBODY = EnumSet.allOf(Audience.class);

    private final FieldStore store;
    private final Function<ZoneId, ReportOptions> look;
    private final String version;
    private final Events events;
    private final Consumer<Throwable> failures;
    private final ThreadPoolExecutor worker =
            new ThreadPoolExecutor(0, 1, 20, TimeUnit.SECONDS, new LinkedBlockingQueue<>(), task -> {
                Thread thread = new Thread(task, "workbench run");
                thread.setDaemon(true);
                return thread;
            });
    private final Map<String, Line> lines = new LinkedHashMap<>();
    /** What the engine refused, by field, until it is told. */
    private final Map<String, UnusableInputException> refusals = new ConcurrentHashMap<>();

    private boolean stopped;
    /** Calls that wait or run. */
    private int calls;

    Runs(
            FieldStore store,
            Function<ZoneId, ReportOptions> look,
            String version,
            Events events,
            Consumer<Throwable> failures) {
        this.store = store;
        this.look = look;
        this.version = version;
        this.events = events;
        this.failures = failures;
        worker.setMaximumPoolSize(1);
    }

    private static Map<String, Integer> phases() {
        Map<String, Integer> phases = new LinkedHashMap<>();
        phases.put("reading the log", 2);
        phases.put("rebuilding the track", 12);
        phases.put("diagnosing rows", 22);
        phases.put("computing coverage", 40);
        phases.put("estimating uncertainty", 55);
        phases.put("writing", 70);
        return phases;
    }

    /**
     * A field at work.
     *
     * @param field its name
     * @param state waiting, running, done, stopped or failed
     * @param phase of the pipeline, or empty
     * @param percent of the time, about
     * @param message what went wrong, or nothing
     */
    record Line(String field, String state, String phase, int percent, ProblemText message) {}

    /** What is at work, in the order of the queue. */
    record Work(List<Line> lines, boolean busy) {}

    /** Names of fields to run; null for all that are complete. */
    record Wanted(@Nullable List<String> fields) {}

    /** Ends a field's work at the next phase. */
    private static final class StoppedException extends RuntimeException {
        private static final long serialVersionUID = 1;

        StoppedException() {
            super("stopped", null, false, false);
        }
    }

    synchronized Work work() {
        return new Work(new ArrayList<>(lines.values()), calls > 0);
    }

    /** Puts fields into the queue. */
    Work start(Wanted wanted) throws IOException {
        List<String> names = wanted.fields() == null
                ? store.all().stream()
                        .filter(field -> !field.logs().isEmpty() && field.rig() != null)
                        .map(FieldFiles::name)
                        .toList()
                : wanted.fields();
        Path link = store.folder().firstLink(List.of());
        if (link != null) {
            throw new HttpRefusal(
                    HttpRefusal.FORBIDDEN,
                    "refusals.link",
                    store.folder().root().relativize(link).toString());
        }
        synchronized (this) {
            if (calls == 0) {
                lines.clear();
                refusals.clear();
                stopped = false;
            }
            for (String name : names) {
                if (wanted.fields() != null) {
                    store.field(name);
                }
                Line before = lines.get(name);
                if (before != null && (before.state.equals("waiting") || before.state.equals("running"))) {
                    throw new HttpRefusal(HttpRefusal.CONFLICT, "refusals.atWork", name);
                }
                lines.put(name, new Line(name, "waiting", "", 0, ProblemText.NONE));
            }
            boolean season = wanted.fields() == null;
            calls++;
            worker.execute(() -> run(Set.copyOf(names), season));
        }
        tell();
        return work();
    }

    /** Ends what is at work at its next phase and takes the rest out of the queue. Results that are there stay. */
    Work stop() {
        synchronized (this) {
            stopped = true;
        }
        tell();
        return work();
    }

    private synchronized boolean isStopped() {
        return stopped;
    }

    private void run(Set<String> names, boolean season) {
        try {
            if (isStopped()) {
                end(names, "stopped", ProblemText.NONE);
                return;
            }
            BatchRun.Work how = new BatchRun.Work(EVERYBODY, false, look);
            int cores = Runtime.getRuntime().availableProcessors();
            Path place = store.folder().results();
            Batch.Setting setting = new Batch.Setting(
                    store.folder().root(),
                    null,
                    JobGrouping.UNSAID,
                    place,
                    version,
                    BatchOptions.of(look.apply(ZoneOffset.UTC), EVERYBODY, false),
                    false,
                    names.size() == 1 ? 1 : Math.min(names.size(), cores),
                    cores,
                    Runtime.getRuntime().maxMemory());
            List<BatchOutcome> outcomes = Batch.run(
                    setting,
                    names::contains,
                    (files, check, fresh, threads) -> {
                        String field = nameOf(files.logs().get(0));
                        try {
                            BatchRun.field(files, past(check), fresh, threads, how, progress(field));
                        } catch (UnusableInputException e) {
                            refusals.put(field, e);
                            throw e;
                        }
                    },
                    listener());
            outcomes.forEach(this::end);
            Set<String> ended = outcomes.stream().map(BatchOutcome::name).collect(Collectors.toSet());
            Set<String> left =
                    names.stream().filter(name -> !ended.contains(name)).collect(Collectors.toSet());
            end(left, "failed", ProblemText.of("refusals.noLogs"));
            if (season && !isStopped()) {
                BatchRun.summarize(outcomes, how, place);
            }
        } catch (UnusableInputException e) {
            end(names, "failed", ProblemText.of(e));
        } catch (RuntimeException | Error e) {
            failures.accept(e);
            end(names, "failed", ProblemText.of("refusals.failed"));
        } finally {
            synchronized (this) {
                calls--;
            }
            tell();
        }
    }

    private static Batch.Check past(Batch.Check check) {
        return analysis -> {
            LogDates.requirePast(analysis.log(), Clock.systemUTC());
            check.require(analysis);
        };
    }

    /** The field that a log lies in. */
    private String nameOf(Path log) {
        Path folder = log.getParent();
        String name = folder == null
                ? ""
                : store.folder().root().relativize(folder).toString().replace('\\', '/');
        synchronized (this) {
            for (String field : lines.keySet()) {
                if (name.equals(field) || name.startsWith(field + "/") || field.startsWith(name + "/")) {
                    return field;
                }
            }
        }
        return name;
    }

    private Progress progress(String field) {
        return (phase, detail) -> {
            if (isStopped()) {
                throw new StoppedException();
            }
            put(new Line(field, "running", phase, PHASES.getOrDefault(phase, 0), ProblemText.NONE));
        };
    }

    private Batch.Listener listener() {
        return new Batch.Listener() {
            @Override
            public void planned(int jobs, int logs, int toDo) {
                tell();
            }

            @Override
            public void begins(String name) {
                put(new Line(name, "running", "", 0, ProblemText.NONE));
            }

            @Override
            public void ended(BatchOutcome outcome, int ended, int of) {
                end(outcome);
            }
        };
    }

    private void end(BatchOutcome outcome) {
        // The same files under another field's name were done there.
        boolean here = outcome.result().hasResults() && outcome.name().equals(outcome.results());
        String state = here ? "done" : isStopped() ? "stopped" : "failed";
        boolean ours = outcome.result() == BatchOutcome.Result.FAILED;
        if (ours && !isStopped()) {
            failures.accept(new IllegalStateException(outcome.name() + ": " + outcome.message()));
        }
        ProblemText message = here || state.equals("stopped") ? ProblemText.NONE : problem(outcome);
        put(new Line(outcome.name(), state, "", state.equals("done") ? 100 : 0, message));
    }

    private ProblemText problem(BatchOutcome outcome) {
        UnusableInputException refused = refusals.get(outcome.name());
        String text = outcome.message();
        if (outcome.result() == BatchOutcome.Result.FAILED) {
            return ProblemText.of("refusals.failed");
        }
        // A full disk is told without the path of the file that it cut short.
        if (FullDisk.isToldBy(text)) {
            return FullDisk.text();
        }
        if (outcome.result().hasResults()) {
            return ProblemText.of("refusals.doneAs", String.valueOf(outcome.results()));
        }
        return refused == null ? ProblemText.of("refusals.inEnglish", text) : ProblemText.of(refused);
    }

    private void end(Set<String> names, String state, ProblemText message) {
        names.forEach(name -> put(new Line(name, state, "", 0, message)));
    }

    private void put(Line line) {
        synchronized (this) {
            lines.put(line.field, line);
        }
        tell();
    }

    private void tell() {
        events.send("work", work());
    }

    @Override
    public void close() {
        synchronized (this) {
            stopped = true;
        }
        worker.shutdown();
    }
}
