package io.rowledger.log.clean;

import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RecordReader;
import io.rowledger.log.read.TotalizerFlow;

/** Runs the checks and corrections on a log file, in order. */
public final class LogCleaning {
    private LogCleaning() {}

    /**
     * Cleans the records of a file.
     *
     * @param file the file as read; records, drops and notes are modified
     * @return the same file
     * @throws io.rowledger.finding.UnusableInputException where the records can't be used
     */
    public static FileLog clean(FileLog file) {
        RecordReader reader = file.reader();
        FileChecks.beforeCleaning(file);
        TotalizerFlow.toTotals(reader, file.preview().hints());
        ConcatenatedLogs.inOrder(reader.log(), reader.nonDataLines().partStarts());
        CoarseTimes.spread(file);
        Cleaner.clean(file, file.drops(), file.notes());
        FileChecks.afterCleaning(file);
        LongJumps.check(file);
        CoarseTimes.noteSparse(file);
        CoarsePositions.check(file);
        TotalizerFlow.toFlows(file);
        SwappedAxes.check(file);
        SpeedCourseCheck.check(file);
        RateConversion.convert(file);
        FlowRange.check(file);
        WorkStateColumn.check(file);
        return file;
    }
}
