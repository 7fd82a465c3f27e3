package io.rowledger.cli;

import picocli.CommandLine;

/** Makes the commands with the console they print to. */
final class Commands implements CommandLine.IFactory {
    private final Console console;

    Commands(Console console) {
        this.console = console;
    }

    @Override
    public <K> K create(Class<K> type) throws Exception {
        Object command = null;
        if (type == ReportCommand.class) {
            command = new ReportCommand(console);
        } else if (type == CompareCommand.class) {
            command = new CompareCommand(console);
        } else if (type == BatchCommand.class) {
            command = new BatchCommand(console);
        } else if (type == InspectCommand.class) {
            command = new InspectCommand(console);
        } else if (type == CheckCommand.class) {
            command = new CheckCommand(console);
        } else if (type == SeasonCommand.class) {
            command = new SeasonCommand(console);
        } else if (type == RecordFieldsCommand.class) {
            command = new RecordFieldsCommand(console);
        } else if (type == DemoCommand.class) {
            command = new DemoCommand(console);
        } else if (type == OpenCommand.class) {
            command = new OpenCommand(console);
        }
        return command == null ? CommandLine.defaultFactory().create(type) : type.cast(command);
    }
}
