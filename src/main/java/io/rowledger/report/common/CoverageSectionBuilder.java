package io.rowledger.report.common;

import io.rowledger.analysis.Analysis;
import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageDefect;
import io.rowledger.coverage.CoverageOptions;
import io.rowledger.coverage.sections.ShutOffScore;
import io.rowledger.document.text.Messages;
import io.rowledger.document.text.Wording;
import io.rowledger.geo.LocalPlane;
import io.rowledger.uncertainty.Intervals;
import io.rowledger.units.QuantityKind;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/** Skips, doubles and shut-offs, listed so that a person can drive back to them. */
public final class CoverageSectionBuilder {
    private final Coverage c;
    private final Intervals intervals;
    private final LocalPlane plane;
    private final Messages messages;
    private final UnitFormat f;

    public CoverageSectionBuilder(Coverage coverage, Intervals intervals, LocalPlane plane, Messages messages) {
        this.c = coverage;
        this.intervals = intervals;
        this.plane = plane;
        this.messages = messages;
        this.f = messages.units();
    }

    public CoverageSection build() {
        String bare = c.boundary() == null
                ? "Skips are the bare patches enclosed by covered ground; without a field boundary, open edges can't be judged."
                : "Skips are the bare ground inside the boundary.";
        return new CoverageSection(
                c.skips().isEmpty() ? bare + none(skips(c, intervals, messages)) : bare,
                lines("S", c.skips()),
                rest(c.skips()),
                "Doubles are ground with two visits or more; each place counts once."
                        + (c.overlaps().isEmpty() ? none(overlap(c, intervals, messages)) : "")
                        + slivers(),
                lines("D", c.overlaps()),
                rest(c.overlaps()),
                shutOffs(c.shutOffs()));
    }

    public static CoveragePhrases skips(Coverage c, Intervals intervals, Messages messages) {
        return new CoveragePhrases(
                c.skipAreaM2(),
                c.slivers().skipM2(),
                c.skips().size(),
                c.overlapAreaM2(),
                intervals.skipAreaM2(),
                messages.units());
    }

    public static CoveragePhrases overlap(Coverage c, Intervals intervals, Messages messages) {
        return new CoveragePhrases(
                c.overlapAreaM2(),
                c.slivers().overlapM2(),
                c.overlaps().size(),
                c.skipAreaM2(),
                intervals.overlapAreaM2(),
                messages.units());
    }

    private static String none(CoveragePhrases words) {
        return words.none() ? " There is none." : " There is no place worth driving to.";
    }

    /** The lists don't add up to the totals, and a reader who adds them up must know why. */
    private String slivers() {
        double skippedM2 = c.slivers().skipM2();
        double overlapM2 = c.slivers().overlapM2();
        if (Math.max(skippedM2, overlapM2) < 0.5) {
            return "";
        }
        return " In no list but in the totals: " + patch(skippedM2) + " skipped and " + patch(overlapM2)
                + " doubled in seams thinner than " + CoveragePhrases.sliverWidth(f) + " or smaller than "
                + f.patch(CoverageOptions.MIN_PATCH_M2) + ".";
    }

    private String patch(double areaM2) {
        return areaM2 > 0 ? f.patch(areaM2) : "none";
    }

    private List<DefectLine> lines(String letter, List<CoverageDefect> places) {
        List<DefectLine> lines = new ArrayList<>();
        double[] latLon = new double[2];
        for (CoverageDefect place : places.subList(0, Math.min(Limits.PLACES_LISTED, places.size()))) {
            plane.inverse(place.eastM(), place.northM(), latLon);
            lines.add(new DefectLine(
                    letter + place.number(),
                    f.patch(place.areaM2()),
                    f.place(latLon[0], latLon[1]),
                    place.passes().isEmpty() ? "\u2013" : Wording.ranges(place.passes()),
                    place.rows().isEmpty() ? "\u2013" : Wording.ranges(place.rows()),
                    Wording.cause(place.cause()),
                    place.eastM(),
                    place.northM()));
        }
        return lines;
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
        return "And " + Wording.counted(n, "smaller place", "smaller places") + ", together " + f.patch(areaM2) + ".";
    }

    private List<ShutOffLine> shutOffs(ShutOffScore s) {
        if (s.offOverCoveredM2() <= 0 && s.offOverUncoveredM2() <= 0 && s.onOverCoveredM2() <= 0) {
            return List.of();
        }
        double largestM2 = Math.max(s.offOverCoveredM2(), Math.max(s.offOverUncoveredM2(), s.onOverCoveredM2()));
        return List.of(
                new ShutOffLine(
                        "Off over ground already done: right",
                        ground(s.offOverCoveredM2(), largestM2),
                        liquid(s.savedL(), "saved")),
                new ShutOffLine(
                        "Off over ground that stayed bare: a skip",
                        ground(s.offOverUncoveredM2(), largestM2),
                        liquid(s.skippedL(), "lacking")),
                new ShutOffLine(
                        "On over ground already done: a double",
                        ground(s.onOverCoveredM2(), largestM2),
                        liquid(s.overlapL(), "too much")));
    }

    private String ground(double areaM2, double largestM2) {
        return areaM2 > 0 ? f.areaBeside(areaM2, largestM2) : "none";
    }

    private String liquid(double volumeL, String what) {
        return Double.isFinite(volumeL) ? f.text(QuantityKind.VOLUME, volumeL) + " " + what : UnitFormat.UNKNOWN;
    }

    // BRIDGE
    public static CoveragePhrases skips(Analysis a, UnitFormat f) {
        return skips(a.coverage(), a.intervals(), Messages.english(f));
    }

    public static CoveragePhrases overlap(Analysis a, UnitFormat f) {
        return overlap(a.coverage(), a.intervals(), Messages.english(f));
    }
    // END BRIDGE
}
