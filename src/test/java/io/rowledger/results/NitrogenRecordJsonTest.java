package io.rowledger.results;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.ValidationMessage;
import io.rowledger.analysis.Analysis;
import io.rowledger.document.pdf.Paper;
import io.rowledger.report.common.NitrogenJobs;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.report.record.NitrogenRecordReport;
import io.rowledger.units.UnitSystem;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Figures worked by hand from the job described at {@link SyntheticJob}. */
class NitrogenRecordJsonTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    private static JsonNode json(SyntheticJob job) throws IOException {
        Analysis a = job.build();
        ReportOptions options =
                new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneId.of("America/Chicago"), null, "test");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        NitrogenRecordJson.write(a, NitrogenRecordReport.of(a, options), options, out);
        return JSON.readTree(out.toByteArray());
    }

    private static Set<ValidationMessage> faults(JsonNode record) throws IOException {
        return Schemas.faults(ResultFile.NITROGEN_RECORD, record);
    }

    @Test
    void every_kind_of_job_keeps_to_the_schema() throws IOException {
        for (SyntheticJob job : List.of(
                new SyntheticJob(),
                new SyntheticJob().withFinding().withSecondProduct().block(NitrogenJobs.full(210, 190)),
                new SyntheticJob().withoutPasses(),
                new SyntheticJob()
                        .withoutBoundary()
                        .withoutTarget()
                        .withoutDensity()
                        .withoutAnalysis())) {
            assertEquals(Set.of(), faults(json(job)));
        }
    }

    @Test
    void the_schema_refuses_a_record_with_a_key_missing_misspelt_or_of_the_wrong_kind() throws IOException {
        ObjectNode missing = (ObjectNode) json(new SyntheticJob());
        missing.remove("nitrogen");
        assertFalse(faults(missing).isEmpty());
        ObjectNode misspelt = (ObjectNode) json(new SyntheticJob());
        ((ObjectNode) misspelt.get("coverage")).put("coverd_area_m2", 1);
        assertFalse(faults(misspelt).isEmpty());
        ObjectNode wrong = (ObjectNode) json(new SyntheticJob());
        ((ObjectNode) wrong.get("products").get(0)).put("volume_l", "764.8");
        assertFalse(faults(wrong).isEmpty());
    }

    @Test
    void the_figures_are_those_worked_by_hand() throws IOException {
        JsonNode record = json(new SyntheticJob().cell(0.2).block(NitrogenJobs.full(210, 190)));
        JsonNode nitrogen = record.get("nitrogen");
        // 764.8 L x 1.325 kg/L x 0.32; on 1.9 ha; 20 and 10 kg/ha before.
        assertEquals(324.275, nitrogen.get("job_kg").doubleValue(), 0.0006);
        assertEquals(170.67, nitrogen.get("job_kg_per_ha").doubleValue(), 0.006);
        assertEquals(200.67, nitrogen.get("total_kg_per_ha").doubleValue(), 0.006);
        assertEquals(190, nitrogen.get("cap_kg_per_ha").doubleValue(), 1e-9);
        assertTrue(nitrogen.get("cap_exceeded").booleanValue());
        assertEquals(
                20, nitrogen.get("earlier").get(0).get("nitrogen_kg_per_ha").doubleValue(), 1e-9);
        JsonNode ground = record.get("coverage");
        assertEquals(19_000, ground.get("covered_area_m2").doubleValue(), 0.01);
        assertEquals("plan", ground.get("compared_with").textValue());
        assertEquals(100.0 * 160 / 19_000, ground.get("over_10_pct").doubleValue(), 0.01);
        JsonNode product = record.get("products").get(0);
        assertEquals(764.8, product.get("volume_l").doubleValue(), 0.001);
        assertEquals(800, product.get("ordered").get("volume_l").doubleValue(), 0.001);
        assertTrue(product.get("density_at_c").isNull());
    }

    @Test
    void what_the_user_entered_stands_whole_and_files_without_their_folder() throws IOException {
        String name = "F".repeat(800);
        JsonNode record = json(new SyntheticJob().job("field", name).file("/home/somebody/willow.csv"));
        assertEquals(name, record.get("entered_by_user").get("field").textValue());
        assertEquals("willow.csv", record.get("inputs").get(0).get("file").textValue());
        assertFalse(record.toString().contains("somebody"));
        assertTrue(record.get("not_recorded").size() > 5);
    }

    @Test
    void without_a_cap_nothing_is_said_about_exceeding_one() throws IOException {
        JsonNode nitrogen = json(new SyntheticJob()).get("nitrogen");
        assertTrue(nitrogen.get("cap_exceeded").isNull());
        assertTrue(nitrogen.get("plan_kg_per_ha").isNull());
    }
}
