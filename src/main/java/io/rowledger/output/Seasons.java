package io.rowledger.output;

import io.rowledger.export.SeasonCsv;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.season.Season;
import io.rowledger.report.season.SeasonReport;
import io.rowledger.results.ResultFile;
import io.rowledger.results.SeasonJson;
import java.nio.file.Path;
import java.util.List;

/** Everything a season's ledger writes. */
public final class Seasons {
    private Seasons() {}

    /**
     * Writes {@code season.pdf}, {@code season.csv} and {@code season.json} as a whole new folder in place of the old one.
     *
     * @param read the folders of results the season was read from
     * @throws UnusableInputException where the folder holds anything but the ledger of such a season, or can't be written
     */
    public static void write(Season season, SeasonReport report, ReportOptions options, List<Path> read, Path folder) {
        ResultsFolder.replace(
                folder, add(new Outputs(), season, report, options), read, ResultsFolder.season(season), 1);
    }

    /** Adds the same files to others. */
    static Outputs add(Outputs outputs, Season season, SeasonReport report, ReportOptions options) {
        return outputs.add("season.pdf", report::write)
                .add("season.csv", out -> SeasonCsv.write(season, options.format(), out))
                .add(ResultFile.SEASON.fileName(), out -> SeasonJson.write(season, options.programVersion(), out));
    }
}
