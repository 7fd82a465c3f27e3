package io.rowledger.report.sections;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageDefect;
import io.rowledger.coverage.CoverageDefect.Cause;
import io.rowledger.coverage.CoverageOptions;
import io.rowledger.coverage.sections.ShutOffScore;
import io.rowledger.document.text.Messages;
import io.rowledger.document.text.Wording;
import io.rowledger.geo.LocalPlane;
import io.rowledger.report.common.GeoLink;
import io.rowledger.report.common.Limits;
import io.rowledger.text.Message;
import io.rowledger.track.Track;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/** Builds the {@link CoverageSection}: skips, overlaps and rows shut off alone. */
public final class CoverageSectionBuilder {
    /** Slivers below this are not worth a sentence, m². */
    private static final double MIN_SLIVERS_M2 = 0.5;

    private final Coverage c;
    private final Intervals intervals;
    private final Track track;
    private final LocalPlane plane;
    private final Messages messages;
    private final UnitFormat f;

    public CoverageSectionBuilder(Coverage coverage, Intervals intervals, Track track, Messages messages) {
        this.track = track;
        this.c = coverage;
        this.intervals = intervals;
        this.plane = track.plane();
        this.messages = messages;
        this.f = messages.units();
    }

    /** The section. */
    public CoverageSection build() {
        boolean hasBoundary = c.boundary() != null;
        List<Message> skips = new ArrayList<>();
        skips.add(Message.of(hasBoundary ? "words.defect.ground" : "words.defect.groundNoBoundary"));
        if (c.skips().isEmpty()) {
            skips.add(none(skips(c, intervals, messages)));
        }
        addDoubtful(Cause.METER_READS_ZERO, "words.defect.doubtful", skips);
        addDoubtful(Cause.FLOW_NOT_KNOWN, "words.defect.flowNotKnown", skips);
        List<Message> overlaps = new ArrayList<>();
        overlaps.add(Message.of("words.defect.overlap"));
        if (c.overlaps().isEmpty()) {
            overlaps.add(none(overlap(c, intervals, messages)));
        }
        addSlivers(overlaps);
        return new CoverageSection(
                String.join(" ", messages.texts(skips)),
                lines("S", c.skips()),
                rest(c.skips()),
                String.join(" ", messages.texts(overlaps)),
                lines("O", c.overlaps()),
                rest(c.overlaps()),
                shutOffs(c.shutOffs()));
    }

    private void addDoubtful(Cause cause, String key, List<Message> sentences) {
        List<CoverageDefect> doubtful =
                c.doubtfulSkips().stream().filter(skip -> skip.cause() == cause).toList();
        if (!doubtful.isEmpty()) {
            double areaM2 =
                    doubtful.stream().mapToDouble(CoverageDefect::areaM2).sum();
            sentences.add(Message.of(key, doubtful.size(), Message.area(areaM2)));
        }
    }

    /** Skipped ground in words. */
    public static CoveragePhrases skips(Coverage c, Intervals intervals, Messages messages) {
        return new CoveragePhrases(
                c.skipAreaM2(),
                c.doubtfulSkipAreaM2(),
                c.slivers().skipM2(),
                c.skips().size(),
                c.overlapAreaM2(),
                intervals.skipAreaM2(),
                messages);
    }

    /** Overlap in words. */
    public static CoveragePhrases overlap(Coverage c, Intervals intervals, Messages messages) {
        return new CoveragePhrases(
                c.overlapAreaM2(),
                0,
                c.slivers().overlapM2(),
                c.overlaps().size(),
                c.skipAreaM2(),
                intervals.overlapAreaM2(),
                messages);
    }

    private static Message none(CoveragePhrases phrases) {
        return Message.of(phrases.none() ? "words.defect.noneAtAll" : "words.defect.nonePlace");
    }

    /** The lists don't add up to the totals: slivers make up the difference. */
    private void addSlivers(List<Message> sentences) {
        double skippedM2 = c.slivers().skipM2();
        double overlapM2 = c.slivers().overlapM2();
        if (Math.max(skippedM2, overlapM2) >= MIN_SLIVERS_M2) {
            sentences.add(Message.of(
                    "words.defect.slivers",
                    patch(skippedM2),
                    patch(overlapM2),
                    CoveragePhrases.sliverWidth(),
                    Message.area(CoverageOptions.MIN_PATCH_M2)));
        }
    }

    private String patch(double areaM2) {
        return areaM2 > 0 ? f.anyArea(areaM2) : messages.text("words.none");
    }

    private List<DefectLine> lines(String letter, List<CoverageDefect> places) {
        List<DefectLine> lines = new ArrayList<>();
        for (CoverageDefect place : places.subList(0, Math.min(Limits.PLACES_LISTED, places.size()))) {
            PlaceEnds ends = PlaceEnds.of(place, track.passes());
            boolean stretch = ends.isLong();
            lines.add(new DefectLine(
                    letter + place.number(),
                    f.anyArea(place.areaM2()),
                    stretch ? link(ends.startEastM(), ends.startNorthM()) : link(place.eastM(), place.northM()),
                    stretch ? link(ends.endEastM(), ends.endNorthM()) : GeoLink.NONE,
                    place.passes().isEmpty() ? "\u2013" : Wording.ranges(place.passes()),
                    RowPhrases.of(place.rows(), messages),
                    messages.text(DefectPhrases.cause(place.cause())),
                    place.eastM(),
                    place.northM()));
        }
        return lines;
    }

    private GeoLink link(double eastM, double northM) {
        double[] latLon = new double[2];
        plane.inverse(eastM, northM, latLon);
        return GeoLink.of(latLon[0], latLon[1], messages);
    }

    private String rest(List<CoverageDefect> places) {
        if (places.size() <= Limits.PLACES_LISTED) {
            return "";
        }
        double areaM2 = 0;
        for (CoverageDefect place : places.subList(Limits.PLACES_LISTED, places.size())) {
            areaM2 += place.areaM2();
        }
        int n = places.size() - Limits.PLACES_LISTED;
        return messages.text("words.defect.more", n, Message.area(areaM2));
    }

    private List<ShutOffLine> shutOffs(ShutOffScore s) {
        if (!(s.offOverCoveredM2() > 0 || s.offOverUncoveredM2() > 0 || s.onOverCoveredM2() > 0)) {
            return List.of();
        }
        double largestM2 = Math.max(s.offOverCoveredM2(), Math.max(s.offOverUncoveredM2(), s.onOverCoveredM2()));
        return List.of(
                new ShutOffLine(
                        messages.text("words.shutOff.right"),
                        ground(s.offOverCoveredM2(), largestM2),
                        liquid(s.savedL(), "words.shutOff.saved")),
                new ShutOffLine(
                        messages.text("words.shutOff.skip"),
                        ground(s.offOverUncoveredM2(), largestM2),
                        liquid(s.skippedL(), "words.shutOff.lacking")),
                new ShutOffLine(
                        messages.text("words.shutOff.overlap"),
                        ground(s.onOverCoveredM2(), largestM2),
                        liquid(s.overlapL(), "words.shutOff.tooMuch")));
    }

    private String ground(double areaM2, double largestM2) {
        return areaM2 > 0 ? f.areaBeside(areaM2, largestM2) : messages.text("words.none");
    }

    private String liquid(double volumeL, String key) {
        return Double.isFinite(volumeL)
                ? messages.text(key, Message.value(QuantityKind.VOLUME, volumeL))
                : messages.units().unknown();
    }
}
