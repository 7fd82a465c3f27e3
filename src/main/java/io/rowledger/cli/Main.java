package io.rowledger.cli;

import io.rowledger.finding.UnusableInputException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code rowledger}: one verb per thing a person wants. */
@Command(
        name = "rowledger",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        description = "Tells from a GPS and flow log whether every row of a side-dress bar got its rate.",
        synopsisSubcommandLabel = "COMMAND",
        subcommands = {
            OpenCommand.class,
            ReportCommand.class,
            BatchCommand.class,
            CompareCommand.class,
            InspectCommand.class,
            CheckCommand.class,
            SeasonCommand.class,
            RecordFieldsCommand.class,
            DemoCommand.class
        })
public final class Main implements Runnable {
    static final int DONE = 0;
    static final int FAILED = 1;
    static final int UNUSABLE = 2;

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    /** Runs the program and exits with its status. */
    public static void main(String[] args) {
        System.exit(run(new PrintStream(System.out, true, StandardCharsets.UTF_8), errors(), args));
    }

    private static PrintStream errors() {
        return new PrintStream(System.err, true, StandardCharsets.UTF_8);
    }

    /**
     * Runs the program with these streams; without a verb it is the workbench.
     *
     * @return the exit status: 0 done, 1 the program failed, 2 the input or the call can't be used
     */
    public static int run(PrintStream out, PrintStream err, String... args) {
        CommandLine line = new CommandLine(new Main(), new Commands(new Console(out, err)));
        line.setOut(new java.io.PrintWriter(out, true, StandardCharsets.UTF_8));
        line.setErr(new java.io.PrintWriter(err, true, StandardCharsets.UTF_8));
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setParameterExceptionHandler((e, unused) -> misused(e, err));
        line.setExecutionExceptionHandler((e, command, parsed) -> failed(e, err));
        return args.length == 0 ? line.execute("open") : line.execute(args);
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "no command");
    }

    private static int misused(ParameterException e, PrintStream err) {
        CommandSpec spec = e.getCommandLine().getCommandSpec();
        String call = spec.qualifiedName();
        err.println("rowledger: " + e.getMessage() + ". Hint: '" + call + " --help' lists the options.");
        CommandLine.UnmatchedArgumentException.printSuggestions(e, err);
        return UNUSABLE;
    }

    private static int failed(Exception e, PrintStream err) {
        if (e instanceof UnusableInputException unusable) {
            err.println("rowledger: " + unusable.getMessage());
            return UNUSABLE;
        }
        err.println("rowledger: the program failed. Nothing was written and your files are as they were."
                + " Please report this with these lines:");
        e.printStackTrace(err);
        return FAILED;
    }
}
