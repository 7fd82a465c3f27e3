package io.rowledger.cli;

import io.rowledger.analysis.Progress;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.output.Comparisons;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.compare.ComparisonReport;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.results.DiagnosisReader;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code rowledger compare}: did the repair work? */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        description = "Compares two jobs of one bar, before and after a repair: did the repair work?")
@SuppressWarnings("NullAway.Init")
final class CompareCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "BEFORE", description = "The results folder of the job before the repair.")
    private Path before;

    @Parameters(index = "1", paramLabel = "AFTER", description = "The results folder of the job after it.")
    private Path after;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            defaultValue = "rowledger-comparison",
            description = "Where the comparison goes (default: ${DEFAULT-VALUE}).")
    private Path out;

    @Mixin
    private PageOptions page;

    @Mixin
    private LanguageOption language;

    @Option(names = "--quiet", description = "No progress lines.")
    private boolean quiet;

    private final Console console;

    CompareCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        if (before.toAbsolutePath().normalize().equals(after.toAbsolutePath().normalize())) {
            throw UnusableInputException.found("the same folder twice")
                    .inFile(after.toString())
                    .expected("the results of two jobs")
                    .hint("name the folder of the job before the repair, then that of the job after it");
        }
        Progress progress = console.progress(quiet);
        progress.begins("reading the results", before + ", " + after);
        SavedDiagnosis old = DiagnosisReader.read(before);
        SavedDiagnosis now = DiagnosisReader.read(after);
        Comparisons.check(old, now, after);
        ReportOptions options = new ReportOptions(
                page.units(),
                page.sheet(),
                ComparisonReport.zone(old, now),
                page.templates(),
                Version.number(),
                language.locale());
        ComparisonReport report = ComparisonReport.of(old, now, options);
        progress.begins("writing", out.toString());
        Comparisons.write(old, now, report, options, List.of(before, after), out);
        report.content().answer().forEach(console.out()::println);
        console.out().println("Comparison: " + out.toAbsolutePath().normalize());
        return Main.DONE;
    }
}
