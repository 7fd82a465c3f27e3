package io.rowledger.log.clean;

import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RecordReader;
import io.rowledger.log.read.TotalizerFlow;

/** The checks and corrections that a log file goes through once all of it is read, in their order. */
public final class LogCleaning {
    private LogCleaning() {}

    /**
     * Cleans the records of a file.
     *
     * @param file the file as read; its records, drops and notes are changed
     * @return the same file
     * @throws io.rowledger.finding.UnusableInputException where the records can't be used
     */
    public static FileLog clean(FileLog file) {
        RecordReader reader = file.reader();
        FileChecks.beforeCleaning(file);
        TotalizerFlow.addUp(reader, file.sample().hints());
        ConcatenatedLogs.inOrder(reader.log(), reader.remarks().partStarts());
        Cleaner.clean(file, file.drops(), file.notes());
        FileChecks.afterCleaning(file);
        CoarsePositions.check(file);
        TotalizerFlow.differences(reader, file.notes());
        SwappedAxes.check(file);
        SpeedCourseCheck.check(file);
        FlowRange.check(file);
        WorkStateColumn.check(file);
        return file;
    }
}
