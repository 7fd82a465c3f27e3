package io.rowledger.report.common;

import io.rowledger.analysis.Analysis;
import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageDefect;
import io.rowledger.document.text.Messages;
import io.rowledger.document.text.Wording;
import io.rowledger.finding.Finding;
import io.rowledger.geo.LocalPlane;
import io.rowledger.units.UnitFormat;
import java.util.ArrayList;
import java.util.List;

/**
 * The places a person may want to go back to, in words for a small screen: skips and doubles under the letter and number
 * they have in the pass review, then findings where the machine first showed them.
 *
 * @param places in that order
 * @param cautions a sentence or two for whoever goes there
 */
public record ReturnPlaces(List<ReturnPlace> places, String cautions) {
    /** Of skips and of doubles, so many are named, largest first: receivers hold some hundreds of places, no source. */
    static final int MAX_OF_A_KIND = 200;

    /** Copies the list. */
    public ReturnPlaces {
        places = List.copyOf(places);
    }

    /**
     * One place.
     *
     * @param latDeg WGS 84
     * @param lonDeg WGS 84
     * @param name short, such as {@code S1}
     * @param text what it is and what to look at
     * @param kind {@code skip}, {@code double} or {@code finding}
     */
    public record ReturnPlace(double latDeg, double lonDeg, String name, String text, String kind) {}

    /** The places of a job, areas in the reader's units. */
    public static ReturnPlaces of(Coverage coverage, LocalPlane plane, List<Finding> findings, Messages messages) {
        UnitFormat f = messages.units();
        List<ReturnPlace> out = new ArrayList<>();
        int left = add(coverage.skips(), "S", "skip", plane, f, out)
                + add(coverage.overlaps(), "D", "double", plane, f, out);
        int number = 0;
        for (Finding finding : findings) {
            number++;
            if (Double.isFinite(finding.latDeg()) && Double.isFinite(finding.lonDeg())) {
                out.add(new ReturnPlace(
                        finding.latDeg(),
                        finding.lonDeg(),
                        "Finding " + number,
                        FaultWords.clause(finding) + ". First sign here. To check: "
                                + Messages.english(f).text(finding.check()),
                        "finding"));
            }
        }
        String rest = left == 0
                ? ""
                : " " + Wording.counted(left, "smaller place is", "smaller places are")
                        + " left out here; the layers have all of them.";
        return new ReturnPlaces(
                out,
                "S: skipped, D: doubled, numbered as in the pass review. Bleed the pressure and wear protection before you"
                        + " open a line or a knife; product label, safety data sheet and local rules come first."
                        + rest);
    }

    private static int add(
            List<CoverageDefect> places,
            String letter,
            String kind,
            LocalPlane plane,
            UnitFormat f,
            List<ReturnPlace> out) {
        double[] latLon = new double[2];
        int named = Math.min(MAX_OF_A_KIND, places.size());
        for (CoverageDefect place : places.subList(0, named)) {
            plane.inverse(place.eastM(), place.northM(), latLon);
            String passes = named(" Pass ", " Passes ", place.passes());
            String rows = named(" Row ", " Rows ", place.rows());
            String text = Wording.label(kind) + " of " + f.patch(place.areaM2()) + ": " + Wording.cause(place.cause())
                    + "." + passes + rows + " Look at " + lookAt(place.cause()) + ".";
            out.add(new ReturnPlace(latLon[0], latLon[1], letter + place.number(), text, kind));
        }
        return places.size() - named;
    }

    private static String named(String one, String many, List<Integer> numbers) {
        return numbers.isEmpty() ? "" : (numbers.size() == 1 ? one : many) + Wording.ranges(numbers) + ".";
    }

    /** What would show the cause, or that there is none; common practice, no source. */
    private static String lookAt(CoverageDefect.Cause cause) {
        return switch (cause) {
            case GAP_BETWEEN_PASSES -> "the guidance line and the side offset in the rig file";
            case ROW_NOT_DELIVERING -> "this row's knife, hose and meter, and the corn along it";
            case LATE_START, EARLY_STOP -> "where the bar was lowered and lifted, and the drop line in the rig file";
            case EDGE_OF_FIELD -> "whether this margin was to be left";
            case OUTSIDE_THE_LOG -> "whether another log covers it";
            case PASSES_OVERLAP -> "the guidance line and the side offset in the rig file";
            case HEADLAND_OVERLAP -> "where rows shut off at done ground";
            case PASS_CROSSED_ITSELF, INSIDE_THE_PIVOT -> "how this turn is driven";
        };
    }

    // BRIDGE
    public static ReturnPlaces of(Analysis a, UnitFormat f) {
        return of(a.coverage(), a.track().plane(), a.findings(), Messages.english(f));
    }
    // END BRIDGE
}
