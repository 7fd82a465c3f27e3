package io.rowledger.report.compare;

import io.rowledger.document.pdf.PdfReport;
import io.rowledger.report.common.ReportOptions;
import java.io.IOException;
import java.io.OutputStream;

/** The comparison of two jobs as PDF. */
public final class ComparisonPdf {
    /** Its template. */
    public static final String TEMPLATE = "comparison.xhtml";

    private ComparisonPdf() {}

    /** What the template's tags name: the comparison itself and the paper. */
    public record Model(Comparison comparison, String paper) {}

    /** Writes the comparison. */
    public static void write(Comparison comparison, ReportOptions options, OutputStream out) throws IOException {
        new PdfReport(
                        TEMPLATE,
                        options.templateFolder(),
                        options.messages(),
                        comparison.head().endS())
                .write(
                        new Model(comparison, options.paper().css()),
                        ComparisonCharts.of(comparison, options.format()),
                        out);
    }
}
