package io.rowledger.report.rows;

import io.rowledger.analysis.Analysis;
import io.rowledger.document.chart.Chart;
import io.rowledger.report.common.RowPictureFigure;
import io.rowledger.report.map.DeviationPicture;
import io.rowledger.report.rows.RowDiagnosis.Baseline;
import io.rowledger.units.UnitFormat;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The row diagnosis' charts by the names a template uses in {@code data-chart}: {@code picture/KEY} and
 * {@code baseline/KEY} per product key, {@code onset/N} per finding, {@code finding-map}.
 */
public final class DiagnosisCharts {
    private DiagnosisCharts() {}

    /** The charts of one diagnosis. */
    public static Map<String, Chart> of(Analysis a, RowDiagnosis diagnosis, UnitFormat f) {
        Map<String, Chart> charts = new LinkedHashMap<>();
        for (RowPictureFigure picture : diagnosis.pictures()) {
            charts.put("picture/" + picture.key(), new DeviationPicture(picture.data(), picture.marks(), f));
        }
        for (Baseline baseline : diagnosis.baselines()) {
            charts.put("baseline/" + baseline.key(), new BaselineDots(baseline.rows(), f));
        }
        for (int i = 0; i < diagnosis.cards().size(); i++) {
            charts.put(
                    diagnosis.cards().get(i).chart(),
                    new OnsetChart(a.diagnosis().windows().get(i), f));
        }
        charts.put("finding-map", new FindingMap(a, diagnosis.cards(), f));
        return charts;
    }
}
