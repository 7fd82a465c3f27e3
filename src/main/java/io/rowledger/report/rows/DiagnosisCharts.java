package io.rowledger.report.rows;

import io.rowledger.document.chart.Chart;
import io.rowledger.document.text.Messages;
import io.rowledger.report.findings.MeterLanes;
import io.rowledger.report.findings.RowPictureFigure;
import io.rowledger.report.map.DeviationPicture;
import io.rowledger.report.rows.RowDiagnosis.Baseline;
import io.rowledger.report.rows.RowsInput.FindingView;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * The row diagnosis' charts by the names a template uses in {@code data-chart}: {@code picture/KEY}, {@code target/KEY},
 * {@code stack/KEY} and {@code baseline/KEY} per product key, {@code job/N}, {@code onset/N} and {@code speed/N} per finding,
 * {@code finding-map}; {@code bar} where one meter serves it.
 */
final class DiagnosisCharts {
    private DiagnosisCharts() {}

    static Map<String, Chart> of(RowsInput in, RowDiagnosis diagnosis, Messages messages) {
        Map<String, Chart> charts = new LinkedHashMap<>();
        WorkClock clock = new WorkClock(in.track().passes());
        for (int p = 0; p < diagnosis.pictures().size(); p++) {
            MeterLanes lanes = in.lanes().get(p);
            RowPictureFigure picture = diagnosis.pictures().get(p);
            charts.put(
                    "picture/" + picture.key(),
                    DeviationPicture.withoutLegend(picture.data(), picture.marks(), messages)
                            .of(lanes));
            JobTraces traces = in.traces().get(p);
            charts.put(
                    "target/" + picture.key(),
                    new DeviationPicture(
                                    lanes.of(traces.againstTarget(
                                            in.diagnosis().pictures().get(p))),
                                    picture.marks(),
                                    messages)
                            .of(lanes));
            charts.put("stack/" + picture.key(), new StackedTraces(traces, lanes, clock, faulty(picture), messages));
        }
        if (diagnosis.oneMeter() && !in.traces().isEmpty()) {
            charts.put("bar", new WholeJobChart(in.traces().get(0), clock, null, messages));
        }
        for (Baseline baseline : diagnosis.baselines()) {
            charts.put("baseline/" + baseline.key(), new BaselineDots(baseline.rows(), messages));
        }
        List<FindingView> findings = in.costly();
        for (int i = 0; i < diagnosis.cards().size(); i++) {
            String number = "/" + diagnosis.cards().get(i).number();
            FindingView view = findings.get(i);
            JobTraces traces = in.traces().get(view.window().product());
            charts.put("job" + number, new WholeJobChart(traces, clock, view.finding(), messages));
            charts.put("onset" + number, new OnsetChart(view.window(), clock, messages));
            charts.put("speed" + number, new SpeedScatter(traces, view.finding(), messages));
        }
        charts.put("finding-map", new FindingMap(in, diagnosis.cards(), messages));
        return charts;
    }

    private static Set<Integer> faulty(RowPictureFigure picture) {
        Set<Integer> rows = new TreeSet<>();
        picture.marks().forEach(mark -> rows.addAll(mark.rows()));
        return rows;
    }
}
