package io.rowledger.report.pdf;

import io.rowledger.report.Analysis;
import io.rowledger.report.NitrogenGround;
import io.rowledger.report.NitrogenRecord;
import io.rowledger.report.ReportOptions;
import io.rowledger.report.chart.NitrogenMap;
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
        NitrogenMap map = new NitrogenMap(analysis, NitrogenGround.of(analysis), record.map(), options.format());
        new PdfReport(TEMPLATE, options.templateFolder(), record.head().endS())
                .write(new Model(record, options.paper().css()), Map.of("nitrogen-map", map), attachments, out);
    }
}
