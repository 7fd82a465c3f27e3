package io.rowledger.diagnose.setup;

import io.rowledger.diagnose.Diagnosis;
import io.rowledger.log.LogReader;
import io.rowledger.log.LogTable;
import io.rowledger.log.header.LogOptions;
import io.rowledger.rig.Product;
import io.rowledger.rig.Rig;
import io.rowledger.rig.RigReader;
import io.rowledger.track.Track;
import io.rowledger.track.TrackBuilder;
import io.rowledger.track.TrackOptions;
import java.nio.file.Path;
import java.util.List;

/** The way from files to a setup check: for tests. */
final class Checking {
    /** Rows not looked at. */
    static final Diagnosis NOTHING = new Diagnosis(List.of(), List.of(), List.of(), List.of(), List.of(), List.of());

    private Checking() {}

    static LogTable log(Path file, Rig rig) {
        LogOptions options = new LogOptions(
                rig.columns(), rig.products().stream().map(Product::key).toList(), rig.rows());
        return LogReader.read(List.of(file), options).table();
    }

    static SetupCheck of(Path log, Path rigFile) {
        Rig rig = RigReader.read(rigFile).rig();
        LogTable table = log(log, rig);
        return of(table, rig);
    }

    /** The check of a log that is read already; rows are not evaluated. */
    static SetupCheck of(LogTable table, Rig rig) {
        Track track = TrackBuilder.build(table, rig, TrackOptions.defaults());
        return SetupChecks.of(table, rig, track, NOTHING);
    }
}
