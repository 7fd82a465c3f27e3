package io.rowledger.cli;

import io.rowledger.analysis.LogDates;
import io.rowledger.analysis.Progress;
import io.rowledger.batch.Batch;
import io.rowledger.batch.BatchOptions;
import io.rowledger.batch.BatchRun;
import io.rowledger.batch.JobGrouping;
import io.rowledger.batch.Shard;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.output.Batches;
import io.rowledger.report.common.Audience;
import io.rowledger.report.season.BatchOutcome;
import io.rowledger.report.season.BatchOutcome.Result;
import io.rowledger.report.season.BatchReport;
import io.rowledger.report.season.BatchSummary;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code rowledger batch}: every field of a folder. */
@Command(
        name = "batch",
        mixinStandardHelpOptions = true,
        description = {
            "Runs report on every field of a folder: each folder of logs in it is one field.",
            "Results that are already there for the same files are kept. A bad log does not stop the others."
        })
@SuppressWarnings("NullAway.Init")
final class BatchCommand implements Callable<Integer> {
    @Parameters(paramLabel = "DIR", description = "A folder that holds a folder of logs for each field.")
    private Path folder;

    @Option(
            names = "--rig",
            paramLabel = "RIG.yaml",
            description = "Rig file for logs that have no rig.yaml beside or above them.")
    private @Nullable Path rig;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Where the results go (default: DIR-results beside DIR).")
    private @Nullable Path out;

    @Option(
            names = "--each",
            paramLabel = "folder|log",
            description = "What one field is where the folders don't tell: each folder of logs, or each log.")
    private @Nullable JobGrouping each;

    @Option(
            names = "--for",
            split = ",",
            paramLabel = "WHO",
            defaultValue = "applicator,landlord,dealer",
            description = "Who the reports are for: applicator, landlord, dealer (default: ${DEFAULT-VALUE}).")
    private List<Audience> audiences;

    @Mixin
    private PageOptions page;

    @Mixin
    private LanguageOption language;

    @Option(names = "--apply-setup-check", description = "As in report.")
    private boolean applySetupCheck;

    @Option(names = "--jobs", paramLabel = "N", description = "Fields done at a time (default: as many as cores).")
    private @Nullable Integer jobs;

    @Option(
            names = "--shard",
            paramLabel = "I/N",
            description =
                    "Does the fields that fall to part I of N, for several processes or machines at once on one folder"
                            + " of results. A last call without it writes the summary.")
    private @Nullable String part;

    @Option(names = "--again", description = "Does every field again, also those done before from the same files.")
    private boolean again;

    @Option(names = "--quiet", description = "No progress lines.")
    private boolean quiet;

    private final Console console;

    BatchCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        if (jobs != null && jobs < 1) {
            throw UnusableInputException.found(jobs + " fields at a time")
                    .atColumn("--jobs")
                    .expected("1 or more")
                    .hint("leave --jobs out to do as many as there are cores");
        }
        Shard shard = part == null ? null : Shard.of(part);
        long start = System.nanoTime();
        int cores = Runtime.getRuntime().availableProcessors();
        Results results = new Results(
                page.units(), page.sheet(), page.templates(), null, Results.printable(audiences), language.locale());
        Path place = out == null ? beside(folder) : out;
        Batches.requireOurs(place);
        Batch.Setting setting = new Batch.Setting(
                folder,
                rig,
                each == null ? JobGrouping.UNSAID : each,
                place,
                Version.number(),
                BatchOptions.of(results.options(ZoneOffset.UTC), results.audiences(), applySetupCheck),
                again,
                jobs == null ? cores : jobs,
                cores,
                Runtime.getRuntime().maxMemory());
        BatchRun.Work work = new BatchRun.Work(results.audiences(), applySetupCheck, results::options);
        List<BatchOutcome> outcomes = Batch.run(
                setting,
                shard,
                (files, check, fresh, threads) ->
                        BatchRun.field(files, past(check), fresh, threads, work, Progress.SILENT),
                new BatchProgress(console.progress(quiet), page.units(), System::nanoTime));
        BatchReport report =
                shard == null ? BatchRun.summarize(outcomes, work, place) : BatchRun.summary(outcomes, work);
        Messages messages =
                results.options(BatchRun.zone(outcomes)).in(Locale.ENGLISH).messages();
        print(outcomes, report.content(), messages, shard == null, place, System.nanoTime() - start);
        return status(outcomes);
    }

    private static Batch.Check past(Batch.Check check) {
        return analysis -> {
            LogDates.requirePast(analysis.log(), Clock.systemUTC());
            check.require(analysis);
        };
    }

    private static Path beside(Path folder) {
        Path whole = folder.toAbsolutePath().normalize();
        if (whole.getFileName() == null) {
            throw UnusableInputException.found("a folder with no folder around it")
                    .inFile(folder.toString())
                    .expected("a place for the results")
                    .hint("name one with --out");
        }
        return whole.resolveSibling(whole.getFileName() + "-results");
    }

    private void print(
            List<BatchOutcome> outcomes,
            BatchSummary summary,
            Messages messages,
            boolean summarized,
            Path place,
            long nanos) {
        BatchTable.print(outcomes, summary, messages, console.out());
        for (BatchOutcome outcome : outcomes) {
            if (outcome.result() == Result.FAILED) {
                console.err()
                        .println("rowledger: " + outcome.name() + ": the program failed. Its files are as they were."
                                + " Please report this with these lines:");
                console.err().print(outcome.message());
            } else if (outcome.result() == Result.UNUSABLE) {
                console.err().println("rowledger: " + outcome.name() + ": " + outcome.message());
            }
        }
        long done = outcomes.stream()
                .filter(outcome -> outcome.result() == Result.DONE)
                .count();
        double seconds = nanos / 1e9;
        console.out()
                .println(BatchProgress.seconds(seconds) + " in all"
                        + (done == 0 ? "." : ", " + BatchProgress.seconds(seconds / done) + " for each field done."));
        Path whole = place.toAbsolutePath().normalize();
        console.out()
                .println(
                        summarized
                                ? "Summary: " + whole.resolve("batch-summary.pdf")
                                : "One shard of several: call once more without --shard for the summary.");
        console.out().println("Reports: " + whole);
    }

    private static int status(List<BatchOutcome> outcomes) {
        List<Result> results = outcomes.stream().map(BatchOutcome::result).toList();
        if (results.contains(Result.FAILED)) {
            return Main.FAILED;
        }
        return results.contains(Result.UNUSABLE) ? Main.UNUSABLE : Main.DONE;
    }
}
