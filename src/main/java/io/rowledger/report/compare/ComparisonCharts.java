package io.rowledger.report.compare;

import io.rowledger.document.chart.Chart;
import io.rowledger.report.compare.Comparison.ProductPair;
import io.rowledger.report.map.DeviationPicture;
import io.rowledger.units.UnitFormat;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The comparison's charts by the names a template uses in {@code data-chart}: {@code before/KEY} and {@code after/KEY} per
 * product key, {@code legend}.
 */
public final class ComparisonCharts {
    private ComparisonCharts() {}

    /** The charts of one comparison. */
    public static Map<String, Chart> of(Comparison comparison, UnitFormat f) {
        Map<String, Chart> charts = new LinkedHashMap<>();
        for (ProductPair pair : comparison.products()) {
            charts.put(
                    "before/" + pair.key(),
                    DeviationPicture.withoutLegend(
                            pair.before().picture(), pair.before().marks(), f));
            charts.put(
                    "after/" + pair.key(),
                    DeviationPicture.withoutLegend(
                            pair.after().picture(), pair.after().marks(), f));
        }
        charts.put("legend", (canvas, widthPt, heightPt) -> DeviationPicture.legend(canvas, 9));
        return charts;
    }
}
