package io.rowledger.results;

import com.fasterxml.jackson.annotation.JsonProperty;
import io.rowledger.report.compare.Matching;
import io.rowledger.report.compare.RowVerdict;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.report.findings.RowHealth;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.report.findings.SavedDiagnosis.ProductState;
import io.rowledger.report.findings.SavedDiagnosis.SavedFinding;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** {@code comparison.json}: findings gone, remaining, new and not tested, and every row before and after. */
public record ComparisonJson(
        String schema,
        String programVersion,
        Job before,
        Job after,
        List<FindingJson> gone,
        List<Pair> remaining,
        @JsonProperty("new") List<FindingJson> fresh,
        List<NotTested> notTested,
        List<OfProduct> products) {

    /** Writes the comparison of two jobs. */
    public static void write(SavedDiagnosis before, SavedDiagnosis after, String programVersion, OutputStream out)
            throws IOException {
        JsonFile.write(of(before, after, programVersion), out);
    }

    private static ComparisonJson of(SavedDiagnosis before, SavedDiagnosis after, String programVersion) {
        Matching matching = Matching.of(before, after);
        List<OfProduct> products = new ArrayList<>();
        for (ProductState state : after.products()) {
            for (ProductState old : before.products()) {
                if (old.key().equals(state.key())) {
                    products.add(OfProduct.of(old, state));
                }
            }
        }
        return new ComparisonJson(
                ResultFile.COMPARISON.schemaId(),
                programVersion,
                Job.of(before),
                Job.of(after),
                findings(matching.gone()),
                matching.remaining().stream()
                        .map(pair -> new Pair(FindingJson.of(pair.before()), FindingJson.of(pair.after())))
                        .toList(),
                findings(matching.fresh()),
                matching.notTested().stream()
                        .map(one -> new NotTested(FindingJson.of(one.before()), FindingFacts.filed(one.why())))
                        .toList(),
                products);
    }

    private static List<FindingJson> findings(List<SavedFinding> findings) {
        return findings.stream().map(FindingJson::of).toList();
    }

    /** Which job. */
    record Job(
            String field,
            String rig,
            @OrNull @Nullable Instant start,
            @OrNull @Nullable Instant end) {
        static Job of(SavedDiagnosis job) {
            return new Job(job.field(), job.rig(), JsonNumbers.instant(job.startS()), JsonNumbers.instant(job.endS()));
        }
    }

    /** The same fault in both jobs. */
    record Pair(FindingJson before, FindingJson after) {}

    /** A fault of the job before that the job after could not have shown. */
    record NotTested(FindingJson before, String why) {}

    /** One product that both jobs have. */
    record OfProduct(String product, List<Row> rows) {
        static OfProduct of(ProductState before, ProductState after) {
            List<Row> rows = new ArrayList<>();
            for (int r = 0; r < after.rows().size(); r++) {
                rows.add(Row.of(before.rows().get(r), after.rows().get(r)));
            }
            return new OfProduct(after.key(), rows);
        }
    }

    /** One row before and after. */
    record Row(int row, DiagnosisJson.Health before, DiagnosisJson.Health after, String verdict) {
        static Row of(RowHealth before, RowHealth after) {
            return new Row(
                    after.row(),
                    DiagnosisJson.Health.of(before),
                    DiagnosisJson.Health.of(after),
                    RowVerdict.of(before, after).name().toLowerCase(Locale.ROOT));
        }
    }
}
