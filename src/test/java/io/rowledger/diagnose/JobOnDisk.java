package io.rowledger.diagnose;

import io.rowledger.log.LogReader;
import io.rowledger.log.LogTable;
import io.rowledger.log.header.LogOptions;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.DeliveryBuilder;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.rig.RigReader;
import io.rowledger.strip.Strips;
import io.rowledger.track.Track;
import io.rowledger.track.TrackBuilder;
import io.rowledger.track.TrackOptions;
import java.nio.file.Path;
import java.util.List;

/** A job that a test has written to a folder: read and diagnosed, without the ground. */
public final class JobOnDisk {
    private JobOnDisk() {}

    public static Diagnosis of(Path folder) {
        return of(folder, "log.csv");
    }

    static Diagnosis of(Path folder, String logName) {
        return read(folder, logName).diagnose(Calibration.fitted());
    }

    /** A job as read, with what a diagnosis needs. */
    public record Job(LogTable log, Rig rig, Track track, Strips strips, Delivery delivery) {
        Diagnosis diagnose(Calibration calibration) {
            return Diagnoses.of(log, rig, track, strips, delivery, calibration, 1);
        }
    }

    public static Job read(Path folder, String logName) {
        Rig rig = RigReader.read(folder.resolve("rig.yaml")).rig();
        LogOptions options = new LogOptions(
                rig.columns(), rig.products().stream().map(Product::key).toList(), rig.rows());
        LogTable log = LogReader.read(List.of(folder.resolve(logName)), options).table();
        Track track = TrackBuilder.build(log, rig, TrackOptions.defaults());
        Strips strips = new Strips(track.poses(), rig.bands());
        return new Job(log, rig, track, strips, DeliveryBuilder.build(log, rig, strips));
    }
}
