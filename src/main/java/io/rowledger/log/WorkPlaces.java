package io.rowledger.log;

import io.rowledger.geo.LocalPlane;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Envelope;

/** The places in which liquid flowed: those far from each other may be several fields, which no report makes one job of. */
final class WorkPlaces {
    /** Largest distance between two parts of one field, m: as a report has it. */
    private static final double MAX_APART_M = 400;

    /**
     * A place.
     *
     * @param box on the plane, m
     * @param order number of the record, over all files, in which work began there
     */
    private record Place(Envelope box, FileLog file, int record, int order) {}

    private WorkPlaces() {}

    /** Returns a note on work in places far from each other; none if all of it can be one field. */
    static List<Message> notes(List<FileLog> files) {
        List<Place> places = new ArrayList<>();
        LocalPlane plane = null;
        int before = 0;
        for (FileLog file : files) {
            RawLog log = file.log();
            plane = plane == null ? new LocalPlane(log.latDeg[0], log.lonDeg[0]) : plane;
            double[] at = new double[2];
            double[][] flows = flows(file);
            for (int i = 0; i < log.records; i++) {
                if (flowing(flows, i)) {
                    plane.forward(log.latDeg[i], log.lonDeg[i], at);
                    join(places, new Place(new Envelope(at[0], at[0], at[1], at[1]), file, i, before + i));
                }
            }
            before += log.records;
        }
        if (places.size() < 2) {
            return List.of();
        }
        places.sort(Comparator.comparingInt(Place::order));
        Place second = places.get(1);
        double apartM = places.get(0).box.distance(second.box);
        return List.of(Message.of(
                "notes.log.apart",
                Message.value(QuantityKind.LENGTH, apartM),
                second.file.log().line[second.record],
                second.file.shortName()));
    }

    /** Adds a record to the place that it lies near; places that it links become one. */
    private static void join(List<Place> places, Place record) {
        Place last = places.isEmpty() ? null : places.get(places.size() - 1);
        if (last != null && last.box.contains(record.box)) {
            return;
        }
        Place joined = record;
        for (int i = 0; i < places.size(); ) {
            Place place = places.get(i);
            if (place.box.distance(joined.box) <= MAX_APART_M) {
                Envelope box = new Envelope(place.box);
                box.expandToInclude(joined.box);
                Place begun = place.order < joined.order ? place : joined;
                joined = new Place(box, begun.file, begun.record, begun.order);
                places.remove(i);
                // A place that grew may now be near one that was skipped.
                i = 0;
            } else {
                i++;
            }
        }
        places.add(joined);
    }

    private static double[][] flows(FileLog file) {
        List<double[]> flows = new ArrayList<>();
        for (int k = 0; k < file.reader().numberColumns().size(); k++) {
            if (file.reader().numberColumns().get(k).role().quantity() == LogQuantity.FLOW) {
                flows.add(file.log().numbers[k]);
            }
        }
        return flows.toArray(double[][]::new);
    }

    private static boolean flowing(double[][] flows, int i) {
        for (double[] flow : flows) {
            if (flow[i] > 0) {
                return true;
            }
        }
        return false;
    }
}
