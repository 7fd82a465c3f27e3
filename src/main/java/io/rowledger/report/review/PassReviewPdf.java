package io.rowledger.report.review;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.pdf.PdfReport;
import io.rowledger.report.common.ReportOptions;
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
        new PdfReport(
                        TEMPLATE,
                        options.templateFolder(),
                        options.messages(),
                        review.head().endS())
                .write(
                        new Model(review, options.paper().css()),
                        ReviewCharts.of(analysis, review, options.format()),
                        out);
    }
}
