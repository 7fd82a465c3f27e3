package io.rowledger.results;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.Pipeline;
import io.rowledger.analysis.Progress;
import io.rowledger.sim.GnssModel;
import io.rowledger.sim.LogFormat;
import io.rowledger.sim.MeteringModel;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimFault;
import io.rowledger.sim.SimProduct;
import io.rowledger.sim.SimRig;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What holds of {@code summary.json} whatever the job: figures are finite, amounts are not negative, parts do not exceed wholes
 * and sums agree. Jobs are drawn at random: bars, fields, receivers, meters, units, faults. More of them:
 * {@code -Dproperties.jobs=200}.
 */
@Tag("slow")
class SummaryPropertiesTest {
    private static final int JOBS = Integer.getInteger("properties.jobs", 5);
    private static final long SEED = Long.getLong("properties.seed", 2026L);
    /** Areas are written in hundredths of a m² and volumes in thousandths of a liter. */
    private static final double ROUNDED = 0.006;

    @TempDir
    Path folder;

    @Test
    void figures_are_finite_amounts_not_negative_and_sums_agree() throws IOException {
        for (int job = 0; job < JOBS; job++) {
            Random random = new Random(SEED + job);
            Path place = Files.createDirectory(folder.resolve("job" + job));
            scenario(random).run().writeTo(place);
            Path boundary = place.resolve("boundary.geojson");
            Analysis analysis = Pipeline.analyze(
                    new JobFiles(
                            List.of(place.resolve("log.csv")),
                            place.resolve("rig.yaml"),
                            random.nextBoolean() && Files.exists(boundary) ? boundary : null),
                    1,
                    Progress.SILENT);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            SummaryJson.write(analysis, "test", out);
            check(new ObjectMapper().readTree(out.toByteArray()), "seed " + (SEED + job));
        }
    }

    private static Scenario scenario(Random random) {
        int rows = 3 + random.nextInt(6);
        SimRig rig = random.nextBoolean() ? SimRig.carried(rows) : SimRig.drawn(rows);
        double rateHz = 1 + random.nextInt(2);
        GnssModel gnss =
                switch (random.nextInt(4)) {
                    case 0 -> GnssModel.rtk(rateHz);
                    case 1 -> GnssModel.rtkFloat(rateHz);
                    case 2 -> GnssModel.differential(rateHz);
                    default -> GnssModel.autonomous(rateHz);
                };
        PassPlan plan =
                PassPlan.rectangle(40 + random.nextInt(50), 2 + random.nextInt(4), random.nextInt(2), rig.widthM());
        Scenario scenario = new Scenario(random.nextLong(1_000_000), rig, plan)
                .gnss(gnss)
                .metering(random.nextInt(4) == 0 ? MeteringModel.wholeBar() : MeteringModel.perRow())
                .format(random.nextBoolean() ? LogFormat.customaryUnits() : LogFormat.metricUnits());
        if (random.nextInt(3) == 0) {
            scenario = scenario.products(SimProduct.uan32(30 + random.nextInt(30)), SimProduct.ats(4));
        }
        SimFault.Kind[] kinds = SimFault.Kind.values();
        SimFault.Kind kind = kinds[random.nextInt(kinds.length)];
        double size = 0.05 + 0.9 * random.nextDouble();
        if (kind == SimFault.Kind.PLUGGED || kind == SimFault.Kind.RESTRICTED || kind == SimFault.Kind.METER_DROPOUT) {
            scenario = scenario.fault(SimFault.of(kind, 1 + random.nextInt(rows), 10, size));
        }
        return scenario.withoutGround();
    }

