package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.rowledger.document.pdf.Paper;
import io.rowledger.output.Reports;
import io.rowledger.rate.RowTotals;
import io.rowledger.report.common.Audience;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.Views;
import io.rowledger.report.sections.ZoneSection;
import io.rowledger.results.ResultFile;
import io.rowledger.results.Schemas;
import io.rowledger.sim.GnssModel;
import io.rowledger.sim.LogFormat;
import io.rowledger.sim.MeteringModel;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimProduct;
import io.rowledger.sim.SimResult;
import io.rowledger.sim.SimRig;
import io.rowledger.sim.TargetMap;
import io.rowledger.sim.Truth;
import io.rowledger.sim.ZoneMap;
import io.rowledger.text.Message;
import io.rowledger.units.UnitSystem;
import io.rowledger.zones.ZoneChanges;
import io.rowledger.zones.Zones;
import io.rowledger.zones.Zones.ZoneProduct;
import io.rowledger.zones.Zones.ZoneSums;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Zones against the simulator's truth, which knows them by its own code. The bounds are the project's own promise: 1 % of
 * a zone's volume, half a meter at a zone line with an RTK receiver.
 */
@Tag("slow")
class PrescriptionTruthTest {
    private static final double HEADING = 0.3;
    private static final double LENGTH_M = 300;
    private static final int PASSES = 8;
    private static final double WIDTH_M = PASSES * 12 * SimRig.THIRTY_INCH_M;

    @TempDir
    Path folder;

    /** Three zones across the passes; their lines lie 50 m from the field's middle, all moved along by so many meters. */
    private static ZoneMap across(double shiftM, double... second) {
        double most = LENGTH_M / 2 + 30;
        double side = WIDTH_M / 2 + 20;
        double ats = second.length > 0 ? second[0] : 1;
        return new ZoneMap(List.of(
                ZoneMap.rectangle("Low", HEADING, -most, -50 + shiftM, -side, side, 0.8, 1),
                ZoneMap.rectangle("Middle", HEADING, -50 + shiftM, 50 + shiftM, -side, side, 1.0, ats),
                ZoneMap.rectangle("High", HEADING, 50 + shiftM, most, -side, side, 1.3, 1)));
    }

    private static Scenario field(TargetMap targets, MeteringModel metering) {
        return new Scenario(
                        11,
                        SimRig.drawn(12),
                        PassPlan.rectangle(LENGTH_M, PASSES, 0, SimRig.drawn(12).widthM()))
                .gnss(GnssModel.rtk(5))
                .targets(targets)
                .metering(metering)
                .withoutGround();
    }

    private Analysis analyze(SimResult job, ZoneMap prescription) throws IOException {
        job.writeTo(folder);
        Path file = Files.writeString(folder.resolve("prescription.geojson"), prescription.geoJson(job.scenario()));
        return Pipeline.analyze(
                new JobFiles(
                        List.of(folder.resolve("log.csv")), folder.resolve("rig.yaml"), null, file, null, Double.NaN),
                2,
                Progress.SILENT);
    }

    private static Zones zones(Analysis a) {
        Zones zones = a.zones();
        assertNotNull(zones);
        return zones;
    }

    private static double speedMps(Truth truth) {
        double way = truth.passes().stream().mapToDouble(Truth.Pass::lengthM).sum();
        return way
                / truth.passes().stream()
                        .mapToDouble(p -> p.endS() - p.startS())
                        .sum();
    }

    private static void print(String what, Zones zones, Truth truth) {
        ZoneChanges.Timing t = zones.changes().get(0).all();
        StringBuilder volumes = new StringBuilder();
        for (int z = 0; z < zones.zones().size(); z++) {
            volumes.append(String.format(
                    Locale.ROOT,
                    " %+.2f%%",
                    100
                            * (zones.zones().get(z).products().get(0).receivedL()
                                            / truth.zones().get(z).meteredL()[0]
                                    - 1)));
        }
        System.out.printf(
                Locale.ROOT,
                "zones, %-28s received%s  late %.2f m (%.2f to %.2f, %.2f s), settled %.2f m, %d of %d%n",
                what,
                volumes,
                t.lateM(),
                t.minLateM(),
                t.maxLateM(),
                t.lateS(),
                t.settledM(),
                t.evaluated(),
                t.crossings());
    }

