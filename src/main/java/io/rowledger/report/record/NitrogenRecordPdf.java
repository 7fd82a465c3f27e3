package io.rowledger.report.record;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.pdf.Attachment;
import io.rowledger.document.pdf.PdfReport;
import io.rowledger.report.common.ReportOptions;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Map;

/** The nitrogen record as PDF. */
public final class NitrogenRecordPdf {
    /** Its template. */
    public static final String TEMPLATE = "nitrogen-record.xhtml";

    private NitrogenRecordPdf() {}

    /** What the template's tags name: the record itself and the paper. */
    public record Model(NitrogenRecord record, String paper) {}

    /** Writes the record of this analysis with these files inside it. */
    public static void write(
            Analysis analysis,
            NitrogenRecord record,
            ReportOptions options,
            List<Attachment> attachments,
            OutputStream out)
            throws IOException {
        NitrogenMap map = new NitrogenMap(analysis, NitrogenGrid.of(analysis), record.map(), options.format());
        new PdfReport(
                        TEMPLATE,
                        options.templateFolder(),
                        options.messages(),
                        record.head().endS())
                .write(new Model(record, options.paper().css()), Map.of("nitrogen-map", map), attachments, out);
    }
}
