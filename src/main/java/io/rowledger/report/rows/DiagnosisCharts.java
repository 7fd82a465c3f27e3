package io.rowledger.report.rows;

import io.rowledger.document.chart.Chart;
import io.rowledger.document.text.Messages;
import io.rowledger.report.common.RowPictureFigure;
import io.rowledger.report.map.DeviationPicture;
import io.rowledger.report.rows.RowDiagnosis.Baseline;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The row diagnosis' charts by the names a template uses in {@code data-chart}: {@code picture/KEY} and
 * {@code baseline/KEY} per product key, {@code onset/N} per finding, {@code finding-map}.
 */
final class DiagnosisCharts {
    private DiagnosisCharts() {}

    static Map<String, Chart> of(RowsInput in, RowDiagnosis diagnosis, Messages messages) {
        Map<String, Chart> charts = new LinkedHashMap<>();
        for (RowPictureFigure picture : diagnosis.pictures()) {
            charts.put("picture/" + picture.key(), new DeviationPicture(picture.data(), picture.marks(), messages));
        }
        for (Baseline baseline : diagnosis.baselines()) {
            charts.put("baseline/" + baseline.key(), new BaselineDots(baseline.rows(), messages));
        }
        for (int i = 0; i < diagnosis.cards().size(); i++) {
            charts.put(
                    diagnosis.cards().get(i).chart(),
                    new OnsetChart(in.findings().get(i).window(), messages));
        }
        charts.put("finding-map", new FindingMap(in, diagnosis.cards(), messages));
        return charts;
    }
}