    @Test
    void zones_get_their_volumes_and_a_delay_shows_as_metres_behind_the_line() throws IOException {
        double delayS = 1.0;
        SimResult job = field(
                        across(0), MeteringModel.perRow().withShutOff(false).withResponse(delayS, 0))
                .run();
        Analysis a = analyze(job, across(0));
        Zones zones = zones(a);
        Truth truth = job.truth();
        print("1 s late", zones, truth);
        for (int z = 0; z < 3; z++) {
            ZoneSums found = zones.zones().get(z);
            Truth.Zone real = truth.zones().get(z);
            ZoneProduct uan = found.products().get(0);
            assertEquals(real.name(), found.zone().name());
            double rate = SimProduct.uan32(42).targetLPerM2() * new double[] {0.8, 1, 1.3}[z];
            double areaM2 = new double[] {130, 100, 130}[z] * (WIDTH_M + 40);
            assertEquals(areaM2, found.areaM2(), 1e-4 * areaM2);
            assertEquals(rate, uan.planLPerM2(), 1e-9 * rate);
            assertEquals(rate * areaM2, uan.plannedZoneL(), 1e-4 * rate * areaM2);
            assertEquals(rate * found.coveredM2(), uan.plannedCoveredL(), 1e-9 * rate * areaM2);
            // A few centimeters of wander leave slivers and overlaps: covered is less than swept by less than 1 %.
            assertEquals(real.sweptAreaM2(), found.coveredM2(), 0.01 * real.sweptAreaM2());
            assertEquals(real.meteredL()[0], uan.receivedL(), 0.01 * real.meteredL()[0]);
            assertEquals(real.askedL()[0], uan.loggedTargetL(), 0.01 * real.askedL()[0]);
        }
        ZoneChanges.Timing timing = zones.changes().get(0).all();
        assertEquals(2 * PASSES, timing.crossings());
        assertEquals(2 * PASSES, timing.evaluated());
        assertEquals(delayS * speedMps(truth), timing.lateM(), 0.5);
        assertEquals(delayS, timing.lateS(), 0.2);
        assertEquals(4, zones.changes().get(0).pairs().size());
        for (ZoneChanges.Pair pair : zones.changes().get(0).pairs()) {
            assertEquals(delayS * speedMps(truth), pair.timing().lateM(), 0.5);
        }
    }

    @Test
    void summary_page_and_layer_show_the_zones() throws IOException {
        SimResult job = field(
                        across(0), MeteringModel.perRow().withShutOff(false).withResponse(1, 0))
                .run();
        Analysis a = analyze(job, across(0));
        ReportOptions options = new ReportOptions(UnitSystem.METRIC, Paper.A4, ZoneId.of("UTC"), null, "test");
        Path out = folder.resolve("out");
        Reports.write(a, options, out, Set.of(Audience.APPLICATOR), List.of(), 1);
        JsonNode summary =
                new ObjectMapper().readTree(out.resolve("summary.json").toFile());
        assertEquals(Set.of(), Schemas.faults(ResultFile.SUMMARY, summary));
        JsonNode middle = summary.at("/field/prescription/zones/1");
        assertEquals("Middle", middle.get("name").asText());
        double real = job.truth().zones().get(1).meteredL()[0];
        assertEquals(real, middle.at("/products/uan/volume_l").asDouble(), 0.01 * real);
        assertEquals(
                16,
                summary.at("/field/prescription/zone_changes/uan/all/evaluated").asInt());
        JsonNode layer =
                new ObjectMapper().readTree(out.resolve("layers/zones.geojson").toFile());
        assertEquals(3, layer.get("features").size());
        assertEquals("Low", layer.at("/features/0/properties/name").asText());
        String text;
        try (PDDocument pdf = Loader.loadPDF(out.resolve("pass-review.pdf").toFile())) {
            text = new PDFTextStripper().getText(pdf).replace('\u00a0', ' ').replaceAll("\\s+", " ");
        }
        assertTrue(text.contains("Zones of the prescription: UAN 32-0-0"), text);
        ZoneSection section = Views.zones(a, options.messages());
        ZoneSection.ZoneTable table = section.products().get(0);
        assertEquals(3, table.zones().size());
        assertEquals(4, table.pairs().size());
        // 42 gal/ac are 392.9 L/ha; a rate from 100 on is printed without decimals.
        assertEquals(
                "393",
                table.zones().stream()
                        .filter(z -> z.zone().equals("Middle"))
                        .findFirst()
                        .orElseThrow()
                        .planRate());
        assertTrue(table.changes().contains("behind the line"), table.changes());
        assertTrue(text.contains(table.changes().replace('\u00a0', ' ')), table.changes());
    }

