package io.rowledger.cli;

import io.rowledger.report.record.RecordFieldList;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code rowledger record-fields}: what a nitrogen record holds and which published rule asks for it. */
@Command(
        name = "record-fields",
        mixinStandardHelpOptions = true,
        description =
                "Lists the facts of a nitrogen record, where each comes from, and which published rule requires it.")
@SuppressWarnings("NullAway.Init")
final class RecordFieldsCommand implements Callable<Integer> {
    /** How the list is printed. */
    enum Format {
        TEXT,
        YAML
    }

    @Option(
            names = "--format",
            defaultValue = "text",
            paramLabel = "text|yaml",
            description = "A list to read, or a job block for the rig file (default: ${DEFAULT-VALUE}).")
    private Format format;

    private final Console console;

    RecordFieldsCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        (format == Format.YAML ? RecordFieldList.yaml() : RecordFieldList.text()).forEach(console.out()::println);
        return Main.DONE;
    }
}
