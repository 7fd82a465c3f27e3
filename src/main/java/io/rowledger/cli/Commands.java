package io.rowledger.cli;

import java.util.List;
import picocli.CommandLine;

/** Makes the commands with the console they print to. */
final class Commands {
    /** In the order of the help. */
    private static final List<String> VERBS =
            List.of("open", "report", "batch", "compare", "inspect", "check", "season", "record-fields", "demo");

    private final Console console;

    Commands(Console console) {
        this.console = console;
    }

    /**
     * The command line for a call. Where the call's first word is a verb, that verb alone is on it: to read the options of all
     * nine takes as long as to start Java.
     */
    CommandLine line(String first) {
        CommandLine line = new CommandLine(new Main());
        for (String verb : VERBS.contains(first) ? List.of(first) : VERBS) {
            line.addSubcommand(verb, command(verb));
        }
        return line;
    }

    private Object command(String verb) {
        return switch (verb) {
            case "open" -> new OpenCommand(console);
            case "report" -> new ReportCommand(console);
            case "batch" -> new BatchCommand(console);
            case "compare" -> new CompareCommand(console);
            case "inspect" -> new InspectCommand(console);
            case "check" -> new CheckCommand(console);
            case "season" -> new SeasonCommand(console);
            case "record-fields" -> new RecordFieldsCommand(console);
            case "demo" -> new DemoCommand(console);
            default -> throw new IllegalArgumentException(verb);
        };
    }
}
