package io.rowledger.results;

import io.rowledger.diagnose.signal.Figure;
import io.rowledger.finding.Finding;
import io.rowledger.report.findings.FindingFacts;
import io.rowledger.report.findings.FindingProducts;
import io.rowledger.report.findings.FindingUncertainties;
import io.rowledger.report.findings.SavedDiagnosis.SavedFinding;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A finding in {@code diagnosis.json} and {@code comparison.json}.
 *
 * @param product key of its product
 * @param meters meters, from 1, where some feed several of the rows; else empty
 * @param volumeL too little is negative
 * @param alternative the next best explanation
 * @param check what to look at on the machine
 */
record FindingJson(
        String product,
        String kind,
        List<Integer> rows,
        List<Integer> meters,
        @OrNull @Nullable Instant from,
        @OrNull @Nullable Instant to,
        @Decimals(FindingJson.CONFIDENCE) double confidence,
        @Decimals(JsonNumbers.AREA_M2) double areaM2,
        @Decimals(JsonNumbers.VOLUME_L) double volumeL,
        @Decimals(JsonNumbers.MASS_KG) double nitrogenKg,
        Place where,
        String evidence,
        String alternative,
        String check,
        List<OneFigure> figures) {
    static final int CONFIDENCE = 2;

    static FindingJson of(SavedFinding saved) {
        Finding finding = saved.finding();
        return new FindingJson(
                saved.product(),
                finding.kind().jsonName(),
                finding.rows(),
                finding.meters(),
                JsonNumbers.instant(finding.fromS()),
                JsonNumbers.instant(finding.toS()),
                finding.confidence(),
                finding.areaM2(),
                finding.volumeL(),
                finding.nitrogenKg(),
                new Place(finding.latDeg(), finding.lonDeg()),
                FindingFacts.filed(finding.evidence()),
                FindingFacts.filed(finding.alternative()),
                FindingFacts.filed(finding.check()),
                saved.figures().stream().map(OneFigure::of).toList());
    }

    /** Degrees on WGS 84. */
    record Place(
            @Decimals(JsonNumbers.DEGREES) double lat,
            @Decimals(JsonNumbers.DEGREES) double lon) {}

    /** A figure that the evidence rests on. */
    record OneFigure(String name, @Decimals(4) double value, String unit) {
        static OneFigure of(Figure figure) {
            return new OneFigure(FindingFacts.filed(figure.label()), figure.value(), figure.unit());
        }
    }

    /**
     * A finding in {@code summary.json}.
     *
     * @param product key of the only product it shows in; null where it shows in several
     * @param meters meters, from 1, where some feed several of the rows; else empty
     * @param intervals bounds of area, volume and nitrogen
     */
    record InSummary(
            @OrNull @Nullable String product,
            String kind,
            List<Integer> rows,
            List<Integer> meters,
            @OrNull @Nullable Instant from,
            @OrNull @Nullable Instant to,
            @Decimals(CONFIDENCE) double confidence,
            @Decimals(JsonNumbers.AREA_M2) double areaM2,
            @Decimals(JsonNumbers.VOLUME_L) double volumeL,
            @Decimals(JsonNumbers.MASS_KG) double nitrogenKg,
            IntervalsJson.OfFinding intervals,
            Place where,
            String evidence,
            String alternative,
            String check,
            boolean alsoNoticed) {
        static List<InSummary> all(FindingProducts products, FindingUncertainties uncertainties) {
            List<InSummary> all = new ArrayList<>();
            for (int i = 0; i < products.diagnosis().findings().size(); i++) {
                all.add(of(products, uncertainties, i));
            }
            return all;
        }

        private static InSummary of(FindingProducts products, FindingUncertainties uncertainties, int i) {
            Finding finding = products.diagnosis().findings().get(i);
            return new InSummary(
                    products.onlyKey(i),
                    finding.kind().jsonName(),
                    finding.rows(),
                    finding.meters(),
                    JsonNumbers.instant(finding.fromS()),
                    JsonNumbers.instant(finding.toS()),
                    finding.confidence(),
                    finding.areaM2(),
                    finding.volumeL(),
                    finding.nitrogenKg(),
                    IntervalsJson.OfFinding.of(uncertainties.of(i)),
                    new Place(finding.latDeg(), finding.lonDeg()),
                    FindingFacts.filed(finding.evidence()),
                    FindingFacts.filed(finding.alternative()),
                    FindingFacts.filed(finding.check()),
                    products.diagnosis().alsoNoticed().get(i));
        }
    }
}
