package io.rowledger.report.review;

import io.rowledger.coverage.CoverageDefect;
import io.rowledger.document.chart.Chart;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.report.answer.NextActions.Action;
import io.rowledger.report.common.JobView;
import io.rowledger.report.map.DayMap;
import io.rowledger.report.map.GroundView;
import io.rowledger.report.map.PlaceMap;
import io.rowledger.report.map.RateMap;
import io.rowledger.report.map.WorkView;
import io.rowledger.report.map.ZoomMap;
import io.rowledger.report.review.PassReview.ProductReview;
import io.rowledger.track.Pass;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The pass review's charts by the names a template uses in {@code data-chart}: {@code rate-map/KEY}, {@code rows/KEY} and
 * {@code received/KEY} per product key, {@code places}, {@code turns}, {@code zoom/N} per worst place, {@code trace/N} per pass and
 * {@code days}.
 */
final class ReviewCharts {
    /** Places of the actions that are named on the first map. */
    private static final int MAX_MARKS = 8;

    private ReviewCharts() {}

    /** The charts of one review. */
    static Map<String, Chart> of(ReviewInput in, PassReview review, Messages messages) {
        JobView job = in.job();
        GroundView ground = new GroundView(
                job.coverage(), job.track(), job.rig().widthM() / job.rig().rows(), in.setbacks());
        List<RateMap.Mark> marks = marks(in, review, messages);
        Map<String, Chart> charts = new LinkedHashMap<>();
        for (int p = 0; p < review.products().size(); p++) {
            ProductReview product = review.products().get(p);
            charts.put("rate-map/" + product.key(), new RateMap(ground, p, product.hasTarget(), marks, messages));
            charts.put("rows/" + product.key(), new RowBars(product, messages));
            charts.put("received/" + product.key(), new ReceivedHistogram(product, messages));
        }
        charts.put("places", new PlaceMap(ground, review.ground(), messages));
        charts.put("turns", new TurnBars(review.turns(), messages));
        if (review.hasGround()) {
            near(in, review, ground, messages, charts);
        }
        if (review.severalDays()) {
            charts.put("days", new DayMap(ground, days(job, messages), messages));
        }
        return charts;
    }

    /** Pictures of the worst places and traces of the passes, both of the first product. */
    private static void near(
            ReviewInput in, PassReview review, GroundView ground, Messages messages, Map<String, Chart> charts) {
        JobView job = in.job();
        WorkView work = new WorkView(
                in.strips(), job.delivery(), 0, job.coverage().received().get(0).meanRateLPerM2());
        WorstPlaces worst = WorstPlaces.of(job, in.findings(), review.ground(), messages);
        for (int i = 0; i < worst.places().size(); i++) {
            charts.put(
                    worst.places().get(i).chart(),
                    new ZoomMap(
                            ground, work, worst.marks().get(i), worst.sizesM().get(i), messages));
        }
        for (Pass pass : job.track().passes()) {
            charts.put("trace/" + pass.number(), PassTrace.of(work, pass));
        }
    }

    /** What the actions name: suspected rows where they show first, then the first stops. */
    private static List<RateMap.Mark> marks(ReviewInput in, PassReview review, Messages messages) {
        List<RateMap.Mark> marks = new ArrayList<>();
        double[] eastNorth = new double[2];
        for (Finding finding : in.findings()) {
            boolean named = review.next().actions().stream()
                    .anyMatch(
                            action -> !action.rows().isEmpty() && action.rows().equals(finding.rows()));
            if (named && Double.isFinite(finding.latDeg()) && Double.isFinite(finding.lonDeg())) {
                in.job().track().plane().forward(finding.latDeg(), finding.lonDeg(), eastNorth);
                marks.add(new RateMap.Mark(
                        messages.text("review.worst.rows", finding.rows()), eastNorth[0], eastNorth[1]));
            }
        }
        for (Action action : review.next().actions()) {
            for (String name : action.places()) {
                List<CoverageDefect> all = name.startsWith("S")
                        ? in.job().coverage().skips()
                        : in.job().coverage().overlaps();
                CoverageDefect place = all.get(Integer.parseInt(name.substring(1)) - 1);
                if (marks.size() < MAX_MARKS) {
                    marks.add(new RateMap.Mark(name, place.eastM(), place.northM()));
                }
            }
        }
        return marks;
    }

    private static List<DayMap.Day> days(JobView job, Messages messages) {
        UnitFormat f = messages.units();
        Map<String, List<Integer>> days = new LinkedHashMap<>();
        job.track()
                .passes()
                .forEach(pass -> days.computeIfAbsent(f.day(pass.startS()), day -> new ArrayList<>())
                        .add(pass.number()));
        return days.entrySet().stream()
                .map(day -> new DayMap.Day(day.getKey(), day.getValue()))
                .toList();
    }
}
