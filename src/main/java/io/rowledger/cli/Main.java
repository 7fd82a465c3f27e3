package io.rowledger.cli;

import io.rowledger.finding.UnusableInputException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.OptionalInt;
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
        synopsisSubcommandLabel = "COMMAND")
public final class Main implements Runnable {
    static final int DONE = 0;
    static final int FAILED = 1;
    static final int UNUSABLE = 2;

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    /** Runs the program and exits with its status. */
    public static void main(String[] args) {
        OptionalInt status = SecondJvm.run(args);
        if (status.isPresent()) {
            System.exit(status.getAsInt());
        }
        SecondJvm.watchFirst();
        CompilerDirectives.leaveOutOptimizer();
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
        return run(new Console(new VisiblePrintStream(out), new VisiblePrintStream(err)), args);
    }

    private static int run(Console console, String... args) {
        PrintStream out = console.out();
        PrintStream err = console.err();
        CommandLine line = new Commands(console).line(args.length == 0 ? "open" : args[0]);
        line.setOut(new java.io.PrintWriter(out, true, StandardCharsets.UTF_8));
        line.setErr(new java.io.PrintWriter(err, true, StandardCharsets.UTF_8));
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setParameterExceptionHandler((e, unused) -> misused(e, err));
        line.setExecutionExceptionHandler((e, command, parsed) -> failed(e, err));
        try {
            return args.length == 0 ? line.execute("open") : line.execute(args);
        } catch (OutOfMemoryError e) {
            return outOfMemory(err);
        } catch (StackOverflowError e) {
            return failed(e, err);
        }
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), MisusedCall.NO_COMMAND);
    }

    private static int misused(ParameterException e, PrintStream err) {
        err.println("rowledger: " + MisusedCall.refusal(e).getMessage());
        return UNUSABLE;
    }

    /** Prints the refusal. The command's hidden folders were cleared when they were closed, so nothing was written. */
    private static int outOfMemory(PrintStream err) {
        long megabytes = Runtime.getRuntime().maxMemory() >> 20;
        err.println("rowledger: "
                + UnusableInputException.found("more data than fits into the " + megabytes + " MB that Java may use")
                        .expected("enough memory for all records of the job")
                        .hint("give Java more memory, such as java -Xmx" + 4 * Math.max(1, (megabytes + 1023) / 1024)
                                + "g -jar rowledger.jar ..., or give fewer logs at a time; nothing was written")
                        .getMessage());
        return UNUSABLE;
    }

    private static int failed(Throwable e, PrintStream err) {
        for (Throwable cause = e; cause != null; cause = cause.getCause()) {
            if (cause instanceof OutOfMemoryError) {
                return outOfMemory(err);
            }
        }
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
