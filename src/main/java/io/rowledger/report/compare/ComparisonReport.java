package io.rowledger.report.compare;

import io.rowledger.analysis.JobClock;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.pdf.PdfReport;
import io.rowledger.document.text.Messages;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.compare.Comparison.ProductPair;
import io.rowledger.report.compare.Comparison.Side;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.report.map.DeviationPicture;
import java.io.IOException;
import java.io.OutputStream;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;

/** The comparison of two jobs of one bar: its content and its PDF. */
public final class ComparisonReport {
    private static final String TEMPLATE = "comparison.xhtml";
    /** Baseline of the legend, pt from the top of its chart. */
    private static final double LEGEND_PT = 9;

    private final ReportOptions options;
    private final Messages messages;
    private final Comparison content;

    private ComparisonReport(Comparison content, ReportOptions options) {
        this.content = content;
        this.options = options;
        this.messages = options.messages();
    }

    /** The zone of both jobs' times: the one entered for the job after the repair, else for the one before, else by the sun. */
    public static ZoneId zone(SavedDiagnosis before, SavedDiagnosis after) {
        ZoneId now = ZoneId.of(after.zone());
        return JobClock.isBySun(now) ? ZoneId.of(before.zone()) : now;
    }

    /** The comparison of two jobs with the same number of rows, in the options' units and time zone. */
    public static ComparisonReport of(SavedDiagnosis before, SavedDiagnosis after, ReportOptions options) {
        return new ComparisonReport(new ComparisonBuilder(before, after, options).build(), options);
    }

    /** What the comparison says. */
    public Comparison content() {
        return content;
    }

    /**
     * The charts by the names that a template uses in {@code data-chart}: {@code before/KEY} and {@code after/KEY} per
     * product key, {@code legend}.
     */
    Map<String, Chart> charts() {
        Map<String, Chart> charts = new LinkedHashMap<>();
        for (ProductPair pair : content.products()) {
            charts.put("before/" + pair.key(), picture(pair.before()));
            charts.put("after/" + pair.key(), picture(pair.after()));
        }
        charts.put("legend", (canvas, widthPt, heightPt) -> DeviationPicture.legend(canvas, LEGEND_PT, messages));
        return charts;
    }

    private Chart picture(Side side) {
        return DeviationPicture.withoutLegend(side.picture(), side.marks(), messages);
    }

    /** What the template's tags name: the comparison and the paper. */
    record Model(Comparison comparison, String paper) {}

    /** Writes the PDF. */
    public void write(OutputStream out) throws IOException {
        new PdfReport(
                        TEMPLATE,
                        options.templateFolder(),
                        messages,
                        content.head().endS())
                .write(new Model(content, options.paper().css()), charts(), out);
    }
}
