package io.rowledger.workbench;

import io.rowledger.finding.UnusableInputException;
import io.rowledger.output.Comparisons;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.compare.ComparisonReport;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.results.DiagnosisReader;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.function.Function;

/** Two jobs of a machine side by side: what a repair changed. */
final class CompareView {
    private static final String PLACE = "comparisons";

    private final FieldResults results;
    private final SeasonFolder folder;
    private final Function<ZoneId, ReportOptions> look;

    CompareView(FieldResults results, SeasonFolder folder, Function<ZoneId, ReportOptions> look) {
        this.results = results;
        this.folder = folder;
        this.look = look;
    }

    /** Two fields with results. */
    record Two(String before, String after) {}

    /**
     * A comparison.
     *
     * @param answer sentences
     * @param folder of its files below the results
     */
    record Compared(List<String> answer, String folder) {}

    /** Compares two jobs; the PDF is in the language and units of whoever asks for it, like the answer. */
    Compared compare(Two two, Reader reader) {
        if (two.before().equals(two.after())) {
            throw new HttpRefusal(HttpRefusal.BAD_REQUEST, "refusals.twoJobs");
        }
        Path before = results.folder(two.before());
        Path after = results.folder(two.after());
        SavedDiagnosis old = DiagnosisReader.read(before);
        SavedDiagnosis now = DiagnosisReader.read(after);
        String name = SeasonFolder.requireName((two.before() + " to " + two.after()).replace('/', '-'));
        Path out = folder.inside(List.of(SeasonFolder.RESULTS, PLACE, name));
        try {
            Comparisons.check(old, now, after);
        } catch (UnusableInputException e) {
            throw new HttpRefusal(HttpRefusal.CONFLICT, ProblemText.of(e));
        }
        ReportOptions options = look.apply(ComparisonReport.zone(old, now))
                .in(reader.language())
                .in(reader.units());
        ComparisonReport report = ComparisonReport.of(old, now, options);
        Comparisons.write(old, now, report, options, List.of(before, after), out);
        return new Compared(report.content().answer(), PLACE + "/" + name);
    }
}
