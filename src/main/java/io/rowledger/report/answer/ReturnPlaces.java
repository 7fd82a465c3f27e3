package io.rowledger.report.answer;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageDefect;
import io.rowledger.document.text.Messages;
import io.rowledger.finding.Finding;
import io.rowledger.geo.LocalPlane;
import io.rowledger.report.findings.FindingTitles;
import io.rowledger.report.sections.DefectPhrases;
import io.rowledger.report.sections.PlaceEnds;
import io.rowledger.text.Message;
import io.rowledger.track.Track;
import io.rowledger.units.QuantityKind;
import java.util.ArrayList;
import java.util.List;

/**
 * The places a person may want to go back to, in words for a small screen: skips and overlaps under the letter and number
 * they have in the pass review, then findings at their first sign.
 *
 * @param places in that order; a long skip is followed by its start and its end
 * @param routes all stops worth driving back to in the best order, then each long skip from start to end
 * @param cautions safety, for the person who goes there
 */
public record ReturnPlaces(List<ReturnPlace> places, List<Route> routes, String cautions) {
    /** Largest number of skips and of overlaps, largest first: receivers hold some hundreds of places; no source. */
    static final int MAX_OF_A_KIND = 200;

    /** Copies the list. */
    public ReturnPlaces {
        places = List.copyOf(places);
        routes = List.copyOf(routes);
    }

    /** A way from place to place. */
    public record Route(String name, List<ReturnPlace> places) {
        /** Copies the list. */
        public Route {
            places = List.copyOf(places);
        }
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
    public static ReturnPlaces of(Coverage coverage, Track track, List<Finding> findings, Messages messages) {
        List<ReturnPlace> out = new ArrayList<>();
        List<Route> routes = new ArrayList<>();
        int left = add(coverage.skips(), "S", "skip", track, messages, out, routes)
                + add(coverage.overlaps(), "O", "overlap", track, messages, out, routes);
        List<ReturnPlace> stops = stops(DriveBack.of(coverage, track), track.plane(), messages);
        if (stops.size() > 1) {
            routes.add(0, new Route(messages.text("words.return.allStops"), stops));
        }
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
        return new ReturnPlaces(out, routes, String.join(" ", messages.texts(cautions)));
    }

    private static int add(
            List<CoverageDefect> places,
            String letter,
            String kind,
            Track track,
            Messages messages,
            List<ReturnPlace> out,
            List<Route> routes) {
        LocalPlane plane = track.plane();
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
            PlaceEnds ends = PlaceEnds.of(place, track.passes());
            if (kind.equals("skip") && ends.isLong()) {
                List<ReturnPlace> both = ends("S" + place.number(), ends, plane, messages);
                out.addAll(both);
                routes.add(new Route(messages.text("words.return.route", "S" + place.number()), both));
            }
        }
        return places.size() - named;
    }

    /** Start and end of a long skip. */
    private static List<ReturnPlace> ends(String name, PlaceEnds ends, LocalPlane plane, Messages messages) {
        double[] start = new double[2];
        double[] end = new double[2];
        plane.inverse(ends.startEastM(), ends.startNorthM(), start);
        plane.inverse(ends.endEastM(), ends.endNorthM(), end);
        return List.of(
                new ReturnPlace(
                        start[0],
                        start[1],
                        messages.text("words.return.start", name),
                        messages.text(
                                "words.return.startText", name, Message.value(QuantityKind.LENGTH, ends.lengthM())),
                        "skip"),
                new ReturnPlace(
                        end[0],
                        end[1],
                        messages.text("words.return.end", name),
                        messages.text("words.return.endText", name),
                        "skip"));
    }

    private static List<ReturnPlace> stops(DriveBack back, LocalPlane plane, Messages messages) {
        List<ReturnPlace> stops = new ArrayList<>();
        double[] latLon = new double[2];
        for (DriveBack.Stop stop : back.stops()) {
            if (stop.ends().isLong()) {
                stops.addAll(ends(stop.name(), stop.ends(), plane, messages));
            } else {
                plane.inverse(stop.place().eastM(), stop.place().northM(), latLon);
                stops.add(new ReturnPlace(
                        latLon[0],
                        latLon[1],
                        stop.name(),
                        messages.text(DefectPhrases.cause(stop.place().cause())),
                        "skip"));
            }
        }
        return stops;
    }
}
