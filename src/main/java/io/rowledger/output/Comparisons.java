package io.rowledger.output;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.compare.ComparisonReport;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.results.ComparisonJson;
import io.rowledger.results.ResultFile;
import java.nio.file.Path;
import java.util.List;

/** Everything a comparison of two jobs writes. */
public final class Comparisons {
    private Comparisons() {}

    /**
     * Checks that two jobs can be held against one another: as many rows, and a product in common.
     *
     * @param folder of the later job, for the message
     * @throws UnusableInputException where they can't
     */
    public static void check(SavedDiagnosis before, SavedDiagnosis after, Path folder) {
        if (before.rows() != after.rows()) {
            throw UnusableInputException.found("a bar of " + after.rows() + " rows")
                    .inFile(folder.toString())
                    .expected("one of " + before.rows() + " rows as in the job before")
                    .hint("compare two jobs of the same bar");
        }
        if (before.products().isEmpty() || after.products().isEmpty()) {
            throw UnusableInputException.found((after.products().isEmpty() ? "a job" : "an earlier job")
                            + " whose log is a map of areas: single rows " + "are not in it, and none was checked")
                    .inFile(folder.toString())
                    .expected("two jobs whose logs have a flow or a rate for each row or meter")
                    .hint("compare the jobs of two logs of the same bar; season puts jobs of any kind side by side");
        }
        boolean common = before.products().stream()
                .anyMatch(old ->
                        after.products().stream().anyMatch(now -> now.key().equals(old.key())));
        if (!common) {
            throw UnusableInputException.found("no product that the job before had")
                    .inFile(folder.toString())
                    .expected("the same key under products in both rig files")
                    .hint("give the product the same key in both rig files and run report again");
        }
    }

    /**
     * Writes {@code comparison.pdf} and {@code comparison.json} as a whole new folder in place of the old one.
     *
     * @param read the two folders of results
     * @throws UnusableInputException where the folder holds anything but a comparison of such jobs, or can't be written
     */
    public static void write(
            SavedDiagnosis before,
            SavedDiagnosis after,
            ComparisonReport report,
            ReportOptions options,
            List<Path> read,
            Path folder) {
        Outputs outputs = new Outputs()
                .add("comparison.pdf", report::write)
                .add(
                        ResultFile.COMPARISON.fileName(),
                        out -> ComparisonJson.write(before, after, options.programVersion(), out));
        ResultsFolder.replace(folder, outputs, read, ResultsFolder.comparison(before, after), 1);
    }
}
