package io.rowledger.report.season;

import io.rowledger.document.pdf.PdfReport;
import io.rowledger.report.common.ReportOptions;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Map;

/** The summary of a batch as PDF. */
public final class BatchPdf {
    /** Its template. */
    public static final String TEMPLATE = "batch.xhtml";

    private BatchPdf() {}

    /** What the template's tags name: the summary itself, and the paper. */
    public record Model(BatchReport batch, String paper) {}

    /** Writes the summary. */
    public static void write(BatchReport batch, ReportOptions options, OutputStream out) throws IOException {
        new PdfReport(TEMPLATE, options.templateFolder(), options.messages(), batch.endS())
                .write(new Model(batch, options.paper().css()), Map.of(), out);
    }
}
