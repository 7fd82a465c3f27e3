package io.rowledger.report.review;

import io.rowledger.rate.RowTotals;
import io.rowledger.rate.RowTotals.TurnError;
import java.util.List;
import java.util.function.Function;

/**
 * Turn error of the whole bar: the rows' means weighted by the ground they swept.
 *
 * @param meanAbs mean of |ε| as a fraction; NaN if no row was evaluated
 * @param beyond10Share fraction of the evaluated ground with |ε| above 10 %; NaN if no row was evaluated
 */
public record TurnSums(double meanAbs, double beyond10Share) {
    /** Over the rows, of one of their two turn errors. */
    public static TurnSums of(List<RowTotals> rows, Function<RowTotals, TurnError> which) {
        double sum = 0;
        double beyondM2 = 0;
        double areaM2 = 0;
        for (RowTotals row : rows) {
            TurnError error = which.apply(row);
            if (Double.isFinite(error.meanAbs()) && row.sweptAreaM2() > 0) {
                sum += error.meanAbs() * row.sweptAreaM2();
                beyondM2 += error.beyond10M2();
                areaM2 += row.sweptAreaM2();
            }
        }
        return areaM2 > 0 ? new TurnSums(sum / areaM2, beyondM2 / areaM2) : new TurnSums(Double.NaN, Double.NaN);
    }
}
