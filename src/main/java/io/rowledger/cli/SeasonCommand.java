package io.rowledger.cli;

import io.rowledger.output.Seasons;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.season.Season;
import io.rowledger.report.season.SeasonBuilder;
import io.rowledger.report.season.SeasonJob;
import io.rowledger.report.season.SeasonReport;
import io.rowledger.results.SummaryReader;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code rowledger season}: one ledger over many jobs. */
@Command(
        name = "season",
        mixinStandardHelpOptions = true,
        description = "Adds up the results of many jobs in one nitrogen ledger, by field and in all.")
@SuppressWarnings("NullAway.Init")
final class SeasonCommand implements Callable<Integer> {
    @Parameters(arity = "1..*", paramLabel = "RECORD_DIR", description = "Folders of results that report wrote.")
    private List<Path> folders;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            defaultValue = "rowledger-season",
            description = "Where the ledger goes (default: ${DEFAULT-VALUE}).")
    private Path out;

    @Mixin
    private PageOptions page;

    private final Console console;

    SeasonCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        List<SeasonJob> jobs =
                folders.stream().map(Path::normalize).map(SummaryReader::read).toList();
        Season season = SeasonBuilder.build(jobs);
        List<ZoneId> zones =
                season.jobs().stream().map(SeasonJob::zone).distinct().toList();
        ZoneId zone = zones.size() == 1 ? zones.get(0) : ZoneOffset.UTC;
        ReportOptions options = new ReportOptions(page.units(), page.sheet(), zone, page.templates(), Version.number());
        SeasonReport report = SeasonReport.of(season, options);
        Seasons.write(season, report, options, folders, out);
        report.content().answer().forEach(console.out()::println);
        report.content().notes().forEach(note -> console.out().println("Note: " + note));
        console.out().println("Ledger: " + out.toAbsolutePath().normalize());
        return Main.DONE;
    }
}
