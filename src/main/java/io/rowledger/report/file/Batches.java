package io.rowledger.report.file;

import io.rowledger.report.BatchOutcome;
import io.rowledger.report.BatchReport;
import io.rowledger.report.ReportOptions;
import io.rowledger.report.pdf.BatchPdf;
import java.nio.file.Path;
import java.util.List;

/** The summary of a batch. */
public final class Batches {
    private Batches() {}

    /** Writes {@code batch-summary.pdf}, {@code .csv} and {@code .json} into the folder, all or none. */
    public static void write(List<BatchOutcome> outcomes, BatchReport report, ReportOptions options, Path folder) {
        new Outputs()
                .add("batch-summary.pdf", out -> BatchPdf.write(report, options, out))
                .add("batch-summary.csv", out -> BatchCsv.write(outcomes, out))
                .add("batch-summary.json", out -> BatchJson.write(outcomes, options.programVersion(), out))
                .writeTo(folder, 1);
    }
}
