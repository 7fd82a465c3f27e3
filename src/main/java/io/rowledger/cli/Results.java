package io.rowledger.cli;

import io.rowledger.report.Analysis;
import io.rowledger.report.Paper;
import io.rowledger.report.PassReviewBuilder;
import io.rowledger.report.ReportOptions;
import io.rowledger.report.file.Audience;
import io.rowledger.report.file.Reports;
import io.rowledger.run.JobFiles;
import io.rowledger.units.UnitSystem;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * How a person wants the results, and where they go.
 *
 * @param units of the printed reports
 * @param paper the sheet, or null for the usual one of these units
 * @param templates the user's own templates, or null
 * @param threads or null for all cores
 * @param audiences whom to print for
 */
record Results(
        UnitSystem units,
        @Nullable Paper paper,
        @Nullable Path templates,
        @Nullable Integer threads,
        Set<Audience> audiences) {

    int threadCount() {
        return threads == null ? Runtime.getRuntime().availableProcessors() : threads;
    }

    /** Writes everything into the folder and says so. */
    void write(Analysis analysis, JobFiles files, Path folder, PrintStream out) {
        Paper usual = units == UnitSystem.US ? Paper.LETTER : Paper.A4;
        ReportOptions options = new ReportOptions(
                units, paper == null ? usual : paper, analysis.rig().job().zone(), templates, Version.number());
        Reports.write(analysis, options, folder, audiences, files.all(), threadCount());
        PassReviewBuilder.build(analysis, options).verdict().forEach(out::println);
        out.println("Reports: " + folder.toAbsolutePath().normalize());
    }
}
