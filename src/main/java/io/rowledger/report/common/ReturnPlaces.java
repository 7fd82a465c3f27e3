package io.rowledger.report.common;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageDefect;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.geo.LocalPlane;
import io.rowledger.text.Message;
import java.util.ArrayList;
import java.util.List;

/**
 * The places a person may want to go back to, in words for a small screen: skips and overlaps under the letter and number
 * they have in the pass review, then findings at their first sign.
 *
 * @param places in that order
 * @param cautions safety, for the person who goes there
 */
public record ReturnPlaces(List<ReturnPlace> places, String cautions) {
    /** Largest number of skips and of overlaps, largest first: receivers hold some hundreds of places; no source. */
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
     * @param kind {@code skip}, {@code overlap} or {@code finding}
     */
    public record ReturnPlace(double latDeg, double lonDeg, String name, String text, String kind) {}

    /** The places of a job, areas in the reader's units. */
    public static ReturnPlaces of(Coverage coverage, LocalPlane plane, List<Finding> findings, Messages messages) {
        List<ReturnPlace> out = new ArrayList<>();
        int left = add(coverage.skips(), "S", "skip", plane, messages, out)
                + add(coverage.overlaps(), "O", "overlap", plane, messages, out);
        int number = 0;
        for (Finding finding : findings) {
            number++;
            if (Double.isFinite(finding.latDeg()) && Double.isFinite(finding.lonDeg())) {
                out.add(new ReturnPlace(
                        finding.latDeg(),
                        finding.lonDeg(),
                        messages.text("words.return.finding", number),
                        messages.text("words.return.findingText", FindingTitles.of(finding), finding.check()),
                        "finding"));
            }
        }
        List<Message> cautions = new ArrayList<>(List.of(Message.of("cautions.return")));
        if (left > 0) {
            cautions.add(Message.of("words.return.more", left));
        }
        return new ReturnPlaces(out, String.join(" ", messages.texts(cautions)));
    }

    private static int add(
            List<CoverageDefect> places,
            String letter,
            String kind,
            LocalPlane plane,
            Messages messages,
            List<ReturnPlace> out) {
        double[] latLon = new double[2];
        int named = Math.min(MAX_OF_A_KIND, places.size());
        String key = kind.equals("skip") ? "words.return.skip" : "words.return.overlap";
        for (CoverageDefect place : places.subList(0, named)) {
            plane.inverse(place.eastM(), place.northM(), latLon);
            String text = messages.text(
                    key,
                    Message.area(place.areaM2()),
                    DefectPhrases.cause(place.cause()),
                    place.passes().isEmpty() ? "" : Message.of("words.return.passes", place.passes()),
                    place.rows().isEmpty() ? "" : Message.of("words.return.rows", place.rows()),
                    DefectPhrases.lookAt(place.cause()));
            out.add(new ReturnPlace(latLon[0], latLon[1], letter + place.number(), text, kind));
        }
        return places.size() - named;
    }
}
