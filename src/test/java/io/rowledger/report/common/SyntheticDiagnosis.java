package io.rowledger.report.common;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.diagnose.HandMadePicture;
import io.rowledger.diagnose.OnsetWindow;
import io.rowledger.diagnose.signal.Figure;
import io.rowledger.diagnose.signal.RowBaseline;
import io.rowledger.diagnose.signal.RowTime;
import io.rowledger.finding.Finding;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.List;

/**
 * The diagnosis of {@link SyntheticJob}: 25 bins of 5 s in each of ten passes, the first of which can't be evaluated. Row 7
 * gives nothing from pass 6 on, row 3 gives 6 % too much, the others what their peers do.
 */
public final class SyntheticDiagnosis {
    static final int BINS_A_PASS = 25;
    static final double BIN_S = 5;

    private SyntheticDiagnosis() {}

    static Diagnosis of(SyntheticJob job, int products, List<Finding> findings) {
        List<RowTime> pictures = new ArrayList<>();
        List<RowBaseline> baselines = new ArrayList<>();
        for (int p = 0; p < products; p++) {
            pictures.add(picture(job, p));
            for (int r = 1; r <= SyntheticJob.ROWS; r++) {
                boolean row3 = r == 3 && p == 0 && job.volumeL(1, 3) > 8;
                baselines.add(new RowBaseline(p, r, row3 ? 1.06 : 1, 0.012, r == 1 ? Double.NaN : 1.4, 1200, row3));
            }
        }
        List<OnsetWindow> windows = new ArrayList<>();
        List<List<Figure>> figures = new ArrayList<>();
        for (Finding finding : findings) {
            windows.add(window(finding));
            figures.add(List.of(Figure.of("findings.figure.peerShare", 0, "1")));
        }
        return new Diagnosis(
                findings,
                windows,
                figures,
                pictures,
                baselines,
                List.of(Message.of("findings.text", "Pass 3 holds too few records to judge.")));
    }

    /** Product 1 has no fault unless the job says so. */
    private static RowTime picture(SyntheticJob job, int product) {
        int n = SyntheticJob.PASSES * BINS_A_PASS;
        double[] start = new double[n];
        double[] end = new double[n];
        int[] pass = new int[n];
        float[][] ratio = new float[SyntheticJob.ROWS][n];
        for (int b = 0; b < n; b++) {
            int q = b / BINS_A_PASS;
            start[b] = SyntheticJob.START_S + q * 150 + b % BINS_A_PASS * BIN_S;
            end[b] = start[b] + BIN_S;
            pass[b] = q + 1;
            for (int r = 0; r < SyntheticJob.ROWS; r++) {
                double share = product == 1 && !job.isFaultyInBoth() ? 1 : job.volumeL(q + 1, r + 1) / 8;
                ratio[r][b] = b % BINS_A_PASS == 0 ? Float.NaN : (float) share;
            }
        }
        return HandMadePicture.of(start, end, pass, ratio);
    }

    /** Two minutes around the onset, twice a second; a full row is 0.064 L/s at 2 m/s, 0.8 m and 0.04 L/m². */
    private static OnsetWindow window(Finding finding) {
        int n = 240;
        double[] time = new double[n];
        double[] flow = new double[n];
        double[] peers = new double[n];
        double[] target = new double[n];
        double[] speed = new double[n];
        for (int i = 0; i < n; i++) {
            time[i] = finding.fromS() - 60 + i * 0.5;
            boolean after = time[i] >= finding.fromS();
            flow[i] = after ? 0 : 0.064;
            peers[i] = i % 50 == 0 ? Double.NaN : 0.064;
            target[i] = 0.064;
            speed[i] = 2;
        }
        int row = finding.rows().isEmpty() ? 0 : finding.rows().get(0);
        return new OnsetWindow(0, row, finding.fromS(), time, flow, peers, target, speed);
    }
}
