package io.rowledger.report.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import io.rowledger.report.Analysis;
import io.rowledger.report.SyntheticJob;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
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
        try (InputStream in = SummaryJsonTest.class.getResourceAsStream("/schema/rowledger-summary-1.schema.json")) {
            JsonSchema schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                    .getSchema(in);
            return schema.validate(
                    summary, context -> context.getExecutionConfig().setFormatAssertionsEnabled(true));
        }
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
                new SyntheticJob().withoutBoundary().withoutTarget().withoutDensity())) {
            assertEquals(Set.of(), faults(json(job)));
        }
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
    void the_field_is_summed_up() throws IOException {
        JsonNode field = json(new SyntheticJob()).get("field");
        assertEquals("2026-06-14T13:00:00Z", field.get("start").asText());
        assertEquals("2026-06-14T13:24:35Z", field.get("end").asText());
        assertEquals(20_000, field.get("swept_area_m2").asDouble());
        assertEquals(19_000, field.get("covered_area_m2").asDouble());
        assertEquals(160, field.get("overlap_area_m2").asDouble());
        assertEquals(1_000, field.get("missed_area_m2").asDouble());
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
    void keys_come_in_a_fixed_order() throws IOException {
        JsonNode summary = json(new SyntheticJob().withFinding());
        assertEquals(
                List.of(
                        "schema",
                        "program_version",
                        "inputs",
                        "field",
                        "rows",
                        "passes",
                        "findings",
                        "shut_offs",
                        "setup",
                        "notes"),
                keys(summary));
        assertEquals("rowledger-summary/1", summary.get("schema").asText());
        JsonNode input = summary.get("inputs").get(0);
        assertEquals(List.of("file", "sha256", "records", "used", "dropped"), keys(input));
        assertEquals(List.of("no_fix", "duplicate", "out_of_order", "jump", "unreadable"), keys(input.get("dropped")));
        JsonNode finding = summary.get("findings").get(0);
        assertEquals("plugged", finding.get("kind").asText());
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
