package io.rowledger.cli;

import io.rowledger.log.Inspection;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code rowledger inspect}: how each column, unit and time was understood, and what is wrong with the log. */
@Command(
        name = "inspect",
        mixinStandardHelpOptions = true,
        description = "Says how each column, unit and time was understood and what is wrong with the log.")
@SuppressWarnings("NullAway.Init")
final class InspectCommand implements Callable<Integer> {
    @Parameters(paramLabel = "LOG", arity = "1..*", description = "One log or several.")
    private List<Path> logs;

    private final Console console;

    InspectCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        Inspection inspection = Inspection.of(logs);
        console.out().print(inspection.text());
        inspection.problems().forEach(problem -> console.err().println("rowledger: " + problem.getMessage()));
        return inspection.problems().isEmpty() ? Main.DONE : Main.UNUSABLE;
    }
}
