package io.rowledger.log;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Reads the logs of one job into one table. */
public final class LogReader {
    private LogReader() {}

    /**
     * Reads, cleans and joins the logs of one job.
     *
     * @throws io.rowledger.finding.UnusableInputException where a file, or the files together, can't be used
     */
    public static LogReading read(List<Path> logs, LogOptions options) {
        List<FileLog> files = new ArrayList<>();
        for (Path log : logs) {
            files.add(LogFileReader.read(log, options));
        }
        List<ColumnSense> senses = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        for (FileLog file : files) {
            senses.addAll(file.senses());
            notes.addAll(notes(file));
        }
        LogTable table = Joiner.join(files, notes);
        return new LogReading(table, senses, notes);
    }

    /** What was assumed about one file. */
    static List<String> notes(FileLog file) {
        List<String> notes = new ArrayList<>();
        if (file.reader().timesWithoutZone() > 0) {
            notes.add("The times in " + file.name() + " have no zone and were taken as UTC.");
        }
        if (file.log().records > 0 && file.log().timeS[0] < EpochRange.FIRST_S) {
            notes.add("The times in " + file.name() + " count from an unknown start: dates are not to be relied on.");
        }
        FieldFaults faults = file.reader().faults();
        for (ColumnPlan.Column column : file.plan().columns()) {
            int bad = faults.count(column.index());
            Measured measured = column.role().measured();
            boolean needed = measured == Measured.TIME || measured == Measured.LAT || measured == Measured.LON;
            if (bad > 0) {
                notes.add(String.format(
                        Locale.ROOT,
                        "%s in column %s of %s %s no figure in it, the first at line %d; %s.",
                        FileChecks.records(bad),
                        column.header(),
                        file.name(),
                        bad == 1 ? "has" : "have",
                        faults.firstLine(column.index()),
                        needed || measured == Measured.FLOW
                                ? bad == 1 ? "it was left out" : "they were left out"
                                : "the figure was taken as unknown"));
            }
        }
        Clock clock = file.reader().clock();
        if (clock != null) {
            notes.addAll(clock.notes());
        }
        notes.addAll(file.reader().remarks().notes());
        notes.addAll(file.notes());
        return notes;
    }
}
