package io.rowledger.output;

import io.rowledger.analysis.RowCheck;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.page.ReviewPage;
import io.rowledger.report.common.ReportOptions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/** The page of a check of rows, in a folder of its own. */
public final class CheckPages {
    private CheckPages() {}

    /**
     * Writes the page in place of an earlier one.
     *
     * @param name of the log
     * @throws UnusableInputException where the folder holds anything else, or can't be written
     */
    public static void write(RowCheck check, String name, ReportOptions options, Path folder) {
        requireOurs(folder);
        new Outputs()
                .add(ReviewPage.FILE, out -> ReviewPage.write(check, name, options, out))
                .writeTo(folder, 1);
    }

    private static void requireOurs(Path folder) {
        if (!Files.isDirectory(folder)) {
            return;
        }
        try (Stream<Path> files = Files.list(folder)) {
            files.map(file -> String.valueOf(file.getFileName()))
                    .filter(file -> !file.equals(ReviewPage.FILE) && !file.startsWith("."))
                    .findFirst()
                    .ifPresent(file -> {
                        throw UnusableInputException.found("a file that isn't the page of a check: " + file)
                                .inFile(folder.toString())
                                .expected("an empty folder, or one with nothing but the page of an earlier check")
                                .hint("name another folder with --out");
                    });
        } catch (IOException e) {
            throw Outputs.refused(folder, e);
        }
    }
}
