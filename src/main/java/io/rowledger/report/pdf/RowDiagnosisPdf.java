package io.rowledger.report.pdf;

import io.rowledger.report.Analysis;
import io.rowledger.report.ReportOptions;
import io.rowledger.report.RowDiagnosis;
import io.rowledger.report.chart.DiagnosisCharts;
import java.io.IOException;
import java.io.OutputStream;

/** The row diagnosis as PDF. */
public final class RowDiagnosisPdf {
    /** Its template. */
    public static final String TEMPLATE = "row-diagnosis.xhtml";

    private RowDiagnosisPdf() {}

    /** What the template's tags name: the diagnosis itself and the paper. */
    public record Model(RowDiagnosis diagnosis, String paper) {}

    /** Writes the diagnosis of this analysis. */
    public static void write(Analysis analysis, RowDiagnosis diagnosis, ReportOptions options, OutputStream out)
            throws IOException {
        new PdfReport(TEMPLATE, options.templateFolder(), diagnosis.head().endS())
                .write(
                        new Model(diagnosis, options.paper().css()),
                        DiagnosisCharts.of(analysis, diagnosis, options.format()),
                        out);
    }
}
