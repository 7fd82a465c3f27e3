package io.rowledger.log;

/** The checks and corrections that a log file goes through once all of it is read, in their order. */
final class LogCleaning {
    private LogCleaning() {}

    /**
     * Cleans the records of a file.
     *
     * @param file the file as read; its records, drops and notes are changed
     * @return the same file
     * @throws io.rowledger.finding.UnusableInputException where the records can't be used
     */
    static FileLog clean(FileLog file) {
        RecordReader reader = file.reader();
        FileChecks.beforeCleaning(file);
        CountedFlow.addUp(reader, file.sample().hints());
        Parts.inOrder(reader.log(), reader.remarks().partStarts());
        Cleaner.clean(file, file.drops(), file.notes());
        FileChecks.afterCleaning(file);
        CoarsePositions.check(file);
        CountedFlow.differences(reader, file.notes());
        SwappedAxes.check(file);
        PathAgreement.check(file);
        FlowRange.check(file);
        WorkState.check(file);
        return file;
    }
}
