package io.rowledger.output;

import io.rowledger.export.BatchCsv;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.season.BatchOutcome;
import io.rowledger.report.season.BatchReport;
import io.rowledger.report.season.Season;
import io.rowledger.report.season.SeasonReport;
import io.rowledger.results.BatchJson;
import io.rowledger.results.ResultFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The summary of a batch and the ledger of its season, beside the folders of its fields. */
public final class Batches {
    private static final List<String> FILES = List.of(
            "batch-summary.pdf",
            "batch-summary.csv",
            ResultFile.BATCH.fileName(),
            "season.pdf",
            "season.csv",
            ResultFile.SEASON.fileName());

    private Batches() {}

    /**
     * Checks that the files which {@link #write} will replace are those of an earlier batch.
     *
     * @throws UnusableInputException where one has such a name and no batch has written there
     */
    public static void requireOurs(Path folder) {
        for (String file : FILES) {
            if (Files.exists(folder.resolve(file)) && !BatchJson.isIn(folder) && !hasBegun(folder)) {
                throw UnusableInputException.found("a file that isn't a result of a batch: " + file)
                        .inFile(folder.toString())
                        .expected("a new folder, or the results of an earlier batch")
                        .hint("name another folder with --out, or move that file away");
            }
        }
    }

    /** Whether a run has left its hidden folder: the summary is away where it was killed among the renames. */
    private static boolean hasBegun(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.anyMatch(file -> String.valueOf(file.getFileName()).startsWith(Outputs.HIDDEN));
        } catch (IOException e) {
            throw Outputs.refused(folder, e);
        }
    }

    /**
     * Writes {@code batch-summary} and {@code season} as {@code .pdf}, {@code .csv} and {@code .json} into the folder, all or
     * none.
     *
     * @param season of the fields done, or null where none is; the ledger of an earlier run then goes
     * @param ledger its report, or null
     */
    public static void write(
            List<BatchOutcome> outcomes,
            BatchReport report,
            @Nullable Season season,
            @Nullable SeasonReport ledger,
            ReportOptions options,
            Path folder) {
        Outputs outputs = new Outputs()
                .instead(FILES)
                .add("batch-summary.pdf", report::write)
                .add("batch-summary.csv", out -> BatchCsv.write(outcomes, options.format(), out))
                .add(ResultFile.BATCH.fileName(), out -> BatchJson.write(outcomes, options.programVersion(), out));
        if (season != null && ledger != null) {
            Seasons.add(outputs, season, ledger, options);
        }
        outputs.writeTo(folder, 1);
    }
}
