package io.rowledger.output;

import io.rowledger.export.BatchCsv;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.season.BatchOutcome;
import io.rowledger.report.season.BatchReport;
import io.rowledger.results.BatchJson;
import io.rowledger.results.ResultFile;
import java.nio.file.Path;
import java.util.List;

/** The summary of a batch. */
public final class Batches {
    private Batches() {}

    /** Writes {@code batch-summary.pdf}, {@code .csv} and {@code .json} into the folder, all or none. */
    public static void write(List<BatchOutcome> outcomes, BatchReport report, ReportOptions options, Path folder) {
        new Outputs()
                .add("batch-summary.pdf", report::write)
                .add("batch-summary.csv", out -> BatchCsv.write(outcomes, options.format(), out))
                .add(ResultFile.BATCH.fileName(), out -> BatchJson.write(outcomes, options.programVersion(), out))
                .writeTo(folder, 1);
    }
}
