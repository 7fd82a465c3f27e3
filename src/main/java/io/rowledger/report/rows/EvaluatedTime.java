package io.rowledger.report.rows;

import io.rowledger.diagnose.signal.RowTime;
import io.rowledger.track.Pass;
import java.util.List;

/**
 * How much of the work the diagnosis could evaluate.
 *
 * @param workingS length of all passes, s
 * @param share evaluated row time ÷ working row time, 0 to 1; 0 if there was none
 * @param rows rows evaluated at least once
 */
record EvaluatedTime(double workingS, double share, int rows) {
    /** Sums the passes and the bins of the pictures; a bin whose deviation is NaN was not evaluated. */
    static EvaluatedTime of(List<Pass> passes, List<RowTime> pictures, int rows) {
        double workingS = 0;
        for (Pass pass : passes) {
            workingS += pass.endS() - pass.startS();
        }
        double evaluatedS = 0;
        double allS = 0;
        boolean[] seen = new boolean[rows];
        for (RowTime picture : pictures) {
            for (int b = 0; b < picture.bins(); b++) {
                double seconds = picture.endS(b) - picture.startS(b);
                for (int r = 0; r < picture.rows(); r++) {
                    allS += seconds;
                    if (!Double.isNaN(picture.deviation(r, b))) {
                        evaluatedS += seconds;
                        seen[r] = true;
                    }
                }
            }
        }
        int count = 0;
        for (boolean row : seen) {
            count += row ? 1 : 0;
        }
        return new EvaluatedTime(workingS, allS > 0 ? evaluatedS / allS : 0, count);
    }
}
