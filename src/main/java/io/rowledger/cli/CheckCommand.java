package io.rowledger.cli;

import io.rowledger.analysis.JobClock;
import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.LogDates;
import io.rowledger.analysis.RowCheck;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.document.pdf.Paper;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.LogTable;
import io.rowledger.output.CheckPages;
import io.rowledger.page.ReviewPage;
import io.rowledger.report.common.ReportHeaders;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.report.findings.FindingTitles;
import io.rowledger.rig.Band;
import io.rowledger.text.Message;
import io.rowledger.units.Dimension;
import io.rowledger.units.Quantity;
import io.rowledger.units.Reading;
import io.rowledger.units.Refusal;
import io.rowledger.units.UnitSystem;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code rowledger check}: the row diagnosis alone, without a rig file. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = "Compares the rows of a log with each other; needs no rig file.")
@SuppressWarnings("NullAway.Init")
final class CheckCommand implements Callable<Integer> {
    @Parameters(paramLabel = "LOG", arity = "1..*", description = "One log or several of the same job.")
    private List<Path> logs;

    @Option(
            names = "--rows",
            paramLabel = "N",
            description = "Number of rows (default: as many as the log has flow columns).")
    private int rows;

    @Option(names = "--spacing", paramLabel = "S", description = "Row spacing with its unit (default: 30 in).")
    private @Nullable String spacing;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "A folder for the page review.html alone (default: LOG-check, after the first log).")
    private @Nullable Path out;

    @Mixin
    private LanguageOption language;

    @Option(names = "--units", defaultValue = "us", paramLabel = "us|metric", description = "Units of what is printed.")
    private UnitSystem units;

    private final Console console;

    CheckCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        if (rows < 0 || rows > Band.MAX_ROWS) {
            throw UnusableInputException.found(rows + " rows")
                    .atColumn("--rows")
                    .expected("1 to " + Band.MAX_ROWS)
                    .hint("leave --rows out to take as many as the log has flow columns");
        }
        RowCheck check =
                RowCheck.of(logs, rows, spacingM(), Runtime.getRuntime().availableProcessors());
        LogTable log = check.reading().table();
        LogDates.requirePast(log, Clock.systemUTC());
        ZoneId zone = log.records() == 0 ? ZoneOffset.UTC : JobClock.bySun(log.lonDeg(0));
        ReportOptions options = new ReportOptions(units, Paper.LETTER, zone, null, Version.number(), language.locale());
        Messages messages = options.messages();
        print(messages.text(check.what()));
        print(check, messages);
        check.reading().notes().forEach(note -> print(messages.text("check.note", note)));
        String name = JobFiles.stem(logs.get(0));
        Path folder = out == null ? Path.of(name + "-check") : out;
        CheckPages.write(check, name, options, folder);
        print(messages.text(
                "check.page",
                folder.resolve(ReviewPage.FILE).toAbsolutePath().normalize().toString()));
        return Main.DONE;
    }

    private void print(RowCheck check, Messages messages) {
        Diagnosis diagnosis = check.diagnosis();
        if (diagnosis.findings().isEmpty()) {
            print(messages.text(check.comparesRows() ? "check.nothing" : "check.notComparable"));
        }
        for (Finding finding : diagnosis.findings()) {
            print("");
            print(messages.text(
                    "check.finding", FindingTitles.of(finding), FindingFacts.confidence(finding.confidence())));
            print(messages.text(
                    "check.when",
                    Message.time(finding.fromS()),
                    Message.time(finding.toS()),
                    ReportHeaders.zone(messages.units())));
            print(messages.text("check.evidence", finding.evidence()));
            print(messages.text("check.alternative", finding.alternative()));
            print(messages.text("check.check", finding.check()));
        }
        print("");
        diagnosis.notes().forEach(note -> print(messages.text("check.note", note)));
    }

    private void print(String line) {
        console.out().println(line);
    }

    private double spacingM() {
        if (spacing == null) {
            return RowCheck.DEFAULT_SPACING_M;
        }
        Reading reading = Quantity.read(spacing, Dimension.LENGTH);
        if (reading instanceof Refusal refusal) {
            throw UnusableInputException.found(refusal.found())
                    .atColumn("--spacing")
                    .expected(refusal.expected())
                    .hint(refusal.hint());
        }
        double spacingM = ((Quantity) reading).si();
        if (!(spacingM >= Band.MIN_WIDTH_M && spacingM <= Band.MAX_WIDTH_M)) {
            throw UnusableInputException.found("\"" + spacing + "\"")
                    .atColumn("--spacing")
                    .expected("a spacing from 2 in to 197 ft (5 cm to 60 m)")
                    .hint("write the row spacing, such as --spacing \"30 in\"");
        }
        return spacingM;
    }
}
