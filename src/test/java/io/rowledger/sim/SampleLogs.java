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
    private static final int MAX_PLAIN_BYTES = 1_500_000;
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
            if (log.length > MAX_PLAIN_BYTES) {
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
                .named("Twelve-row pull-type bar")
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

    /** All that a nitrogen record looks for, but the forecast and an address, so that the record shows what is missing. */
    private static Map<String, String> wholeJob() {
        Map<String, String> job = new LinkedHashMap<>();
        job.put("farm", "Two Oaks");
        job.put("field", "North bottom");
        job.put("tract", "Tract 7, field 3");
        job.put("county", "Example County");
        job.put("landlord", "The owners of Two Oaks");
        job.put("operator", "Bottomland Crops");
        job.put("customer", "Bottomland Crops");
        job.put("company", "Sample Side-dressing");
        job.put("applicator", "A. Sample");
        job.put("certificate", "EXAMPLE-0000");
        job.put("certificate_holder", "Sample Side-dressing");
        job.put("crop", "Corn");
        job.put("stage", "V6");
        job.put("planted", "2026-04-28");
        job.put("date", "2026-06-02");
        job.put("method", "Coulter-injected between the rows");
        job.put("depth", "4 in");
        job.put("knives", "A coulter in every middle, twelve together");
        job.put("soil", "Moist silt loam");
        job.put("soil_moisture", "Moist from 1 in down");
        job.put("weather", "Fair");
        job.put("temperature", "72 F at the start");
        job.put("wind", "6 to 9 mph from the southwest");
        job.put("precipitation", "None that day");
        job.put("frozen_or_snow", "No");
        job.put("source", "Sample Supply");
        job.put("derived_from", "Urea, ammonium nitrate");
        job.put("reason", "None: put on as planned");
        job.put("plan", "185 lb/ac");
        job.put("cap", "200 lb/ac");
        job.put(
                "earlier",
                "- {date: 2026-04-28, what: Starter with the planter, rate: 5 gal/ac, density: 11.65 lb/gal, "
                        + "analysis: 10-34-0}");
        job.put("credits", "- {what: Soybeans before, nitrogen: 30 lb/ac}");
        job.put("order", "{uan: 820 gal}");
        job.put("tickets", """
                - {number: SAMPLE-1, date: 2026-06-01, product: uan, weight: 4560 lb, temperature: 64 F}
                - {number: SAMPLE-2, date: 2026-06-02, product: uan, weight: 4510 lb, temperature: 61 F}""");
        job.put("zone", "America/Chicago");
        return job;
    }

    /** One clean field of about 8 ha with a boundary. */
    public static Scenario clean() {
        double[][] corners = {{0, 0}, {395, 18}, {420, 196}, {22, 214}};
        FieldPlan.Layout layout =
                PassPlan.field(corners, 2).heading(0.06).speeds(2.35, 1.9, 2.0).shifting(6, 0.3);
        return new Scenario(20_260_602, drawnBar(), layout)
                .products(SimProduct.uan32(42).withDensityAt("60 F"))
                .gnss(GnssModel.rtkDrifting(5).withLosses(0.0004, 0.0002))
                .site(new SimSite(41.5212, -93.4873, 1_780_407_000L))
                .job(wholeJob());
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
                .named("Twelve-row mounted bar")
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
