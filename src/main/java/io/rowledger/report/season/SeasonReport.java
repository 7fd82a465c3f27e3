package io.rowledger.report.season;

import io.rowledger.document.chart.Chart;
import io.rowledger.document.pdf.PdfReport;
import io.rowledger.report.common.ReportOptions;
import java.io.IOException;
import java.io.OutputStream;
import java.util.LinkedHashMap;
import java.util.Map;

/** The nitrogen ledger of a season: its content and its PDF. */
public final class SeasonReport {
    private static final String TEMPLATE = "season.xhtml";

    private final Season season;
    private final SeasonLedger content;
    private final ReportOptions options;

    private SeasonReport(Season season, SeasonLedger content, ReportOptions options) {
        this.season = season;
        this.content = content;
        this.options = options;
    }

    /** The ledger of this season in the options' units; days are those of each job's own time zone. */
    public static SeasonReport of(Season season, ReportOptions options) {
        return new SeasonReport(season, new SeasonLedgerBuilder(season, options).build(), options);
    }

    /** What the ledger says. */
    public SeasonLedger content() {
        return content;
    }

    /** One chart per bar and product, {@code rows/N}. */
    private Map<String, Chart> charts() {
        Map<String, Chart> charts = new LinkedHashMap<>();
        for (BarSeason bar : BarSeason.of(season.jobs())) {
            charts.put("rows/" + (charts.size() + 1), new RowSeasonChart(bar, options.messages()));
        }
        return charts;
    }

    /** What the template's tags name: the ledger and the paper. */
    record Model(SeasonLedger season, String paper) {}

    /** Writes the PDF. */
    public void write(OutputStream out) throws IOException {
        new PdfReport(TEMPLATE, options.templateFolder(), options.messages(), content.endS())
                .write(new Model(content, options.paper().css()), charts(), out);
    }
}
