package io.rowledger.workbench;

import io.rowledger.geo.LocalPlane;
import io.rowledger.geo.WorkParts;
import io.rowledger.log.LogSurvey;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/**
 * Places that the work of a field's logs lies in, more than 400 m apart, so that they may be several fields. Where the flows are
 * known, only ground on which liquid flowed counts: the drive from one field to the next joins nothing.
 */
final class WorkPlaces {
    private final WorkParts places = new WorkParts();
    private final List<Coordinate> begun = new ArrayList<>();
    private @Nullable LocalPlane plane;

    /** Adds a log's work; returns its path on the plane of the first log, east and north, m, one pair after the other. */
    List<Double> add(LogSurvey survey) {
        double[] latDeg = survey.latDeg();
        double[] lonDeg = survey.lonDeg();
        if (plane == null && latDeg.length > 0) {
            plane = new LocalPlane(latDeg[0], lonDeg[0]);
        }
        List<Double> path = new ArrayList<>();
        boolean[] works = works(survey);
        Envelope part = new Envelope();
        Coordinate before = new Coordinate(Double.NaN, Double.NaN);
        for (int i = 0; i < latDeg.length; i++) {
            Coordinate at = at(latDeg[i], lonDeg[i]);
            path.add(Math.round(at.x * 10) / 10.0);
            path.add(Math.round(at.y * 10) / 10.0);
            if (!works[i]) {
                continue;
            }
            if (at.distance(before) > WorkParts.MAX_APART_M) {
                join(part);
                part = new Envelope();
            }
            if (part.isNull()) {
                begun.add(at);
            }
            part.expandToInclude(at);
            before = at;
        }
        join(part);
        return path;
    }

    /** True for samples that are work: those with a flow, or all of them where no flow is known. */
    private static boolean[] works(LogSurvey survey) {
        boolean any = false;
        for (boolean each : survey.flowing()) {
            any |= each;
        }
        boolean[] works = new boolean[survey.latDeg().length];
        for (int i = 0; i < works.length; i++) {
            works[i] = !any || survey.flowing()[i];
        }
        return works;
    }

    private Coordinate at(double latDeg, double lonDeg) {
        if (plane == null) {
            throw new IllegalStateException("no log has a position");
        }
        double[] at = new double[2];
        plane.forward(latDeg, lonDeg, at);
        return new Coordinate(at[0], at[1]);
    }

    private void join(Envelope part) {
        if (!part.isNull()) {
            places.add(part);
        }
    }

    /** The number of places. */
    int count() {
        return places.all().size();
    }

    /** The distance between two places, m; 0 if all can be one field. */
    long apartM() {
        return places.apartM();
    }

    /** The number of the place that a position lies in or nearest to, from 0 in the order in which work began there. */
    int of(double latDeg, double lonDeg) {
        Envelope nearest = places.nearest(new Envelope(at(latDeg, lonDeg)));
        List<Envelope> inOrder = new ArrayList<>();
        for (Coordinate each : begun) {
            Envelope place = places.nearest(new Envelope(each));
            if (!inOrder.contains(place)) {
                inOrder.add(place);
            }
        }
        return inOrder.indexOf(nearest);
    }

    /** The numbers of the places that a log's work lies in. */
    Set<Integer> of(LogSurvey survey) {
        boolean[] works = works(survey);
        Set<Integer> of = new TreeSet<>();
        for (int i = 0; i < works.length; i++) {
            if (works[i]) {
                of.add(of(survey.latDeg()[i], survey.lonDeg()[i]));
            }
        }
        return of;
    }
}
