package io.rowledger.report.season;

import io.rowledger.document.pdf.PdfReport;
import io.rowledger.report.common.ReportOptions;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Map;

/** The summary of a batch: its content and its PDF. */
public final class BatchReport {
    private static final String TEMPLATE = "batch.xhtml";

    private final BatchSummary content;
    private final ReportOptions options;

    private BatchReport(BatchSummary content, ReportOptions options) {
        this.content = content;
        this.options = options;
    }

    /** The summary of these jobs in the options' units and time zone. */
    public static BatchReport of(List<BatchOutcome> outcomes, ReportOptions options) {
        return new BatchReport(new BatchSummaryBuilder(outcomes, options).build(), options);
    }

    /** What the summary says. */
    public BatchSummary content() {
        return content;
    }

    /** What the template's tags name: the summary and the paper. */
    record Model(BatchSummary batch, String paper) {}

    /** Writes the PDF. */
    public void write(OutputStream out) throws IOException {
        new PdfReport(TEMPLATE, options.templateFolder(), options.messages(), content.endS())
                .write(new Model(content, options.paper().css()), Map.of(), out);
    }
}
