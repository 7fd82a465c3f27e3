package io.rowledger.report.season;

import io.rowledger.diagnose.signal.RowBaseline;
import io.rowledger.finding.FindingKind;
import io.rowledger.report.findings.RowHealth;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.report.findings.SavedDiagnosis.ProductState;
import io.rowledger.report.findings.SavedDiagnosis.SavedFinding;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The rows of one bar with one product over the jobs of a season.
 *
 * @param rig name of the bar
 * @param product name of the product
 * @param jobs the jobs, in time order
 * @param rows from the left
 */
public record BarSeason(String rig, String product, List<SeasonJob> jobs, List<RowSeason> rows) {
    /** Copies the lists. */
    public BarSeason {
        jobs = List.copyOf(jobs);
        rows = List.copyOf(rows);
    }

    /** What makes two jobs comparable: the same bar, as many rows, the same product. */
    private record Bar(String rig, int rows, String product) {}

    private record Entry(SeasonJob job, SavedDiagnosis diagnosis, ProductState state) {}

    /** Every bar and product of the season whose rows were told apart in some job. */
    public static List<BarSeason> of(List<SeasonJob> jobs) {
        List<SeasonJob> inOrder = new ArrayList<>(jobs);
        inOrder.sort(Comparator.comparingDouble(SeasonJob::startS).thenComparing(SeasonJob::folder));
        Map<Bar, List<Entry>> entries = new LinkedHashMap<>();
        for (SeasonJob job : inOrder) {
            SavedDiagnosis diagnosis = job.rows();
            if (diagnosis != null) {
                for (ProductState state : diagnosis.products()) {
                    entries.computeIfAbsent(
                                    new Bar(diagnosis.rig(), diagnosis.rows(), state.name()), bar -> new ArrayList<>())
                            .add(new Entry(job, diagnosis, state));
                }
            }
        }
        List<BarSeason> seasons = new ArrayList<>();
        entries.forEach((bar, of) -> {
            List<RowSeason> rows = new ArrayList<>();
            for (int row = 1; row <= bar.rows; row++) {
                rows.add(row(row, of));
            }
            if (rows.stream().anyMatch(row -> !Double.isNaN(row.last()))) {
                seasons.add(new BarSeason(
                        bar.rig, bar.product, of.stream().map(Entry::job).toList(), rows));
            }
        });
        return seasons;
    }

    private static RowSeason row(int row, List<Entry> entries) {
        List<RowSeason.OfJob> jobs = new ArrayList<>();
        double beforeS = 0;
        for (Entry entry : entries) {
            double workingS = entry.state.picture().workingS();
            jobs.add(ofJob(row, entry, beforeS + workingS / 2));
            beforeS += workingS;
        }
        return new RowSeason(row, jobs);
    }

    private static RowSeason.OfJob ofJob(int row, Entry entry, double workedS) {
        double overall = Double.NaN;
        for (RowHealth health : entry.state.rows()) {
            overall = health.row() == row ? 1 + health.medianDeviation() : overall;
        }
        double ratio = Double.NaN;
        double spread = Double.NaN;
        double responseS = Double.NaN;
        double evaluatedS = 0;
        for (RowBaseline baseline : entry.state.baselines()) {
            if (baseline.row() == row && baseline.evaluatedS() > 0) {
                ratio = baseline.medianRatio();
                spread = baseline.spread();
                responseS = baseline.responseS();
                evaluatedS = baseline.evaluatedS();
            }
        }
        List<FindingKind> findings = new ArrayList<>();
        for (SavedFinding found : entry.diagnosis.findings()) {
            if (found.product().equals(entry.state.key())
                    && found.finding().rows().contains(row)) {
                findings.add(found.finding().kind());
            }
        }
        return new RowSeason.OfJob(workedS, ratio, overall, spread, responseS, evaluatedS, findings);
    }
}
