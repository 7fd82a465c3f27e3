package io.rowledger.report.rows;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.pdf.PdfReport;
import io.rowledger.report.common.ReportOptions;
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
        new PdfReport(
                        TEMPLATE,
                        options.templateFolder(),
                        options.messages(),
                        diagnosis.head().endS())
                .write(
                        new Model(diagnosis, options.paper().css()),
                        DiagnosisCharts.of(analysis, diagnosis, options.format()),
                        out);
    }
}
