package io.rowledger.report.season;

import io.rowledger.document.pdf.PdfReport;
import io.rowledger.report.common.ReportOptions;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Map;

/** The season's ledger as PDF. */
public final class SeasonPdf {
    /** Its template. */
    public static final String TEMPLATE = "season.xhtml";

    private SeasonPdf() {}

    /** What the template's tags name: the ledger itself, the deference to local rules, and the paper. */
    public record Model(SeasonReport season, String defer, String paper) {}

    /** Writes the ledger. */
    public static void write(SeasonReport season, ReportOptions options, OutputStream out) throws IOException {
        new PdfReport(TEMPLATE, options.templateFolder(), options.messages(), season.endS())
                .write(
                        new Model(
                                season,
                                "Defer to your local rules.",
                                options.paper().css()),
                        Map.of(),
                        out);
    }
}
