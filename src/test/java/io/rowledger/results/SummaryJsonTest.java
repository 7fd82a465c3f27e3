package io.rowledger.results;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.ValidationMessage;
import io.rowledger.analysis.Analysis;
import io.rowledger.report.common.HandMadeIntervals;
import io.rowledger.report.common.SyntheticJob;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Figures worked by hand from the job described at {@link SyntheticJob}. */
class SummaryJsonTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    private static String text(Analysis a) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        SummaryJson.write(a, "test", out);
        return out.toString(StandardCharsets.UTF_8);
    }

    private static JsonNode json(SyntheticJob job) throws IOException {
        return JSON.readTree(text(job.build()));
    }

    private static Set<ValidationMessage> faults(JsonNode summary) throws IOException {
        return Schemas.faults(ResultFile.SUMMARY, summary);
    }

    private static List<String> keys(JsonNode node) {
        List<String> keys = new ArrayList<>();
        node.fieldNames().forEachRemaining(keys::add);
        return keys;
    }

    @Test
    void every_kind_of_job_keeps_to_the_schema() throws IOException {
        for (SyntheticJob job : List.of(
                new SyntheticJob(),
                new SyntheticJob().withFinding().withSecondProduct(),
                new SyntheticJob().withoutPasses(),
                new SyntheticJob().withSetbacks(),
                new SyntheticJob().withoutBoundary().withoutTarget().withoutDensity())) {
            assertEquals(Set.of(), faults(json(job)));
        }
    }

    @Test
    void intervals_stand_in_si_and_keep_to_the_schema() throws IOException {
        JsonNode summary = JSON.readTree(text(HandMadeIntervals.in(new SyntheticJob().build())));
        assertEquals(Set.of(), faults(summary));
        JsonNode intervals = summary.get("field").get("intervals");
        assertEquals(90, intervals.get("level_pct").asInt());
        assertEquals(18_800, intervals.get("covered_area_m2").get("low").asDouble(), 0);
        assertEquals(19_200, intervals.get("covered_area_m2").get("high").asDouble(), 0);
        // 0.0392 L/m² are 392 L/ha, 0.01764 kg/m² are 176.4 kg/ha.
        JsonNode uan = intervals.get("products").get("uan");
        assertEquals(392, uan.get("mean_rate_l_per_ha").get("low").asDouble(), 1e-9);
        assertEquals(176.4, uan.get("nitrogen_kg_per_ha").get("high").asDouble(), 1e-9);
        JsonNode row = intervals.get("rows").get(6);
        assertEquals(7, row.get("row").asInt());
        assertEquals(
                -3,
                row.get("products").get("uan").get("deviation_pct").get("low").asDouble(),
                0);
        assertTrue(intervals.get("boundary_area_m2").isNull());
        assertEquals("ff", intervals.get("budget").get("seed").asText());
        assertTrue(intervals.get("budget").get("fixes").get(1).get("fix").isNull());
    }

    @Test
    void the_schema_refuses_a_summary_with_a_key_missing_misspelt_or_of_the_wrong_kind() throws IOException {
        ObjectNode missing = (ObjectNode) json(new SyntheticJob());
        ((ObjectNode) missing.get("field")).remove("covered_area_m2");
        assertFalse(faults(missing).isEmpty());
        ObjectNode misspelt = (ObjectNode) json(new SyntheticJob());
        ((ObjectNode) misspelt.get("field")).put("coverd_area_m2", 1);
        assertFalse(faults(misspelt).isEmpty());
        ObjectNode wrong = (ObjectNode) json(new SyntheticJob());
        ((ObjectNode) wrong.get("rows").get(0)).put("swept_area_m2", "2000");
        assertFalse(faults(wrong).isEmpty());
    }

    @Test
    void setbacks_are_null_without_a_file_and_figures_with_one() throws IOException {
        assertTrue(json(new SyntheticJob()).get("field").get("setbacks").isNull());
        JsonNode places = json(new SyntheticJob().withSetbacks()).get("field").get("setbacks");
        assertEquals(3, places.size());
        JsonNode well = places.get(0);
        assertEquals("Well & pump", well.get("name").asText());
        assertEquals(18.288, well.get("setback_m").asDouble());
        assertTrue(well.get("applied_inside").asBoolean());
        assertEquals(40, well.get("products").get("uan").get("volume_l").asDouble());
        assertEquals(16.96, well.get("products").get("uan").get("nitrogen_kg").asDouble());
        assertEquals(600, well.get("covered_area_m2").asDouble());
        assertEquals("2026-06-14T13:03:20Z", well.get("first").asText());
        assertEquals("2026-06-14T13:03:51Z", well.get("last").asText());
        assertEquals("[3,4,5]", well.get("rows").toString());
        assertEquals(4, well.get("worst").get("row").asInt());
        // 5 m and 100 m of the plane's middle: 111,131 m and 80,170 m a degree at 44 N (GeographicLib).
        assertEquals(44.000900, well.get("worst").get("lat").asDouble(), 1e-6);
        assertEquals(-92.999938, well.get("worst").get("lon").asDouble(), 1e-6);
        JsonNode ditch = places.get(1);
        assertFalse(ditch.get("applied_inside").asBoolean());
        assertEquals(4.2, ditch.get("closest_m").asDouble());
        assertEquals(0, ditch.get("products").get("uan").get("volume_l").asDouble());
        assertTrue(ditch.get("first").isNull() && ditch.get("worst").isNull());
    }

    @Test
    void the_field_is_summed_up() throws IOException {
        JsonNode field = json(new SyntheticJob()).get("field");
        assertEquals("2026-06-14T13:00:00Z", field.get("start").asText());
        assertEquals("2026-06-14T13:24:35Z", field.get("end").asText());
        assertEquals(20_000, field.get("swept_area_m2").asDouble());
        assertEquals(19_000, field.get("covered_area_m2").asDouble());
        assertEquals(160, field.get("overlap_area_m2").asDouble());
        assertEquals(1_000, field.get("skip_area_m2").asDouble());
        assertEquals(20_000, field.get("boundary_area_m2").asDouble());
        assertEquals(300, field.get("unsettled_area_m2").asDouble());
        JsonNode uan = field.get("products").get("uan");
        assertEquals(764.8, uan.get("volume_l").asDouble());
        assertEquals(800, uan.get("target_volume_l").asDouble());
        // 764.8 L ÷ 1.9 ha = 402.526... L/ha; 764.8 L × 0.424 kg/L = 324.2752 kg.
        assertEquals(402.53, uan.get("mean_rate_l_per_ha").asDouble());
        assertEquals(324.275, uan.get("nitrogen_kg").asDouble());
        assertEquals(89.47, uan.get("within_5_pct").asDouble());
        assertEquals(0.02, uan.get("conservation_error_pct").asDouble());
    }

    @Test
    void rows_and_passes_are_summed_up() throws IOException {
        JsonNode summary = json(new SyntheticJob());
        JsonNode row7 = summary.get("rows").get(6);
        assertEquals(7, row7.get("row").asInt());
        assertEquals(1_000, row7.get("applied_area_m2").asDouble());
        assertEquals(7, row7.get("turn_error_mean_abs_pct").asDouble());
        assertEquals(28, row7.get("turn_error_max_over_pct").asDouble());
        assertEquals(-14, row7.get("turn_error_max_under_pct").asDouble());
        assertEquals(1.75, row7.get("turn_error_remaining_mean_abs_pct").asDouble());
        assertEquals(-50, row7.get("products").get("uan").get("deviation_pct").asDouble());
        assertEquals(
                400, row7.get("products").get("uan").get("mean_rate_l_per_ha").asDouble());
        JsonNode pass6 = summary.get("passes").get(5);
        assertEquals(250, pass6.get("length_m").asDouble());
        assertEquals(72.48, pass6.get("products").get("uan").get("volume_l").asDouble());
        assertEquals("2026-06-14T13:12:30Z", pass6.get("start").asText());
    }

    @Test
    void what_is_not_known_is_null_and_never_left_out() throws IOException {
        JsonNode summary =
                json(new SyntheticJob().withoutBoundary().withoutTarget().withoutDensity());
        JsonNode field = summary.get("field");
        assertTrue(field.get("boundary_area_m2").isNull());
        JsonNode uan = field.get("products").get("uan");
        assertTrue(uan.get("nitrogen_kg").isNull());
        assertTrue(uan.get("target_volume_l").isNull());
        assertTrue(uan.get("within_5_pct").isNull());
        assertTrue(summary.get("rows")
                .get(0)
                .get("products")
                .get("uan")
                .get("deviation_pct")
                .isNull());
    }

    @Test
    void the_job_block_and_every_nutrient_stand_in_it() throws IOException {
        JsonNode summary = json(new SyntheticJob().job("crop", "Corn").withSecondProduct());
        assertEquals("Corn", summary.get("job").get("facts").get("crop").asText());
        assertEquals("Etc/GMT+6", summary.get("job").get("zone").asText());
        assertTrue(summary.get("job").get("plan_nitrogen_kg_per_ha").isNull());
        JsonNode ats = summary.get("field").get("products").get("ats");
        assertEquals("ATS 12-0-0-26S", ats.get("name").asText());
        // By hand: 1.32 kg a liter, of it 0.12 N and 0.26 S, no P2O5 and no K2O.
        double litres = ats.get("volume_l").asDouble();
        assertTrue(litres > 0);
        assertEquals(1.32 * litres, ats.get("mass_kg").asDouble(), 1e-3);
        assertEquals(0.1584 * litres, ats.get("nitrogen_kg").asDouble(), 1e-3);
        assertEquals(0.3432 * litres, ats.get("sulfur_kg").asDouble(), 1e-3);
        assertEquals(0, ats.get("phosphate_kg").asDouble());
        JsonNode unknown = json(new SyntheticJob().withoutDensity())
                .get("field")
                .get("products")
                .get("uan");
        assertTrue(unknown.get("mass_kg").isNull());
        assertTrue(unknown.get("nitrogen_kg").isNull());
    }

    @Test
    void keys_come_in_a_fixed_order() throws IOException {
        JsonNode summary = json(new SyntheticJob().withFinding());
        assertEquals(
                List.of(
                        "schema",
                        "program_version",
                        "inputs",
                        "job",
                        "field",
                        "rows",
                        "passes",
                        "findings",
                        "section_control",
                        "setup",
                        "actions",
                        "notes"),
                keys(summary));
        assertEquals("rowledger-summary/2", summary.get("schema").asText());
        JsonNode input = summary.get("inputs").get(0);
        assertEquals(List.of("file", "sha256", "records", "used", "dropped"), keys(input));
        assertEquals(
                List.of("no_fix", "duplicate", "out_of_order", "jump", "frozen", "unreadable"),
                keys(input.get("dropped")));
        JsonNode finding = summary.get("findings").get(0);
        assertEquals("plugged", finding.get("kind").asText());
        assertEquals("uan", finding.get("product").asText());
        assertEquals(7, finding.get("rows").get(0).asInt());
        assertEquals(44.0, finding.get("where").get("lat").asDouble());
    }

    @Test
    void the_machines_locale_changes_no_byte() throws IOException {
        String here = text(new SyntheticJob().withFinding().build());
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG"));
            assertEquals(here, text(new SyntheticJob().withFinding().build()));
        } finally {
            Locale.setDefault(before);
        }
    }
}
