package io.rowledger.report.rows;

import io.rowledger.analysis.Analysis;
import io.rowledger.diagnose.Diagnosis;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.pdf.PdfReport;
import io.rowledger.document.text.Messages;
import io.rowledger.log.Metering;
import io.rowledger.report.common.JobTimes;
import io.rowledger.report.common.ReportHeaders;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.findings.FindingProducts;
import io.rowledger.report.findings.FindingUncertainties;
import io.rowledger.report.findings.MeterLanes;
import io.rowledger.report.rows.RowsInput.FindingView;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The row diagnosis of one job: its content and its PDF. */
public final class RowDiagnosisReport {
    private static final String TEMPLATE = "row-diagnosis.xhtml";

    private final RowsInput in;
    private final ReportOptions options;
    private final Messages messages;
    private final RowDiagnosis content;

    private RowDiagnosisReport(RowsInput in, ReportOptions options) {
        this.in = in;
        this.options = options;
        this.messages = options.messages();
        this.content = new RowDiagnosisBuilder(in, messages).build();
    }

    /** The row diagnosis of this analysis in the options' units and time zone. */
    public static RowDiagnosisReport of(Analysis analysis, ReportOptions options) {
        List<JobTraces> traces = new ArrayList<>();
        for (int p = 0; p < analysis.rig().products().size(); p++) {
            traces.add(JobTraces.of(analysis.log(), analysis.track(), analysis.strips(), analysis.delivery(), p));
        }
        return new RowDiagnosisReport(input(analysis, traces, options), options);
    }

    /**
     * The same row diagnosis in another language or other units.
     *
     * @param analysis that of this diagnosis
     */
    public RowDiagnosisReport in(Analysis analysis, ReportOptions other) {
        return new RowDiagnosisReport(input(analysis, in.traces(), other), other);
    }

    private static RowsInput input(Analysis a, List<JobTraces> traces, ReportOptions options) {
        Diagnosis diagnosis = a.diagnosis();
        FindingProducts products = new FindingProducts(a.rig().products(), diagnosis);
        FindingUncertainties uncertainties =
                new FindingUncertainties(a.rig(), a.strips(), a.track(), a.coverage(), diagnosis, a.intervals());
        JobTimes times = JobTimes.of(a.track(), a.log(), options.zone());
        List<FindingView> findings = new ArrayList<>();
        for (int i = 0; i < diagnosis.findings().size(); i++) {
            findings.add(new FindingView(
                    diagnosis.findings().get(i),
                    products.of(i),
                    products.prefix(i),
                    uncertainties.of(i),
                    diagnosis.figures().get(i),
                    diagnosis.windows().get(i),
                    diagnosis.alsoNoticed().get(i)));
        }
        List<MeterLanes> lanes = new ArrayList<>();
        List<Metering> metering = new ArrayList<>();
        List<Boolean> totals = new ArrayList<>();
        for (int p = 0; p < a.rig().products().size(); p++) {
            lanes.add(MeterLanes.of(a.log(), p, a.rig().rows()));
            metering.add(a.log().metering(p));
            totals.add(a.log().hasTotal(p));
        }
        return new RowsInput(
                ReportHeaders.of(options.messages().text("rows.title"), a.rig(), times, options),
                a.rig(),
                a.track(),
                a.coverage(),
                diagnosis,
                findings,
                traces,
                lanes,
                metering,
                totals,
                times);
    }

    /** What the report says. */
    public RowDiagnosis content() {
        return content;
    }

    /** The charts by the names that a template uses in {@code data-chart}. */
    Map<String, Chart> charts() {
        return DiagnosisCharts.of(in, content, messages);
    }

    /** What the template's tags name: the diagnosis and the paper. */
    record Model(RowDiagnosis diagnosis, String paper) {}

    /** Writes the PDF. */
    public void write(OutputStream out) throws IOException {
        new PdfReport(TEMPLATE, options.templateFolder(), messages, in.times().endS())
                .write(new Model(content, options.paper().css()), charts(), out);
    }
}
