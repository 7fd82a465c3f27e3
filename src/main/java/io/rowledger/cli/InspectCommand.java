package io.rowledger.cli;

import io.rowledger.document.text.Messages;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.Inspection;
import io.rowledger.log.header.LogOptions;
import io.rowledger.rig.DraftRig;
import io.rowledger.rig.RigReader;
import io.rowledger.units.UnitFormat;
import io.rowledger.units.UnitSystem;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code rowledger inspect}: how each column, unit and time was understood, and what is wrong with the log. */
@Command(
        name = "inspect",
        mixinStandardHelpOptions = true,
        description = "Shows how each column, unit and time of a log is understood, and what is wrong with it.")
@SuppressWarnings("NullAway.Init")
final class InspectCommand implements Callable<Integer> {
    @Parameters(
            paramLabel = "LOG",
            arity = "1..*",
            description = "One log or several: CSV, or task data (ISO 11783-10) as a folder, TASKDATA.XML or .zip.")
    private List<Path> logs;

    @Option(
            names = "--rig",
            paramLabel = "RIG.yaml",
            description = "Takes the column names from this rig file; its lengths need not be measured yet.")
    private @Nullable Path rig;

    @Option(
            names = "--draft-rig",
            paramLabel = "FILE",
            description = "Writes a rig file with the columns as understood and blanks for the lengths to measure.")
    private @Nullable Path draftRig;

    private final Console console;

    InspectCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        LogOptions options = rig == null ? LogOptions.unknownRig() : RigReader.logOptions(rig);
        Messages words = Messages.english(new UnitFormat(UnitSystem.US, ZoneOffset.UTC));
        Inspection inspection = Inspection.of(logs, options, words::text);
        console.out().print(inspection.text());
        if (draftRig != null) {
            DraftRig.write(draftRig, inspection, options.hints(), words::text);
            console.out().println("Draft rig file: " + draftRig);
        }
        inspection.refusals().forEach(this::refuse);
        int open = inspection.questions().size();
        if (open > 0) {
            refuse(UnusableInputException.found(open == 1 ? "1 open question" : open + " open questions")
                    .inFile(logs.stream().map(Path::toString).collect(Collectors.joining(", ")))
                    .expected("a log that can be read one way only")
                    .hint("answer what the inspection asks below the columns, in the rig file or in the log"));
        }
        return open == 0 && inspection.refusals().isEmpty() ? Main.DONE : Main.UNUSABLE;
    }

    private void refuse(UnusableInputException problem) {
        console.err().println("rowledger: " + problem.getMessage());
    }
}
