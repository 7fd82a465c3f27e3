package io.rowledger.cli;

import io.rowledger.report.Paper;
import io.rowledger.report.ReportOptions;
import io.rowledger.report.Season;
import io.rowledger.report.SeasonBuilder;
import io.rowledger.report.SeasonJob;
import io.rowledger.report.SeasonReport;
import io.rowledger.report.SeasonReportBuilder;
import io.rowledger.report.file.Seasons;
import io.rowledger.report.file.SummaryReader;
import io.rowledger.units.UnitSystem;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code rowledger season}: one ledger over many jobs. */
@Command(
        name = "season",
        mixinStandardHelpOptions = true,
        description = "Adds the results of many jobs up to one nitrogen ledger, per field and in all.")
@SuppressWarnings("NullAway.Init")
final class SeasonCommand implements Callable<Integer> {
    @Parameters(arity = "1..*", paramLabel = "RECORD_DIR", description = "Folders that report wrote with --out.")
    private List<Path> folders;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            defaultValue = "rowledger-season",
            description = "Where the ledger goes (default: ${DEFAULT-VALUE}).")
    private Path out;

    @Option(
            names = "--units",
            defaultValue = "us",
            paramLabel = "us|metric",
            description = "Units of the printed ledger; the sheet is letter for us, A4 for metric.")
    private UnitSystem units;

    @Option(
            names = "--paper",
            paramLabel = "letter|a4",
            description = "The sheet (default: letter for us, a4 for metric).")
    private @Nullable Paper paper;

    @Option(
            names = "--templates",
            paramLabel = "DIR",
            description = "A folder with your own copies of the report templates.")
    private @Nullable Path templates;

    private final Console console;

    SeasonCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        List<SeasonJob> jobs =
                folders.stream().map(Path::normalize).map(SummaryReader::read).toList();
        Season season = SeasonBuilder.build(jobs);
        Paper usual = units == UnitSystem.US ? Paper.LETTER : Paper.A4;
        List<ZoneId> zones =
                season.jobs().stream().map(SeasonJob::zone).distinct().toList();
        ZoneId zone = zones.size() == 1 ? zones.get(0) : ZoneOffset.UTC;
        ReportOptions options =
                new ReportOptions(units, paper == null ? usual : paper, zone, templates, Version.number());
        SeasonReport report = SeasonReportBuilder.build(season, options);
        Seasons.write(season, report, options, folders, out);
        report.answer().forEach(console.out()::println);
        season.notes().forEach(note -> console.out().println("Note: " + note));
        console.out().println("Ledger: " + out.toAbsolutePath().normalize());
        return Main.DONE;
    }
}
