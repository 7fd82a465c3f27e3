package io.rowledger.report.review;

import io.rowledger.document.chart.Chart;
import io.rowledger.document.text.Messages;
import io.rowledger.report.map.GroundView;
import io.rowledger.report.map.PlaceMap;
import io.rowledger.report.map.RateMap;
import io.rowledger.report.review.PassReview.ProductReview;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The pass review's charts by the names a template uses in {@code data-chart}: {@code rate-map/KEY}, {@code rows/KEY} and
 * {@code received/KEY} per product key, {@code places} and {@code turns}.
 */
public final class ReviewCharts {
    private ReviewCharts() {}

    /** The charts of one review. */
    public static Map<String, Chart> of(GroundView ground, PassReview review, Messages messages) {
        Map<String, Chart> charts = new LinkedHashMap<>();
        for (int p = 0; p < review.products().size(); p++) {
            ProductReview product = review.products().get(p);
            charts.put("rate-map/" + product.key(), new RateMap(ground, p, product.hasTarget(), messages));
            charts.put("rows/" + product.key(), new RowBars(product, messages));
            charts.put("received/" + product.key(), new ReceivedHistogram(product, messages));
        }
        charts.put("places", new PlaceMap(ground, review.ground(), messages));
        charts.put("turns", new TurnBars(review.turns(), messages));
        return charts;
    }
}
