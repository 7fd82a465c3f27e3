package io.rowledger.report.review;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.pdf.PdfReport;
import io.rowledger.document.text.Messages;
import io.rowledger.report.common.JobTimes;
import io.rowledger.report.common.JobView;
import io.rowledger.report.common.Limits;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.Warnings;
import io.rowledger.report.findings.FindingProducts;
import io.rowledger.report.findings.FindingUncertainties;
import io.rowledger.units.UnitFormat;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Map;

/** The pass review of one job: its content and its PDF. */
public final class PassReviewReport {
    /** Its template. */
    private static final String TEMPLATE = "pass-review.xhtml";

    private final ReviewInput in;
    private final ReportOptions options;
    private final PassReview content;

    private PassReviewReport(ReviewInput in, ReportOptions options) {
        this.in = in;
        this.options = options;
        this.content = new PassReviewBuilder(in, options).build();
    }

    /** The pass review of this analysis in the units and time zone of the options. */
    public static PassReviewReport of(Analysis analysis, ReportOptions options) {
        return new PassReviewReport(input(analysis, options.messages()), options);
    }

    private static ReviewInput input(Analysis a, Messages messages) {
        return new ReviewInput(
                new JobView(a.rig(), a.log(), a.track(), a.delivery(), a.rates(), a.coverage(), a.intervals()),
                a.strips(),
                JobTimes.of(a.track(), a.log(), messages.units().zone()),
                a.findings(),
                new FindingProducts(a.rig().products(), a.diagnosis()),
                new FindingUncertainties(a.rig(), a.strips(), a.track(), a.coverage(), a.diagnosis(), a.intervals()),
                a.setup(),
                a.setbacks(),
                a.zones(),
                a.whatIf(),
                messages.texts(Warnings.of(a.notes())),
                a.notes().stream().map(messages::text).toList(),
                a.diagnosis().limits().stream().map(messages::text).toList());
    }

    /** What the review says. */
    public PassReview content() {
        return content;
    }

    /** The charts by the names that a template uses in {@code data-chart}. */
    Map<String, Chart> charts() {
        return ReviewCharts.of(in, content, options.messages());
    }

    /** What the template's tags name: the review itself, the paper, and limits in whole percent. */
    record Model(PassReview review, String paper, LimitLabels limits) {}

    /** Limits of deviation as the headings of columns print them, percent. */
    record LimitLabels(String watch, String act) {}

    private LimitLabels limits() {
        UnitFormat f = options.format();
        return new LimitLabels(f.fixed(Limits.WATCH_PCT, 0), f.fixed(Limits.ACT_PCT, 0));
    }

    /** Writes the PDF. */
    public void write(OutputStream out) throws IOException {
        new PdfReport(
                        TEMPLATE,
                        options.templateFolder(),
                        options.messages(),
                        content.head().endS())
                .write(new Model(content, options.paper().css(), limits()), charts(), out);
    }
}
