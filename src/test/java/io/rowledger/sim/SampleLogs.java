package io.rowledger.sim;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.GZIPOutputStream;

/**
 * The sample logs: an invented farm's June week of side-dressing. Everything in them is made up; the same bytes come out
 * every time (of {@code log.csv.gz}, the unpacked bytes).
 *
 * <ul>
 *   <li>{@code clean}: 12 rows drawn, two laps and passes, boundary; one pass driven 30 cm off its line.
 *   <li>{@code plugged-row}: row 7 plugs partway, the meter of row 3 reads 9 % low all day, pressures logged.
 *   <li>{@code contour}: 12 rows carried on contour passes, one rate for the whole bar, no boundary.
 * </ul>
 */
public final class SampleLogs {
    private static final int MOST_PLAIN_BYTES = 1_500_000;
    private static final double INCH_M = 0.0254;

    private SampleLogs() {}

    /** Writes the three folders into the given one. */
    public static void main(String[] args) {
        write(Path.of(args[0]));
    }

    /** Writes the three folders into the given one. */
    public static void write(Path folder) {
        write(clean().withoutGround().run(), folder.resolve("clean"));
        write(pluggedRow().withoutGround().run(), folder.resolve("plugged-row"));
        write(contour().withoutGround().run(), folder.resolve("contour"));
    }

    private static void write(SimResult result, Path folder) {
        byte[] log = result.logText().getBytes(StandardCharsets.UTF_8);
        try {
            Files.createDirectories(folder);
            if (log.length > MOST_PLAIN_BYTES) {
                try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(folder.resolve("log.csv.gz")))) {
                    out.write(log);
                }
            } else {
                Files.write(folder.resolve("log.csv"), log);
            }
            Files.writeString(folder.resolve("rig.yaml"), result.rigText());
            if (result.boundaryText() != null) {
                Files.writeString(folder.resolve("boundary.geojson"), result.boundaryText());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static SimRig drawnBar() {
        return SimRig.drawn(12)
                .named("Twelve-row drawn bar")
                .withAntenna(63 * INCH_M, 0)
                .withLengths(36 * INCH_M, 174 * INCH_M, 232 * INCH_M);
    }

    private static Map<String, String> job(String field, String date, String stage, String soil) {
        Map<String, String> job = new LinkedHashMap<>();
        job.put("field", field);
        job.put("crop", "Corn, " + stage);
        job.put("date", date);
        job.put("method", "Coulter-injected between the rows");
        job.put("soil", soil);
        return job;
    }

    /** One clean field of about 8 ha with a boundary. */
    public static Scenario clean() {
        double[][] corners = {{0, 0}, {395, 18}, {420, 196}, {22, 214}};
        FieldPlan.Layout layout =
                PassPlan.field(corners, 2).heading(0.06).speeds(2.35, 1.9, 2.0).shifting(6, 0.3);
        return new Scenario(20_260_602, drawnBar(), layout)
                .products(SimProduct.uan32(42))
                .gnss(GnssModel.rtkDrifting(5).withLosses(0.0004, 0.0002))
                .site(new SimSite(41.5212, -93.4873, 1_780_407_000L))
                .job(job("North bottom", "2026-06-02", "V6", "Moist silt loam"));
    }

    /** Row 7 plugs partway, the meter of row 3 is lazy. */
    public static Scenario pluggedRow() {
        SimRig rig = drawnBar();
        FieldPlan.Layout layout =
                PassPlan.rectangle(330, 14, 1, rig.widthM()).heading(1.52).speeds(2.3, 1.8, 1.9);
        return new Scenario(20_260_603, rig, layout)
                .products(SimProduct.uan32(48))
                .gnss(GnssModel.rtkDrifting(2).withLosses(0.0005, 0))
                .format(LogFormat.customaryUnits().with(LogFormat.Column.PRESSURE, LogFormat.Column.TOTAL))
                .fault(SimFault.of(SimFault.Kind.PLUGGED, 7, 1380, 0.03))
                .fault(SimFault.of(SimFault.Kind.METER_SCALE, 3, 0, 0.91))
                .site(new SimSite(41.5338, -93.5127, 1_780_495_200L))
                .job(job("School eighty", "2026-06-03", "V6", "Moist silty clay loam"));
    }

    /** Contour passes with one rate for the whole bar. */
    public static Scenario contour() {
        SimRig rig = SimRig.carried(12)
                .named("Twelve-row carried bar")
                .withAntenna(58 * INCH_M, 0)
                .withLengths(35 * INCH_M, Double.NaN, 100 * INCH_M);
        GnssModel gnss = GnssModel.rtkDrifting(2)
                .withSpells(List.of(new GnssModel.Spell(905, 940, 5), new GnssModel.Spell(1410, 1413, 0)));
        return new Scenario(
                        20_260_604,
                        rig,
                        CurvePlan.waves(14, 210, 430, 9).unbounded().speed(2.2))
                .products(SimProduct.uan32(45))
                .gnss(gnss)
                .metering(MeteringModel.wholeBar())
                .site(new SimSite(41.4981, -93.4642, 1_780_580_400L))
                .job(job("Hill piece", "2026-06-04", "V7", "Dry loam, slopes to 6 %"));
    }
}
