package io.rowledger.sim;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Big logs to measure speed with: 24 outlets, 10 Hz, 144,000 records on a quarter section (160 acres, 64.7 ha), or so
 * many times that on a field so many times as wide.
 *
 * <p>Streams to the file, so that memory does not grow with the log; the ground raster is left out.
 */
public final class BenchmarkLogs {
    /** Records of the single-size log. */
    public static final int RECORDS = 144_000;

    private static final int ROWS = 24;
    private static final double LENGTH_M = 804.67;
    private static final int PASSES = 44;
    private static final double WORK_MPS = 2.6155;

    private BenchmarkLogs() {}

    /** What makes the program's work harder without making the log longer. */
    public enum Kind {
        /** RTK and every row running. */
        CLEAN,
        /** Differential fixes, 5 cm white noise and 10 cm drift: outlines keep many vertices. */
        ROUGH,
        /** Eight meters that drop out and come back all the time: strips fall into many runs. */
        FLICKER
    }

    /**
     * Writes log.csv, rig.yaml and boundary.geojson: folder, how many times the usual size (1 if left out), kind (clean if
     * left out).
     */
    public static void main(String[] args) {
        write(
                Path.of(args[0]),
                args.length > 1 ? Integer.parseInt(args[1]) : 1,
                args.length > 2 ? Kind.valueOf(args[2].toUpperCase(Locale.ROOT)) : Kind.CLEAN);
    }

    /** Writes log.csv, rig.yaml and boundary.geojson into a folder; returns the number of records. */
    public static int write(Path folder, int times, Kind kind) {
        SimRig rig = SimRig.drawn(ROWS);
        FieldPlan.Layout layout =
                PassPlan.rectangle(LENGTH_M, PASSES * times, 0, rig.widthM()).speeds(WORK_MPS, 2, 2);
        Scenario scenario = new Scenario(20_260_602, rig, layout)
                .gnss(GnssModel.rtk(10))
                .metering(MeteringModel.perRow().withShutOff(false))
                .withoutGround();
        if (kind == Kind.ROUGH) {
            scenario.gnss(GnssModel.differential(10).withNoise(0.05, 0.1, 240));
        }
        if (kind == Kind.FLICKER) {
            // Every third row, so that most dropouts cut the neighbors' common strip.
            for (int row = 1; row <= ROWS; row += 3) {
                scenario.fault(SimFault.of(SimFault.Kind.METER_DROPOUT, row, 0, 0.2));
            }
        }
        return stream(scenario, folder, RECORDS * times);
    }

    /** Writes at most so many records, the rig file and the boundary; returns the number of records. */
    static int stream(Scenario scenario, Path folder, int most) {
        Simulation simulation = new Simulation(scenario);
        int[] written = {0};
        try {
            Files.createDirectories(folder);
            Files.writeString(folder.resolve("rig.yaml"), SetupWriter.rigYaml(scenario));
            Files.writeString(
                    folder.resolve("boundary.geojson"),
                    SetupWriter.boundaryGeoJson(scenario, simulation.plan().boundary()));
            try (Writer out = Files.newBufferedWriter(folder.resolve("log.csv"), StandardCharsets.UTF_8)) {
                LogWriter log = new LogWriter(scenario, out);
                simulation.run(record -> {
                    if (written[0] < most) {
                        put(log, record);
                        written[0]++;
                    }
                });
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return written[0];
    }

    private static void put(LogWriter log, SimRecord record) {
        try {
            log.write(record);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
