package io.rowledger.report.answer;

import io.rowledger.coverage.Coverage;
import io.rowledger.coverage.CoverageDefect;
import io.rowledger.coverage.CoverageDefect.Cause;
import io.rowledger.report.sections.PlaceEnds;
import io.rowledger.track.Track;
import java.util.List;
import java.util.Set;

/**
 * The skips that are worth driving back to, in the order that takes the least driving, from where the first pass began: there
 * the bar came into the field.
 *
 * @param stops in that order; empty if there are none
 */
public record DriveBack(List<Stop> stops) {
    /** Smallest skip worth a stop, m²: a twentieth of an acre; common practice, no source. */
    static final double MIN_STOP_M2 = 200;

    /** Skips that driving back can cover; others are margins, or ground that another log may cover. */
    private static final Set<Cause> TO_COVER =
            Set.of(Cause.GAP_BETWEEN_PASSES, Cause.ROW_NOT_DELIVERING, Cause.LATE_START, Cause.EARLY_STOP);

    /** Copies the list. */
    public DriveBack {
        stops = List.copyOf(stops);
    }

    /**
     * One stop.
     *
     * @param place the skip
     * @param ends its ends as they are best driven
     */
    public record Stop(CoverageDefect place, PlaceEnds ends) implements StopOrder.Stop<Stop> {
        /** The name that the skip has in every list and on every map, such as {@code S1}. */
        public String name() {
            return "S" + place.number();
        }

        @Override
        public Stop reversed() {
            return new Stop(place, ends.reversed());
        }
    }

    /** The stops of a job. */
    public static DriveBack of(Coverage coverage, Track track) {
        List<Stop> stops = coverage.skips().stream()
                .filter(skip -> TO_COVER.contains(skip.cause()) && skip.areaM2() >= MIN_STOP_M2)
                .map(skip -> new Stop(skip, PlaceEnds.of(skip, track.passes())))
                .toList();
        if (stops.isEmpty()) {
            return new DriveBack(stops);
        }
        int first = track.passes().get(0).firstStep();
        return new DriveBack(StopOrder.of(
                stops, track.poses().dropEastM(first), track.poses().dropNorthM(first)));
    }

    /** Area of all stops, m². */
    public double areaM2() {
        return stops.stream().mapToDouble(stop -> stop.place().areaM2()).sum();
    }
}
