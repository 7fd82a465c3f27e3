package io.rowledger.log;

import io.rowledger.log.clean.LogCleaning;
import io.rowledger.log.header.BarLayout;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.ColumnPlanBuilder;
import io.rowledger.log.header.Headers;
import io.rowledger.log.header.LogOptions;
import io.rowledger.log.header.Questions;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.LogFileReader;
import io.rowledger.log.source.Line;
import io.rowledger.log.source.Lines;
import io.rowledger.log.taskdata.BarGeometry;
import io.rowledger.log.taskdata.ControllerTotals;
import io.rowledger.log.taskdata.ReadFile;
import io.rowledger.log.taskdata.TaskData;
import io.rowledger.log.taskdata.TaskLog;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The time logs of ISO 11783-10 task data, each read as a file of its own; a line number in a message is the number of the
 * record. What is said of all of them stands in the notes of the first.
 *
 * @param logs one for each time log with flows
 * @param others the files that say how to read them
 * @param geometry what the device description says of the machine
 * @param totals totals of the controller beside what its flows add up to
 */
record TaskDataLogs(List<FileLog> logs, List<ReadFile> others, BarGeometry geometry, List<ControllerTotals> totals) {
    /** Smallest width difference between task data and rig file that is reported, m: more than rounding to inches. */
    private static final double MIN_WIDTH_DIFFERENCE_M = 0.05;

    /** Reads the task data of one task. */
    static TaskDataLogs read(Path path, LogOptions options) {
        TaskData.Reading reading = TaskData.read(path, options.rowsExpected());
        List<FileLog> logs = new ArrayList<>();
        Set<Message> given = new HashSet<>();
        for (TaskLog log : reading.logs()) {
            FileLog file = raw(log, options);
            file.setOrigins(log.origins());
            // What is said of the machine is said once.
            log.notes().stream().filter(given::add).forEach(file.notes()::add);
            if (logs.isEmpty()) {
                file.notes().addAll(reading.notes());
                file.notes().addAll(widthNotes(reading.geometry(), options.bar()));
            }
            file.digest(log.sha256());
            logs.add(LogCleaning.clean(file));
        }
        return new TaskDataLogs(logs, reading.others(), reading.geometry(), reading.totals());
    }

    /** A time log's records as they are, before anything is left out. */
    static FileLog raw(TaskLog log, LogOptions options) {
        Headers headers = new Headers(log.headers(), log.headers(), 0);
        ColumnPlan plan = ColumnPlanBuilder.plan(log.name(), headers.names(), headers, options, Questions.thrown());
        return LogFileReader.records(log.name(), mark -> log.form(), plan, new Records(log), options);
    }

    /** A note if the sections of the task data are not as wide as the rows of the rig file. */
    private static List<Message> widthNotes(BarGeometry geometry, BarLayout bar) {
        int sections = geometry.leftM().size();
        if (sections == 0 || sections != bar.widthsM().size()) {
            return List.of();
        }
        int first = 0;
        int different = 0;
        for (int row = sections; row >= 1; row--) {
            double widthM = geometry.rightM().get(row - 1) - geometry.leftM().get(row - 1);
            if (Math.abs(widthM - bar.widthM(row)) > MIN_WIDTH_DIFFERENCE_M) {
                first = row;
                different++;
            }
        }
        return different == 0
                ? List.of()
                : List.of(Message.of(
                        "notes.taskdata.widths",
                        different,
                        sections,
                        first,
                        Message.value(
                                QuantityKind.LENGTH,
                                geometry.rightM().get(first - 1)
                                        - geometry.leftM().get(first - 1)),
                        Message.value(QuantityKind.LENGTH, bar.widthM(first))));
    }

    /** A time log's records as lines. */
    private static final class Records implements Lines {
        private final TaskLog log;
        private int at;

        Records(TaskLog log) {
            this.log = log;
        }

        @Override
        public @Nullable Line next() {
            if (at == log.records()) {
                return null;
            }
            Line line = new Line(log.fields(at), at + 1);
            at++;
            return line;
        }
    }
}
