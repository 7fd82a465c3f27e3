package io.rowledger.diagnose;

import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.diagnose.signal.LogLimits;
import io.rowledger.finding.FindingKind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Fits {@link Calibration} to simulated logs in all forms and writes its coefficients: {@code mvn -Pcalibration test}, {@code
 * -Dcalibration.seed}, {@code -Dcalibration.logs} for others. How far the calibration holds is for {@link ScoringRun} to say, on
 * other seeds.
 *
 * <p>Maximum a posteriori: the likelihood of right and wrong findings times normal priors (base N(0, 3²), each kind N(0, 0.7²),
 * level N(1, 0.3²), each form N(0, 1²)), by Newton's method; the level is kept at 0.2 or more and forms at 0 or less, so that
 * confidence rises with what is stated and never with a coarser log.
 */
class CalibrationRun {
    private static final List<FindingKind> KIND_ORDER = List.of(FindingKind.values());
    private static final Path RESOURCE = Path.of("src/main/resources/io/rowledger/diagnose/confidence.properties");
    private static final long STRIDE = 10_007;
    private static final int KINDS = FindingKind.values().length;
    private static final int FIRST_FORM = 2 + KINDS;
    private static final int SIZE = FIRST_FORM + Calibration.FORMS.size();

    @TempDir
    Path folder;

    /** A finding's inputs, and whether it was right. */
    private record Row(double[] x, boolean right) {}

    @Test
    void coefficients_are_fitted_and_written() throws IOException {
        long seed = Long.getLong("calibration.seed", 31_000);
        int each = Integer.getInteger("calibration.logs", 900) / LogForm.values().length;
        List<Row> rows = new ArrayList<>();
        long first = seed;
        for (LogForm form : LogForm.values()) {
            first++;
            for (int i = 0; i < each; i++) {
                RandomJob.Drawn job = RandomJob.draw(first * STRIDE + i, form);
                job.result().writeTo(folder);
                rows.addAll(rows(job));
                Files.deleteIfExists(folder.resolve("boundary.geojson"));
            }
        }
        double[] fitted = fit(rows);
        Files.writeString(RESOURCE, text(fitted, rows.size(), seed, each));
        assertTrue(rows.size() > each, "findings to fit to: " + rows.size());
    }

    private List<Row> rows(RandomJob.Drawn job) {
        JobOnDisk.Job read = JobOnDisk.read(folder, "log.csv");
        Diagnosis diagnosis = read.diagnose(Calibration.none());
        double[] form = Calibration.form(
                LogLimits.of(read.log(), 0, read.strips().rows()), read.log().hasDown());
        Scores scores = new Scores();
        scores.add("job", job, diagnosis);
        List<Row> rows = new ArrayList<>();
        for (Scores.Told told : scores.told()) {
            double[] x = new double[SIZE];
            double stated = told.finding().confidence();
            x[0] = 1;
            x[1] = Math.log(stated / (1 - stated));
            x[2 + KIND_ORDER.indexOf(told.finding().kind())] = 1;
            System.arraycopy(form, 0, x, FIRST_FORM, form.length);
            rows.add(new Row(x, told.right()));
        }
        return rows;
    }

    private static double[] fit(List<Row> rows) {
        double[] at = new double[SIZE];
        at[1] = 1;
        for (int step = 0; step < 60; step++) {
            double[] gradient = new double[SIZE];
            double[][] hessian = new double[SIZE][SIZE];
            for (int k = 0; k < SIZE; k++) {
                double precision = 1 / (sigma(k) * sigma(k));
                gradient[k] = precision * ((k == 1 ? 1 : 0) - at[k]);
                hessian[k][k] = precision;
            }
            for (Row row : rows) {
                double sum = 0;
                for (int k = 0; k < SIZE; k++) {
                    sum += at[k] * row.x[k];
                }
                double p = 1 / (1 + Math.exp(-sum));
                for (int k = 0; k < SIZE; k++) {
                    gradient[k] += row.x[k] * ((row.right ? 1 : 0) - p);
                    for (int l = 0; l < SIZE; l++) {
                        hessian[k][l] += p * (1 - p) * row.x[k] * row.x[l];
                    }
                }
            }
            double[] change = solved(hessian, gradient);
            for (int k = 0; k < SIZE; k++) {
                at[k] += 0.5 * change[k];
            }
            at[1] = Math.max(0.2, at[1]);
            for (int k = FIRST_FORM; k < SIZE; k++) {
                at[k] = Math.min(0, at[k]);
            }
        }
        return at;
    }

    private static double sigma(int k) {
        return k == 0 ? 3 : k == 1 ? 0.3 : k < FIRST_FORM ? 0.7 : 1;
    }

    /** Gaussian elimination with partial pivoting. */
    private static double[] solved(double[][] a, double[] b) {
        int n = b.length;
        for (int i = 0; i < n; i++) {
            int pivot = i;
            for (int r = i + 1; r < n; r++) {
                pivot = Math.abs(a[r][i]) > Math.abs(a[pivot][i]) ? r : pivot;
            }
            double[] row = a[i];
            a[i] = a[pivot];
            a[pivot] = row;
            double value = b[i];
            b[i] = b[pivot];
            b[pivot] = value;
            for (int r = i + 1; r < n; r++) {
                double factor = a[r][i] / a[i][i];
                for (int c = i; c < n; c++) {
                    a[r][c] -= factor * a[i][c];
                }
                b[r] -= factor * b[i];
            }
        }
        double[] x = new double[n];
        for (int i = n - 1; i >= 0; i--) {
            double sum = b[i];
            for (int c = i + 1; c < n; c++) {
                sum -= a[i][c] * x[c];
            }
            x[i] = sum / a[i][i];
        }
        return x;
    }

    private static String text(double[] fitted, int findings, long seed, int each) {
        StringBuilder b = new StringBuilder(String.format(
                Locale.ROOT,
                "# Coefficients of Calibration, written by CalibrationRun: %d findings in %d logs of each of %d forms, seed %d.%n"
                        + "base=%.4f%nlevel=%.4f%n",
                findings,
                each,
                LogForm.values().length,
                seed,
                fitted[0],
                fitted[1]));
        for (FindingKind kind : FindingKind.values()) {
            b.append(String.format(
                    Locale.ROOT, "kind.%s=%.4f%n", kind.jsonName(), fitted[2 + KIND_ORDER.indexOf(kind)]));
        }
        for (int i = 0; i < Calibration.FORMS.size(); i++) {
            b.append(String.format(Locale.ROOT, "form.%s=%.4f%n", Calibration.FORMS.get(i), fitted[FIRST_FORM + i]));
        }
        return b.toString();
    }
}
