package io.rowledger.log;

import io.rowledger.digest.Sha256;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.log.clean.LogCleaning;
import io.rowledger.log.header.BarLayout;
import io.rowledger.log.header.ColumnName;
import io.rowledger.log.header.ColumnPlan;
import io.rowledger.log.header.LogOptions;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.read.ColumnMeaning;
import io.rowledger.log.read.FieldFaults;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.LogFileReader;
import io.rowledger.log.read.RawLog;
import io.rowledger.log.source.LogFile;
import io.rowledger.log.taskdata.ControllerTotals;
import io.rowledger.log.taskdata.ReadFile;
import io.rowledger.log.taskdata.TaskData;
import io.rowledger.log.time.EpochRange;
import io.rowledger.log.time.TimestampReader;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
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

    /** Largest deviation of the logged width from the rig file's that is rounding (1). */
    private static final double MAX_WIDTH_DEVIATION = 0.02;

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
            } else if (AreaLog.is(log)) {
                throw UnusableInputException.found("polygons, the ground that was covered, instead of records")
                        .inFile(log.toString())
                        .expected("a log with a record for each position: polygons have no path and no rows")
                        .hint(
                                "run rowledger report with the polygons alone for acres, volume, nitrogen, skips and overlaps, or"
                                        + " export the points that the console logged");
            } else {
                files.add(LogCleaning.clean(LogFileReader.read(log, options)));
                for (Path part : LogFile.parts(log)) {
                    beside.add(new ReadFile(part.toString(), digest(part)));
                }
            }
        }
        List<ColumnMeaning> senses = new ArrayList<>();
        List<Message> notes = new ArrayList<>();
        for (FileLog file : files) {
            senses.addAll(file.columnMeanings());
            notes.addAll(notes(file));
        }
        LogTable table = LogJoiner.join(files, notes, totals);
        return new LogReading(table, senses, notes, List.copyOf(beside), totals);
    }

    private static String digest(Path part) {
        try {
            return Sha256.of(part);
        } catch (IOException e) {
            throw LogFile.damaged(part.toString(), e, 0);
        }
    }

    /** Returns a note if the widest logged width is not that of the rig file. */
    private static Optional<Message> width(FileLog file) {
        BarLayout bar = file.preview().options().bar();
        double loggedM = Arrays.stream(file.numbers(LogQuantity.WIDTH))
                .filter(width -> width > 0)
                .max()
                .orElse(Double.NaN);
        double rigM = bar.widthsM().stream().mapToDouble(Double::doubleValue).sum();
        boolean differs =
                bar.widthsM().size() == file.plan().outlets() && Math.abs(loggedM - rigM) > MAX_WIDTH_DEVIATION * rigM;
        return differs
                ? Optional.of(Message.of(
                        "notes.log.width",
                        file.shortName(),
                        Message.value(QuantityKind.LENGTH, loggedM),
                        Message.value(QuantityKind.LENGTH, rigM)))
                : Optional.empty();
    }

    /** Returns the zone that a note shows how to write: the one proposed for the place, else an example. */
    private static String zone(FileLog file) {
        RawLog log = file.log();
        String proposed = log.records == 0 ? "" : ZoneProposal.of(log.latDeg[0], log.lonDeg[0]);
        return proposed.isEmpty() ? "America/Chicago" : proposed;
    }

    /** Returns the assumptions made about one file. */
    static List<Message> notes(FileLog file) {
        List<Message> notes = new ArrayList<>();
        if (file.reader().zonelessTimes() > 0) {
            notes.add(Message.of("notes.log.zoneless", file.shortName(), "{zone: " + zone(file) + "}"));
        }
        if (!file.reader().days().isEmpty()) {
            notes.add(Message.of("notes.log.daysOnly", file.shortName()));
        } else if (file.plan().isUntimed()) {
            notes.add(Message.of("notes.log.untimed", file.shortName()));
        } else if (file.log().records > 0 && file.log().timeS[0] < EpochRange.MIN_S) {
            notes.add(Message.of("notes.log.unknownStart", file.shortName()));
        }
        if (!file.plan().withoutUnit().isEmpty()) {
            notes.add(Message.of(
                    "notes.log.withoutUnit", String.join(", ", file.plan().withoutUnit()), file.shortName()));
        }
        if (file.plan().rows().assumed()) {
            int sections = file.plan().rows().sections().size();
            notes.add(Message.of(
                    "notes.log.sections",
                    sections,
                    file.shortName(),
                    file.plan().outlets(),
                    file.plan().outlets() / sections));
        }
        width(file).ifPresent(notes::add);
        FieldFaults faults = file.reader().faults();
        for (ColumnPlan.Column column : file.plan().columns()) {
            int bad = faults.count(column.index());
            LogQuantity quantity = column.role().quantity();
            boolean needed = quantity == LogQuantity.TIME || quantity == LogQuantity.LAT || quantity == LogQuantity.LON;
            if (bad > 0) {
                boolean dropped = needed || quantity == LogQuantity.FLOW;
                notes.add(Message.of(
                        dropped ? "notes.log.unreadable.dropped" : "notes.log.unreadable.unknown",
                        bad,
                        column.header(),
                        file.shortName(),
                        faults.firstLine(column.index())));
            }
        }
        Optional<String> targetOfARow = file.plan().headers().stream()
                .filter(header ->
                        TARGET_OF_A_ROW.matcher(ColumnName.plain(header)).lookingAt())
                .findFirst();
        if (targetOfARow.isPresent()) {
            notes.add(Message.of("notes.log.rowTargets", targetOfARow.get().strip(), file.shortName()));
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