    private static void check(JsonNode summary, String where) {
        finite(summary, where, "");
        JsonNode field = summary.path("field");
        double sweptM2 = field.path("swept_area_m2").asDouble();
        double coveredM2 = field.path("covered_area_m2").asDouble();
        assertTrue(coveredM2 <= sweptM2 + ROUNDED, where + ": covered " + coveredM2 + " of " + sweptM2);
        assertTrue(field.path("overlap_area_m2").asDouble() <= coveredM2 + ROUNDED, where);
        if (!field.path("boundary_area_m2").isNull()) {
            assertTrue(
                    field.path("skip_area_m2").asDouble()
                            <= field.path("boundary_area_m2").asDouble() + ROUNDED,
                    where);
        }
        double rowsM2 = 0;
        for (JsonNode row : summary.path("rows")) {
            rowsM2 += row.path("swept_area_m2").asDouble();
            assertTrue(
                    row.path("applied_area_m2").asDouble()
                            <= row.path("swept_area_m2").asDouble() + ROUNDED,
                    where + ": row " + row.path("row"));
        }
        double passesM2 = sum(summary.path("passes"), "/swept_area_m2");
        assertEquals(sweptM2, rowsM2, ROUNDED * (1 + summary.path("rows").size()), where + ": rows' area");
        assertEquals(sweptM2, passesM2, ROUNDED * (1 + summary.path("passes").size()), where + ": passes' area");
        for (Map.Entry<String, JsonNode> product : field.path("products").properties()) {
            volumes(summary, product.getKey(), product.getValue(), where + ": " + product.getKey());
        }
    }

    private static void volumes(JsonNode summary, String key, JsonNode product, String where) {
        double fieldL = product.path("volume_l").asDouble();
        if (all(summary.path("rows"), "/products/" + key + "/volume_l")) {
            assertEquals(fieldL, sum(summary.path("rows"), "/products/" + key + "/volume_l"), 0.1, where + " by rows");
        }
        if (all(summary.path("passes"), "/products/" + key + "/volume_l")) {
            assertEquals(
                    fieldL, sum(summary.path("passes"), "/products/" + key + "/volume_l"), 0.1, where + " by passes");
        }
        double share = 0;
        for (String band : List.of("within_5_pct", "within_10_pct", "within_20_pct")) {
            double next = product.path(band).asDouble();
            assertTrue(next >= share - 1e-9 && next <= 100.001, where + " " + band + " " + next);
            share = next;
        }
        if (!product.path("nitrogen_kg_low").isNull()) {
            assertTrue(
                    product.path("nitrogen_kg_low").asDouble()
                            <= product.path("nitrogen_kg").asDouble() + ROUNDED,
                    where);
            assertTrue(
                    product.path("nitrogen_kg_high").asDouble()
                            >= product.path("nitrogen_kg").asDouble() - ROUNDED,
                    where);
        }
        assertTrue(Math.abs(product.path("conservation_error_pct").asDouble()) <= 0.1, where + ": grid against log");
    }

    private static boolean all(JsonNode list, String pointer) {
        List<JsonNode> values = new ArrayList<>();
        list.forEach(one -> values.add(one.at(pointer)));
        return !values.isEmpty() && values.stream().allMatch(JsonNode::isNumber);
    }

    private static double sum(JsonNode list, String pointer) {
        double sum = 0;
        for (JsonNode one : list) {
            sum += one.at(pointer).asDouble();
        }
        return sum;
    }

    /** Every number is finite, and areas, volumes, masses, lengths and counts are not below zero. */
    private static void finite(JsonNode node, String where, String path) {
        if (node.isNumber()) {
            assertTrue(Double.isFinite(node.asDouble()), where + path);
            boolean amount =
                    path.matches(".*(area_m2|volume_l|_kg|length_m|records|used|confidence|cv_pct)(_low|_high)?$")
                            && !path.contains("what_if")
                            // What a fault put on too little counts below zero.
                            && !path.startsWith("/findings");
            assertTrue(!amount || node.asDouble() >= 0, where + path + ": " + node);
        }
        assertTrue(!node.isTextual() || !node.asText().matches("-?(NaN|Infinity)"), where + path + ": " + node);
        for (Map.Entry<String, JsonNode> field : node.properties()) {
            finite(field.getValue(), where, path + "/" + field.getKey());
        }
        if (node.isArray()) {
            for (int i = 0; i < node.size(); i++) {
                finite(node.get(i), where, path + "/" + i);
            }
        }
    }
}
