package io.rowledger.sim;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * A season to measure {@code batch} with: fields of 5 to 100 acres (as many between 5 and 10 as between 50 and 100), bars of
 * 12, 16 and 24 rows, 1 to 10 records a second, RTK and differential fixes, a faulty row in every fifth field. A folder a field, with
 * log, rig file and boundary.
 */
public final class SeasonLogs {
    private static final double ACRE_M2 = 4046.8564224;
    private static final double MIN_ACRES = 5;
    private static final double MAX_ACRES = 100;
    private static final double MAX_M = 800;
    private static final int[] ROWS = {12, 16, 24};
    private static final int[] HERTZ = {1, 2, 5, 10};
    private static final long MAY_20 = 1_779_278_400L;
    private static final long HALF_DAY_S = 43_200;

    private SeasonLogs() {}

    /** Writes the fields: folder, how many. Prints the records and the acres. */
    public static void main(String[] args) {
        Path folder = Path.of(args[0]);
        int fields = Integer.parseInt(args[1]);
        long records = IntStream.range(0, fields)
                .parallel()
                .mapToLong(i -> BenchmarkLogs.stream(
                        field(i), folder.resolve(String.format(Locale.ROOT, "field-%03d", i)), Integer.MAX_VALUE))
                .sum();
        System.out.println(records);
    }

    private static Scenario field(int i) {
        // Neighbouring seeds draw alike at first; a large odd factor parts them (D. Knuth, TAOCP 2, 3.2.1, golden
        // ratio).
        Random draw = new Random(0x9E3779B97F4A7C15L * (i + 1));
        double areaM2 = MIN_ACRES * Math.pow(MAX_ACRES / MIN_ACRES, draw.nextDouble()) * ACRE_M2;
        int hertz = HERTZ[draw.nextInt(HERTZ.length)];
        int rows = ROWS[draw.nextInt(ROWS.length)];
        SimRig rig = draw.nextBoolean() ? SimRig.drawn(rows) : SimRig.carried(rows);
        double lengthM = Math.min(MAX_M, Math.sqrt(2 * areaM2));
        int passes = Math.max(2, (int) Math.round(areaM2 / lengthM / rig.widthM()));
        Scenario scenario = new Scenario(9_000L + i, rig, PassPlan.rectangle(lengthM, passes, 0, rig.widthM()))
                .gnss(draw.nextInt(4) == 0 ? GnssModel.differential(hertz) : GnssModel.rtk(hertz))
                .site(new SimSite(41 + 0.01 * i, -93.5, MAY_20 + i * HALF_DAY_S))
                .job(java.util.Map.of("field", "Field " + i))
                .withoutGround();
        return i % 5 == 0
                ? scenario.fault(SimFault.of(SimFault.Kind.PLUGGED, 1 + draw.nextInt(rows), 600, 0.02))
                : scenario;
    }
}
