package io.rowledger.report.pdf;

import io.rowledger.report.Analysis;
import io.rowledger.report.PassReview;
import io.rowledger.report.ReportOptions;
import io.rowledger.report.chart.ReviewCharts;
import java.io.IOException;
import java.io.OutputStream;

/** The pass review as PDF. */
public final class PassReviewPdf {
    /** Its template. */
    public static final String TEMPLATE = "pass-review.xhtml";

    private PassReviewPdf() {}

    /** What the template's tags name: the review itself and the paper. */
    public record Model(PassReview review, String paper) {}

    /** Writes the review of this analysis. */
    public static void write(Analysis analysis, PassReview review, ReportOptions options, OutputStream out)
            throws IOException {
        new PdfReport(TEMPLATE, options.templateFolder(), review.head().endS())
                .write(
                        new Model(review, options.paper().css()),
                        ReviewCharts.of(analysis, review, options.format()),
                        out);
    }
}
