package io.rowledger.analysis;

import io.rowledger.coverage.Coverage;
import io.rowledger.field.Boundary;
import io.rowledger.field.BoundaryReader;
import io.rowledger.field.KeepOutReader;
import io.rowledger.field.KeepOuts;
import io.rowledger.field.Prescription;
import io.rowledger.field.PrescriptionReader;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.geo.LocalPlane;
import io.rowledger.rig.Rig;
import io.rowledger.text.Message;
import io.rowledger.track.Poses;
import io.rowledger.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;

/**
 * The maps handed in, on the log's own plane; each may be missing.
 *
 * @param boundary outline of the field
 * @param prescription zones with a target rate each
 * @param keepOuts places to keep away from
 */
record FieldMaps(Optional<Boundary> boundary, Optional<Prescription> prescription, Optional<KeepOuts> keepOuts) {
    /** Share of the covered ground from which on all of it counts as outside (1). */
    private static final double WHOLLY_OUTSIDE = 0.999;

    /**
     * Reads the maps of a job.
     *
     * @throws UnusableInputException where one can't be used, or lies far from the work
     */
    static FieldMaps read(JobFiles files, Rig rig, Track track) {
        return read(files, rig, track.plane(), driven(track.poses()));
    }

    /**
     * Reads the maps of a job.
     *
     * @param driven box around the work in the job's plane
     * @throws UnusableInputException where one can't be used, or lies far from the work
     */
    static FieldMaps read(JobFiles files, Rig rig, LocalPlane plane, Envelope driven) {
        return new FieldMaps(
                Optional.ofNullable(files.boundary()).map(file -> BoundaryReader.read(file, plane, driven)),
                Optional.ofNullable(files.prescription())
                        .map(file -> PrescriptionReader.read(
                                file, plane, driven, rig.products(), rig.hints().prescription())),
                Optional.ofNullable(files.keepOut())
                        .map(file -> KeepOutReader.read(file, plane, driven, files.setbackM())));
    }

    /** The ground that the drop line passed over, to tell how far off a map of another field is. */
    private static Envelope driven(Poses poses) {
        Envelope driven = new Envelope();
        for (int i = 0; i < poses.poses(); i++) {
            driven.expandToInclude(poses.dropEastM(i), poses.dropNorthM(i));
        }
        return driven;
    }

    /** What was assumed about the files. */
    List<Message> notes() {
        List<Message> notes = new ArrayList<>();
        boundary.ifPresent(map -> notes.addAll(map.notes()));
        prescription.ifPresent(map -> notes.addAll(map.notes()));
        keepOuts.ifPresent(map -> notes.addAll(map.notes()));
        return notes;
    }

    /**
     * Refuses a boundary of another field, by which all ground would be a skip.
     *
     * @throws UnusableInputException where all covered ground lies outside the boundary
     */
    void requireInsideBoundary(Coverage coverage) {
        if (boundary.isPresent() && isAll(coverage.outsideBoundaryM2(), coverage)) {
            throw UnusableInputException.found("a boundary around none of the ground that the log covers")
                    .inFile(boundary.get().file())
                    .expected("the outline of the field that was driven")
                    .hint("give the boundary of this field, or leave it out");
        }
    }

    /**
     * Refuses a prescription of another field.
     *
     * @param outsideM2 covered ground outside all zones, m²
     * @throws UnusableInputException where that is all of it
     */
    void requireInsideZones(double outsideM2, Coverage coverage) {
        if (prescription.isPresent() && isAll(outsideM2, coverage)) {
            throw UnusableInputException.found("a prescription with no zone on the ground that the log covers")
                    .inFile(prescription.get().file())
                    .expected("the zones of the field that was driven")
                    .hint("give the prescription of this field, or leave it out");
        }
    }

    private static boolean isAll(double outsideM2, Coverage coverage) {
        double coveredM2 = coverage.coveredAreaM2();
        return coveredM2 > 0 && outsideM2 >= WHOLLY_OUTSIDE * coveredM2;
    }
}
