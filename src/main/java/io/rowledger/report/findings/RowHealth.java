package io.rowledger.report.findings;

import io.rowledger.diagnose.signal.RowTime;
import io.rowledger.report.common.Limits;
import io.rowledger.stats.RobustStatistics;
import java.util.ArrayList;
import java.util.List;

/**
 * One row against the other rows over the whole job, faults included.
 *
 * @param row from 1 at the left
 * @param medianDeviation median over the evaluated time, a fraction; NaN if it was never evaluated
 * @param offShare fraction of the evaluated time beyond {@link Limits#ACT_PCT}; NaN likewise
 * @param evaluatedS evaluated time, s
 */
public record RowHealth(int row, double medianDeviation, double offShare, double evaluatedS) {
    /** All rows of one product, from the left. */
    public static List<RowHealth> of(RowTime picture) {
        List<RowHealth> rows = new ArrayList<>();
        double[] evaluated = new double[picture.bins()];
        for (int r = 0; r < picture.rows(); r++) {
            int n = 0;
            double evaluatedS = 0;
            double offS = 0;
            for (int b = 0; b < picture.bins(); b++) {
                double deviation = picture.deviation(r, b);
                if (Double.isNaN(deviation)) {
                    continue;
                }
                double seconds = picture.endS(b) - picture.startS(b);
                evaluated[n++] = deviation;
                evaluatedS += seconds;
                offS += Math.abs(deviation) * 100 > Limits.ACT_PCT ? seconds : 0;
            }
            rows.add(new RowHealth(
                    r + 1,
                    RobustStatistics.median(evaluated, n),
                    evaluatedS > 0 ? offS / evaluatedS : Double.NaN,
                    evaluatedS));
        }
        return rows;
    }
}
