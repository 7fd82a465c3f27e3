package io.rowledger.report.common;

import io.rowledger.analysis.Analysis;
import io.rowledger.uncertainty.Interval;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.uncertainty.UncertaintyBudget;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Known intervals for the job of {@link SyntheticJob}, one product. */
public final class HandMadeIntervals {
    private HandMadeIntervals() {}

    /** The same analysis with these intervals. */
    public static Analysis in(Analysis a) {
        return new Analysis(
                a.rig(),
                a.log(),
                a.track(),
                a.strips(),
                a.delivery(),
                a.rates(),
                a.coverage(),
                a.diagnosis(),
                intervals(a.rig().rows(), a.track().passes().size()),
                a.notes());
    }

    /** The same with every row's deviation known to so many percent only. */
    public static Intervals withRowsKnownTo(double pct, Intervals in) {
        List<Intervals.OfRow> rows = new ArrayList<>();
        for (Intervals.OfRow row : in.rows()) {
            Intervals.OfRowProduct of = row.products().get(0);
            rows.add(new Intervals.OfRow(
                    row.row(),
                    row.sweptAreaM2(),
                    row.appliedAreaM2(),
                    List.of(new Intervals.OfRowProduct(
                            of.volumeL(), of.meanRateLPerM2(), new Interval(0, -pct, pct)))));
        }
        return new Intervals(
                in.sweptAreaM2(),
                in.coveredAreaM2(),
                in.overlapAreaM2(),
                in.skipAreaM2(),
                in.boundaryAreaM2(),
                in.nitrogenKg(),
                in.nitrogenKgPerM2(),
                in.products(),
                rows,
                in.passes(),
                in.basis());
    }

    private static Intervals intervals(int rows, int passes) {
        Intervals.OfProduct uan = new Intervals.OfProduct(
                new Interval(764.8, 755.8, 773.8),
                new Interval(0.04025, 0.0392, 0.0413),
                new Interval(324.3, 319, 329.6),
                new Interval(0.01707, 0.0165, 0.01764));
        List<Intervals.OfRow> ofRows = new ArrayList<>();
        for (int r = 1; r <= rows; r++) {
            // 80 L within 1.6 L, 0.04 L/m² within 0.0012.
            Intervals.OfRowProduct product = new Intervals.OfRowProduct(
                    new Interval(80, 78.4, 81.6), new Interval(0.04, 0.0388, 0.0412), new Interval(0, -3, 3));
            ofRows.add(new Intervals.OfRow(
                    r, new Interval(2000, 1970, 2030), new Interval(2000, 1960, 2040), List.of(product)));
        }
        UncertaintyBudget basis = new UncertaintyBudget(
                0.0254,
                true,
                List.of(new UncertaintyBudget.Liquid("UAN 32-0-0", 0.015, true, 0.01, false, 0)),
                List.of(
                        new UncertaintyBudget.Fix(4, 1000, 0.012, 0.0111),
                        new UncertaintyBudget.Fix(9, 20, 0.1, 0.133)),
                300,
                0.2,
                60,
                255,
                List.of());
        return new Intervals(
                new Interval(20_000, 19_900, 20_100),
                new Interval(19_000, 18_800, 19_200),
                new Interval(160, 40, 230),
                new Interval(1000, 900, 1100),
                Interval.unknown(20_000),
                uan.nitrogenKg(),
                uan.nitrogenKgPerM2(),
                List.of(uan),
                ofRows,
                Collections.nCopies(
                        passes,
                        new Intervals.OfPass(
                                new Interval(5000, 4950, 5050),
                                List.of(new Intervals.OfPassProduct(
                                        new Interval(200, 196, 204), new Interval(0, -2, 2))))),
                basis);
    }
}
