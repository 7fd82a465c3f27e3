package io.rowledger.bench;

import io.rowledger.field.Boundary;
import io.rowledger.field.BoundaryReader;
import io.rowledger.log.LogReader;
import io.rowledger.log.LogTable;
import io.rowledger.log.header.LogOptions;
import io.rowledger.rate.Delivery;
import io.rowledger.rate.DeliveryBuilder;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.rig.RigReader;
import io.rowledger.sim.BenchmarkLogs;
import io.rowledger.strip.Strips;
import io.rowledger.track.Track;
import io.rowledger.track.TrackBuilder;
import io.rowledger.track.TrackOptions;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The job every kernel is measured on: 144,000 records of 24 outlets, written once and read by every fork. */
public final class BenchJob {
    private static final Path FOLDER = Path.of("target", "bench", "job");

    public final Rig rig;
    public final LogTable table;
    public final Track track;
    public final Strips strips;
    public final Delivery delivery;
    public final Boundary boundary;

    private BenchJob() {
        Path log = log();
        rig = RigReader.read(FOLDER.resolve("rig.yaml")).rig();
        table = LogReader.read(List.of(log), options(rig)).table();
        track = TrackBuilder.build(table, rig, TrackOptions.defaults());
        strips = new Strips(track.poses(), rig.bands());
        delivery = DeliveryBuilder.build(table, rig, strips);
        boundary = BoundaryReader.read(FOLDER.resolve("boundary.geojson"), track.plane());
    }

    /** Reads the job and takes it as far as the delivery. */
    public static BenchJob read() {
        return new BenchJob();
    }

    /** The log, written first where there is none yet. */
    public static Path log() {
        Path log = FOLDER.resolve("log.csv");
        Path whole = FOLDER.resolve("whole");
        try {
            // The mark is made last: a log without it was not written to its end.
            if (!Files.exists(whole)) {
                BenchmarkLogs.write(FOLDER, 1, BenchmarkLogs.Kind.CLEAN);
                Files.createFile(whole);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return log;
    }

    /** How the log is to be read. */
    public static LogOptions options() {
        log();
        return options(RigReader.read(FOLDER.resolve("rig.yaml")).rig());
    }

    private static LogOptions options(Rig rig) {
        return new LogOptions(
                rig.columns(), rig.products().stream().map(Product::key).toList(), rig.rows());
    }

    /** Steps times rows. */
    public long stripCount() {
        return (long) strips.poses().steps() * strips.rows();
    }
}
