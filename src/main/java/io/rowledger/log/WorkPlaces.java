package io.rowledger.log;

import io.rowledger.geo.LocalPlane;
import io.rowledger.geo.WorkParts;
import io.rowledger.log.header.LogQuantity;
import io.rowledger.log.read.FileLog;
import io.rowledger.log.read.RawLog;
import io.rowledger.text.Message;
import io.rowledger.units.QuantityKind;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Envelope;

/** Notes on the places in which liquid flowed: those far from each other may be several fields, which no report makes one job of. */
final class WorkPlaces {
    /** The record with which work began far from all work before it. */
    private record Start(Envelope at, FileLog file, int record) {}

    private WorkPlaces() {}

    /** Returns a note on work in places far from each other; none if all of it can be one field. */
    static List<Message> notes(List<FileLog> files) {
        WorkParts parts = new WorkParts();
        List<Start> starts = new ArrayList<>();
        LocalPlane plane = null;
        double[] at = new double[2];
        for (FileLog file : files) {
            RawLog log = file.log();
            plane = plane == null ? new LocalPlane(log.latDeg[0], log.lonDeg[0]) : plane;
            double[][] flows = flows(file);
            for (int i = 0; i < log.records; i++) {
                if (flowing(flows, i)) {
                    plane.forward(log.latDeg[i], log.lonDeg[i], at);
                    Envelope place = new Envelope(at[0], at[0], at[1], at[1]);
                    if (parts.add(place)) {
                        starts.add(new Start(place, file, i));
                    }
                }
            }
        }
        if (parts.apartM() == 0) {
            return List.of();
        }
        Envelope first = parts.nearest(starts.get(0).at);
        return starts.stream()
                .filter(start -> !parts.nearest(start.at).equals(first))
                .findFirst()
                .map(second -> note(first.distance(parts.nearest(second.at)), second))
                .stream()
                .toList();
    }

    private static Message note(double apartM, Start second) {
        return Message.of(
                "notes.log.apart",
                Message.value(QuantityKind.LENGTH, apartM),
                second.file.log().line[second.record],
                second.file.shortName());
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