    @Test
    void a_supply_that_needs_time_moves_the_half_way_point_back_and_settles_later() throws IOException {
        double delayS = 0.4;
        double timeConstantS = 1.5;
        SimResult job = field(
                        across(0), MeteringModel.perRow().withShutOff(false).withResponse(delayS, timeConstantS))
                .run();
        Zones zones = zones(analyze(job, across(0)));
        print("0.4 s and 1.5 s", zones, job.truth());
        double speed = speedMps(job.truth());
        ZoneChanges.Timing timing = zones.changes().get(0).all();
        // A first-order response is half-way after tau ln 2 and within a tenth after tau ln 10.
        assertEquals((delayS + timeConstantS * Math.log(2)) * speed, timing.lateM(), 0.5);
        assertEquals((delayS + timeConstantS * Math.log(10)) * speed, timing.settledM(), 1.0);
    }

    @Test
    void a_map_that_lies_three_metres_ahead_is_early_one_way_and_late_the_other() throws IOException {
        SimResult job = field(across(0), MeteringModel.ideal().withNoise(1)).run();
        Zones zones = zones(analyze(job, across(3)));
        print("map 3 m ahead", zones, job.truth());
        for (ZoneChanges.Pair pair : zones.changes().get(0).pairs()) {
            double expected = pair.from() < pair.to() ? -3 : 3;
            assertEquals(expected, pair.timing().lateM(), 0.5, pair.toString());
            assertTrue(pair.timing().evaluated() >= 3);
        }
    }

    @Test
    void a_log_without_targets_takes_them_from_the_place_of_each_row() throws IOException {
        SimResult job = field(across(0), MeteringModel.ideal())
                .format(LogFormat.customaryUnits().without(LogFormat.Column.TARGET))
                .run();
        Analysis a = analyze(job, across(0));
        for (int r = 0; r < 12; r++) {
            RowTotals.ProductTotals found = a.rates().rows().get(r).products().get(0);
            Truth.Row real = job.truth().rows().get(r);
            assertEquals(real.targetL()[0], found.targetVolumeL(), 0.005 * real.targetL()[0]);
        }
        assertTrue(a.coverage().received().get(0).within5Pct() > 97, "the flow followed the map");
        Zones zones = zones(a);
        for (ZoneSums zone : zones.zones()) {
            assertTrue(Double.isNaN(zone.products().get(0).loggedTargetL()), "the log asked nothing");
            assertTrue(zone.products().get(0).within5Pct() > 97);
        }
        assertTrue(a.findings().isEmpty(), a.findings().toString());
        assertEquals(0, zones.changes().get(0).all().lateM(), 0.5);
    }

    @Test
    void without_the_prescription_the_same_log_is_held_against_the_rig_files_target() throws IOException {
        SimResult job = field(across(0), MeteringModel.ideal())
                .format(LogFormat.customaryUnits().without(LogFormat.Column.TARGET))
                .run()
                .writeTo(folder);
        Analysis a = Pipeline.analyze(
                new JobFiles(List.of(folder.resolve("log.csv")), folder.resolve("rig.yaml"), null), 2, Progress.SILENT);
        double swept = job.truth().rows().get(0).sweptAreaM2();
        assertEquals(
                SimProduct.uan32(42).targetLPerM2() * swept,
                a.rates().rows().get(0).products().get(0).targetVolumeL(),
                0.005 * swept * SimProduct.uan32(42).targetLPerM2());
        assertTrue(a.coverage().received().get(0).within5Pct() < 60);
    }

    @Test
    void each_of_two_products_has_its_own_zones() throws IOException {
        ZoneMap map = across(0, 0.5);
        SimResult job = field(map, MeteringModel.ideal())
                .products(SimProduct.uan32(30), SimProduct.ats(5))
                .run();
        Zones zones = zones(analyze(job, map));
        for (int z = 0; z < 3; z++) {
            for (int p = 0; p < 2; p++) {
                double real = job.truth().zones().get(z).meteredL()[p];
                assertEquals(real, zones.zones().get(z).products().get(p).receivedL(), 0.01 * real);
            }
        }
        assertEquals(2 * PASSES, zones.changes().get(1).all().evaluated());
        assertEquals(0, zones.changes().get(1).all().lateM(), 0.5);
    }

    @Test
    void a_rate_that_never_changes_is_said_not_to_follow() throws IOException {
        SimResult job = field(TargetMap.constant(), MeteringModel.ideal()).run();
        Zones zones = zones(analyze(job, across(0)));
        ZoneChanges changes = zones.changes().get(0);
        assertFalse(changes.all().known());
        assertEquals(2 * PASSES, changes.all().unfollowed());
        assertEquals(Message.of("notes.zone_changes.not_followed", 2 * PASSES, 2 * PASSES), changes.why());
    }
}
