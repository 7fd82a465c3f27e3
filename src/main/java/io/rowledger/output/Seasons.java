package io.rowledger.output;

import io.rowledger.export.SeasonCsv;
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
     * Writes {@code season.pdf}, {@code season.csv} and {@code season.json} into the folder, all or none.
     *
     * @param read the results the season was read from; none of them is ever replaced
     */
    public static void write(Season season, SeasonReport report, ReportOptions options, List<Path> read, Path folder) {
        new Outputs()
                .keeping(read.stream()
                        .map(from -> from.resolve(ResultFile.SUMMARY.fileName()))
                        .toList())
                .add("season.pdf", report::write)
                .add("season.csv", out -> SeasonCsv.write(season, options.format(), out))
                .add(ResultFile.SEASON.fileName(), out -> SeasonJson.write(season, options.programVersion(), out))
                .writeTo(folder, 1);
    }
}
