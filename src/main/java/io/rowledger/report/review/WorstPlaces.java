package io.rowledger.report.review;

import io.rowledger.coverage.CoverageDefect;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.report.common.GeoLink;
import io.rowledger.report.common.JobView;
import io.rowledger.report.findings.FindingTitles;
import io.rowledger.report.map.RateMap;
import io.rowledger.report.review.PassReview.WorstPlace;
import io.rowledger.report.sections.CoverageSection;
import io.rowledger.report.sections.DefectLine;
import io.rowledger.report.sections.PlaceEnds;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The places that are shown near enough to see rows: where the findings that cost the most liquid show first, the largest skips
 * and the largest overlap; at most {@value #MAX_PLACES}.
 *
 * @param places what stands beside each picture
 * @param marks where each picture is, with its label
 * @param sizesM side of each picture's square, m
 */
record WorstPlaces(List<WorstPlace> places, List<RateMap.Mark> marks, List<Double> sizesM) {
    private static final int MAX_PLACES = 4;
    private static final int MAX_FINDINGS = 2;
    private static final int MAX_SKIPS = 2;
    /** Places nearer to another than this share one picture, m. */
    private static final double MIN_APART_M = 15;
    /** Smallest skip or overlap worth a picture, m²; common practice, no source. */
    private static final double MIN_AREA_M2 = 40;
    /** Widths of the bar that a picture shows. */
    private static final double BARS = 3;

    WorstPlaces {
        places = List.copyOf(places);
        marks = List.copyOf(marks);
        sizesM = List.copyOf(sizesM);
    }

    static WorstPlaces of(JobView job, List<Finding> findings, CoverageSection ground, Messages messages) {
        Builder builder = new Builder(job, messages);
        if (job.log().isAreas()) {
            // A map of areas has no rows and no path to show near by.
            return new WorstPlaces(List.of(), List.of(), List.of());
        }
        findings.stream()
                .filter(finding -> Double.isFinite(finding.latDeg()) && Double.isFinite(finding.lonDeg()))
                .sorted(Comparator.comparingDouble(finding -> -Math.abs(finding.volumeL())))
                .limit(MAX_FINDINGS)
                .forEach(builder::finding);
        builder.defects(job.coverage().skips(), ground.skips(), MAX_SKIPS, "review.worst.skip");
        builder.defects(job.coverage().overlaps(), ground.overlaps(), MAX_PLACES, "review.worst.overlap");
        return new WorstPlaces(builder.places, builder.marks, builder.sizesM);
    }

    private static final class Builder {
        private final JobView job;
        private final Messages messages;
        private final List<WorstPlace> places = new ArrayList<>();
        private final List<RateMap.Mark> marks = new ArrayList<>();
        private final List<Double> sizesM = new ArrayList<>();

        Builder(JobView job, Messages messages) {
            this.job = job;
            this.messages = messages;
        }

        void finding(Finding finding) {
            double[] eastNorth = new double[2];
            job.track().plane().forward(finding.latDeg(), finding.lonDeg(), eastNorth);
            String label = finding.rows().isEmpty()
                    ? messages.text("review.worst.bar")
                    : messages.text("review.worst.rows", finding.rows());
            add(
                    "",
                    label,
                    messages.text("review.worst.finding", FindingTitles.of(finding), Message.time(finding.fromS())),
                    GeoLink.of(finding.latDeg(), finding.lonDeg(), messages),
                    eastNorth[0],
                    eastNorth[1]);
        }

        void defects(List<CoverageDefect> defects, List<DefectLine> lines, int most, String key) {
            int taken = 0;
            for (int i = 0; i < Math.min(defects.size(), lines.size()) && taken < most; i++) {
                CoverageDefect defect = defects.get(i);
                if (defect.areaM2() < MIN_AREA_M2) {
                    return;
                }
                PlaceEnds ends = PlaceEnds.of(defect, job.track().passes());
                DefectLine line = lines.get(i);
                boolean added = add(
                        line.number(),
                        line.number(),
                        messages.text(key, line.area(), line.cause(), line.rows()),
                        line.from(),
                        ends.isLong() ? ends.startEastM() : defect.eastM(),
                        ends.isLong() ? ends.startNorthM() : defect.northM());
                taken += added ? 1 : 0;
            }
        }

        private boolean add(String number, String label, String text, GeoLink where, double eastM, double northM) {
            boolean shown = marks.stream()
                    .anyMatch(mark -> Math.hypot(mark.eastM() - eastM, mark.northM() - northM) < MIN_APART_M);
            if (shown || places.size() >= MAX_PLACES) {
                return false;
            }
            // Pictures show what the first product put on.
            String shownText = job.rig().products().size() == 1
                    ? text
                    : messages.text(
                            "review.worst.ofProduct",
                            text,
                            job.rig().products().get(0).name());
            places.add(new WorstPlace("zoom/" + (places.size() + 1), number, shownText, where));
            marks.add(new RateMap.Mark(label, eastM, northM));
            sizesM.add(BARS * job.rig().widthM());
            return true;
        }
    }
}
