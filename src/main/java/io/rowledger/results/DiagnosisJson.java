package io.rowledger.results;

import io.rowledger.diagnose.signal.RowBaseline;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.report.findings.RowHealth;
import io.rowledger.report.findings.RowPicture;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.report.findings.SavedDiagnosis.ProductState;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** {@code diagnosis.json}: what the rows were like and what was found, for programs and for {@code rowledger compare}. */
public record DiagnosisJson(
        String schema,
        String programVersion,
        String field,
        String rig,
        String zone,
        @OrNull @Nullable Instant start,
        @OrNull @Nullable Instant end,
        int rows,
        @Decimals(3) double fastestPassMps,
        List<OfProduct> products,
        List<FindingJson> findings,
        List<String> notes) {

    /** Writes the diagnosis of a job. */
    public static void write(SavedDiagnosis d, String programVersion, OutputStream out) throws IOException {
        JsonFile.write(of(d, programVersion), out);
    }

    private static DiagnosisJson of(SavedDiagnosis d, String programVersion) {
        return new DiagnosisJson(
                ResultFile.DIAGNOSIS.schemaId(),
                programVersion,
                d.field(),
                d.rig(),
                d.zone(),
                JsonNumbers.instant(d.startS()),
                JsonNumbers.instant(d.endS()),
                d.rows(),
                d.fastestPassMps(),
                d.products().stream()
                        .map(product -> OfProduct.of(product, d.startS()))
                        .toList(),
                d.findings().stream().map(FindingJson::of).toList(),
                d.notes().stream().map(FindingFacts::filed).toList());
    }

    /**
     * One product.
     *
     * @param meters the rows of each meter that feeds several
     */
    record OfProduct(String product, String name, List<List<Integer>> meters, List<Row> rows, Picture picture) {
        static OfProduct of(ProductState state, double startS) {
            return new OfProduct(
                    state.key(),
                    state.name(),
                    state.meters(),
                    state.rows().stream()
                            .map(row -> Row.of(row, state.baselines()))
                            .toList(),
                    Picture.of(state.picture(), startS));
        }
    }

    /**
     * One row against the other rows.
     *
     * @param beyond10PctSharePct share of the evaluated time with a deviation beyond 10 %
     * @param evaluatedS time in which the row could be compared
     * @param baseline the row while healthy, null where it never was for long enough
     */
    record Row(
            int row,
            @Decimals(JsonNumbers.PCT) double medianDeviationPct,
            @Decimals(JsonNumbers.PCT) double beyond10PctSharePct,
            @Decimals(1) double evaluatedS,
            @OrNull @Nullable Baseline baseline) {
        static Row of(RowHealth health, List<RowBaseline> baselines) {
            Baseline baseline = baselines.stream()
                    .filter(one -> one.row() == health.row())
                    .findFirst()
                    .map(Baseline::of)
                    .orElse(null);
            Health h = Health.of(health);
            return new Row(health.row(), h.medianDeviationPct, h.beyond10PctSharePct, h.evaluatedS, baseline);
        }
    }

    /** The figures of a row that {@code comparison.json} repeats. */
    record Health(
            @Decimals(JsonNumbers.PCT) double medianDeviationPct,
            @Decimals(JsonNumbers.PCT) double beyond10PctSharePct,
            @Decimals(1) double evaluatedS) {
        static Health of(RowHealth row) {
            return new Health(row.medianDeviation() * 100, row.offShare() * 100, row.evaluatedS());
        }
    }

    /** A row while healthy: ratios to the other rows' median. */
    record Baseline(
            @Decimals(4) double medianRatio,
            @Decimals(4) double spreadRatio,
            @Decimals(2) double responseS,
            @Decimals(1) double evaluatedS,
            boolean outlier) {
        static Baseline of(RowBaseline row) {
            return new Baseline(row.medianRatio(), row.spread(), row.responseS(), row.evaluatedS(), row.outlier());
        }
    }

    /**
     * Deviation of each row in each stretch of time.
     *
     * @param fromS start of each stretch, s after {@code start} of the job
     * @param toS its end
     * @param pass its pass
     * @param deviationPct a line for each row from the left, a value for each stretch
     */
    record Picture(
            @Decimals(2) double[] fromS,
            @Decimals(2) double[] toS,
            int[] pass,
            @Decimals(1) double[][] deviationPct) {
        static Picture of(RowPicture picture, double startS) {
            return new Picture(
                    since(startS, picture.startS()), since(startS, picture.endS()), picture.pass(), percent(picture));
        }

        private static double[] since(double startS, double[] timesS) {
            double[] since = new double[timesS.length];
            for (int i = 0; i < since.length; i++) {
                since[i] = timesS[i] - startS;
            }
            return since;
        }

        private static double[][] percent(RowPicture picture) {
            double[][] percent = new double[picture.deviation().length][];
            for (int r = 0; r < percent.length; r++) {
                float[] row = picture.deviation()[r];
                percent[r] = new double[row.length];
                for (int c = 0; c < row.length; c++) {
                    percent[r][c] = row[c] * 100.0;
                }
            }
            return percent;
        }
    }
}
