package io.rowledger.log;

import io.rowledger.digest.Sha256;
import io.rowledger.log.clean.FileChecks;
import io.rowledger.log.clean.LogCleaning;
import io.rowledger.log.header.ColumnName;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogOptions;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.read.ColumnMeaning;
import io.rowledger.log.read.FieldFaults;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.LogFileReader;
import io.rowledger.log.source.LogFile;
import io.rowledger.log.taskdata.ControllerTotals;
import io.rowledger.log.taskdata.ReadFile;
import io.rowledger.log.taskdata.TaskData;
import io.rowledger.log.time.EpochRange;
import io.rowledger.log.time.TimestampReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Reads the logs of one job into one table. */
public final class LogReader {
    /** A target with a row's number, as {@link ColumnName#plain} writes it. */
    private static final Pattern TARGET_OF_A_ROW =
            Pattern.compile("(?:[a-z0-9]+\\.)?(?:(?:row|outlet|knife|nozzle|section|r)"
                    + "0*\\d{1,3}(?:target|setpoint|desired|commanded)|(?:target|setpoint|desiredrate|commandedrate)(?:rate)?"
                    + "(?:row|outlet|knife|nozzle|section|r)?0*\\d{1,3}(?!\\d))");

    private LogReader() {}

    /**
     * Reads, cleans and joins the logs of one job.
     *
     * @throws io.rowledger.finding.UnusableInputException where a file, or the files together, can't be used
     */
    public static LogReading read(List<Path> logs, LogOptions options) {
        List<FileLog> files = new ArrayList<>();
        Set<ReadFile> beside = new LinkedHashSet<>();
        List<ControllerTotals> totals = new ArrayList<>();
        for (Path log : logs) {
            if (TaskData.is(log)) {
                TaskDataLogs task = TaskDataLogs.read(log, options);
                files.addAll(task.logs());
                beside.addAll(task.others());
                totals.addAll(task.totals());
            } else {
                files.add(LogCleaning.clean(LogFileReader.read(log, options)));
                for (Path part : LogFile.parts(log)) {
                    beside.add(new ReadFile(part.toString(), digest(part)));
                }
            }
        }
        List<ColumnMeaning> senses = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        for (FileLog file : files) {
            senses.addAll(file.columnMeanings());
            notes.addAll(notes(file));
        }
        LogTable table = LogJoiner.join(files, notes);
        return new LogReading(table, senses, notes, List.copyOf(beside), totals);
    }

    private static String digest(Path part) {
        try {
            return Sha256.of(part);
        } catch (IOException e) {
            throw LogFile.damaged(part.toString(), e, 0);
        }
    }

    /** Returns the assumptions made about one file. */
    static List<String> notes(FileLog file) {
        List<String> notes = new ArrayList<>();
        if (file.reader().zonelessTimes() > 0) {
            notes.add("The times in " + file.name() + " have no zone and were taken as UTC.");
        }
        if (file.plan().isUntimed()) {
            notes.add("No times are in " + file.name()
                    + ": the points count in the order of the file. Rates, areas, volumes,"
                    + " skips and overlaps are real; dates, times of day, speeds and row faults are not in this file.");
        } else if (file.log().records > 0 && file.log().timeS[0] < EpochRange.MIN_S) {
            notes.add("The times in " + file.name() + " count from an unknown start: dates are not to be relied on.");
        }
        if (!file.plan().withoutUnit().isEmpty()) {
            notes.add("Not used, because the unit is missing or unknown: "
                    + String.join(", ", file.plan().withoutUnit()) + " in " + file.name()
                    + ". Write the unit into the header to use it, such as speed[mph].");
        }
        if (file.plan().rows().assumed()) {
            int sections = file.plan().rows().sections().size();
            notes.add(
                    sections + " on/off columns in " + file.name() + " for "
                            + file.plan().outlets()
                            + " rows: each section was taken as " + file.plan().outlets() / sections
                            + " rows side by side. If the sections differ, list the outlets with their section in the rig file.");
        }
        FieldFaults faults = file.reader().faults();
        for (ColumnPlan.Column column : file.plan().columns()) {
            int bad = faults.count(column.index());
            LogQuantity quantity = column.role().quantity();
            boolean needed = quantity == LogQuantity.TIME || quantity == LogQuantity.LAT || quantity == LogQuantity.LON;
            if (bad > 0) {
                notes.add(String.format(
                        Locale.ROOT,
                        "%s in column %s of %s %s no figure in it, the first at line %d; %s.",
                        FileChecks.records(bad),
                        column.header(),
                        file.name(),
                        bad == 1 ? "has" : "have",
                        faults.firstLine(column.index()),
                        needed || quantity == LogQuantity.FLOW
                                ? bad == 1 ? "it was left out" : "they were left out"
                                : "the figure was taken as unknown"));
            }
        }
        Optional<String> targetOfARow = file.plan().headers().stream()
                .filter(header ->
                        TARGET_OF_A_ROW.matcher(ColumnName.plain(header)).lookingAt())
                .findFirst();
        if (targetOfARow.isPresent()) {
            notes.add(
                    "Columns like " + targetOfARow.get().strip() + " in " + file.name()
                            + " seem to hold a target for each row. They are not "
                            + "read: the target is the one column for the whole bar, else the prescription's or the rig file's.");
        }
        TimestampReader clock = file.reader().timestampReader();
        if (clock != null) {
            notes.addAll(clock.notes());
        }
        notes.addAll(file.reader().nonDataLines().notes());
        notes.addAll(file.notes());
        return notes;
    }
}
