package io.rowledger.batch;

import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobClock;
import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.Pipeline;
import io.rowledger.analysis.Progress;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.output.Batches;
import io.rowledger.output.Reports;
import io.rowledger.report.common.Audience;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.season.BatchFigures;
import io.rowledger.report.season.BatchOutcome;
import io.rowledger.report.season.BatchReport;
import io.rowledger.report.season.Season;
import io.rowledger.report.season.SeasonBuilder;
import io.rowledger.report.season.SeasonJob;
import io.rowledger.report.season.SeasonReport;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;

/** A whole run over a season's folder: every field as {@code report} does it, then the summary and the nitrogen ledger. */
public final class BatchRun {
    private BatchRun() {}

    /**
     * Does one field: reads, analyzes and writes, exactly as {@code report} does.
     *
     * @param check what the analysis must stand before anything is written
     * @param fresh the folder to be made and written to
     * @param work how the results look
     * @param progress hears the phases; what it throws ends the field's work with nothing written
     * @throws UnusableInputException where the files can't be used
     */
    public static void field(JobFiles files, Batch.Check check, Path fresh, int threads, Work work, Progress progress) {
        Analysis analysis = Pipeline.analyze(files, threads, progress);
        check.require(analysis);
        if (work.setupApplied) {
            analysis = Pipeline.withSetupApplied(analysis, files, threads, progress);
        }
        progress.begins("writing", "");
        ReportOptions options = work.options.apply(JobClock.zone(analysis));
        Reports.write(analysis, options, fresh, work.audiences, files.all(), threads);
    }

    /**
     * How the results of a run look.
     *
     * @param audiences whom to print for
     * @param setupApplied true for {@code --apply-setup-check}
     * @param options by the time zone of a field
     */
    public record Work(Set<Audience> audiences, boolean setupApplied, Function<ZoneId, ReportOptions> options) {}

    /** The summary of a run, not written. */
    public static BatchReport summary(List<BatchOutcome> outcomes, Work work) {
        return BatchReport.of(outcomes, work.options.apply(zone(outcomes)).in(Locale.ENGLISH));
    }

    /** Writes the summary of a run and the nitrogen ledger of its fields, and returns the summary. */
    public static BatchReport summarize(List<BatchOutcome> outcomes, Work work, Path place) {
        // The summary and the ledger are printed in English only.
        ReportOptions options = work.options.apply(zone(outcomes)).in(Locale.ENGLISH);
        BatchReport report = BatchReport.of(outcomes, options);
        List<SeasonJob> jobs = jobs(outcomes);
        Season season = jobs.isEmpty() ? null : SeasonBuilder.build(jobs);
        Batches.write(
                outcomes, report, season, season == null ? null : SeasonReport.of(season, options), options, place);
        return report;
    }

    /** The one time zone of all fields, UTC where they have several. */
    public static ZoneId zone(List<BatchOutcome> outcomes) {
        List<ZoneId> zones =
                jobs(outcomes).stream().map(SeasonJob::zone).distinct().toList();
        return zones.size() == 1 ? zones.get(0) : ZoneOffset.UTC;
    }

    private static List<SeasonJob> jobs(List<BatchOutcome> outcomes) {
        List<SeasonJob> jobs = new ArrayList<>();
        for (BatchOutcome outcome : outcomes) {
            BatchFigures figures = outcome.figures();
            if (figures != null) {
                jobs.add(figures.job());
            }
        }
        return jobs;
    }
}
