package io.rowledger.sim;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;

/** Logs of one wide outlet in short stretches with silences between them, spread over a working day. */
public final class StretchyLogs {
    private static final double DAY_S = 16 * 3600;
    private static final double SPEED_MPS = 2.5;
    private static final double PASS_M = 400;
    /** One outlet of 20 ft, m. */
    private static final double WIDTH_M = 6.096;

    private static final double NOISE_M = 0.02;
    private static final double EARTH_RADIUS_M = 6_371_000;

    private StretchyLogs() {}

    /**
     * Writes {@code log.csv} and {@code rig.yaml}: back and forth over a field, the same path for any number of silences.
     *
     * @param silences evenly spread over the records; together they last what is left of 16 hours
     * @param intervalS time between records
     */
    public static void write(Path folder, int records, int silences, double intervalS) {
        Random random = new Random(3);
        StringBuilder csv = new StringBuilder("epoch_s,lat,lon,flow_01[L/s]\n");
        double silenceS = silences == 0 ? 0 : Math.max(60, (DAY_S - records * intervalS) / silences);
        double perM = Math.toDegrees(1 / EARTH_RADIUS_M);
        double timeS = 1_780_000_000;
        for (int i = 0; i < records; i++) {
            double driven = i * intervalS * SPEED_MPS;
            long pass = (long) (driven / PASS_M);
            double along = driven - pass * PASS_M;
            double north = (pass % 2 == 0 ? along : PASS_M - along) + NOISE_M * random.nextGaussian();
            double east = pass * WIDTH_M + NOISE_M * random.nextGaussian();
            csv.append(String.format(
                    Locale.ROOT,
                    "%.2f,%.9f,%.9f,%.4f%n",
                    timeS,
                    42 + north * perM,
                    -93.5 + east * perM / Math.cos(Math.toRadians(42)),
                    0.3 * (1 + 0.02 * random.nextGaussian())));
            boolean silent =
                    silences > 0 && (long) (i + 1) * (silences + 1) / records > (long) i * (silences + 1) / records;
            timeS += intervalS + (silent ? silenceS : 0);
        }
        try {
            Files.createDirectories(folder);
            Files.writeString(folder.resolve("log.csv"), csv);
            Files.writeString(folder.resolve("rig.yaml"), """
                    rig:
                      name: One outlet
                      antenna: {ahead_of_axle: 1 m, right_of_center: 0 m}
                      axle_to_hitch: 1 m
                      hitch: pull-type
                      hitch_to_wheels: 4 m
                      hitch_to_drop: 5 m
                      bar_right_of_center: 0 m
                    rows: {count: 1, spacing: 20 ft}
                    products:
                      uan: {name: UAN 32-0-0, density: 11.06 lb/gal, analysis: 32-0-0, target: 20 gal/ac}
                    job: {zone: America/Chicago}
                    """);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
