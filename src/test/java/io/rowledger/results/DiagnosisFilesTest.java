package io.rowledger.results;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.rowledger.document.pdf.Paper;
import io.rowledger.finding.UnusableInputException;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.common.SyntheticJob;
import io.rowledger.report.common.Views;
import io.rowledger.report.findings.SavedDiagnosis;
import io.rowledger.report.findings.SavedDiagnosis.ProductState;
import io.rowledger.units.UnitSystem;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code diagnosis.json} and {@code comparison.json}: figures by hand from {@link SyntheticJob}, schemas, and the way back. */
class DiagnosisFilesTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final ReportOptions OPTIONS =
            new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneId.of("America/Chicago"), null, "test");

    @TempDir
    Path folder;

    private static SavedDiagnosis saved(SyntheticJob job) {
        return Views.saved(job.build(), OPTIONS);
    }

    private static byte[] bytes(SavedDiagnosis saved) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        DiagnosisJson.write(saved, "test", out);
        return out.toByteArray();
    }

    private static byte[] comparison(SavedDiagnosis before, SavedDiagnosis after) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ComparisonJson.write(before, after, "test", out);
        return out.toByteArray();
    }

    private SavedDiagnosis readBack(byte[] json) throws IOException {
        Files.write(folder.resolve(ResultFile.DIAGNOSIS.fileName()), json);
        return DiagnosisReader.read(folder);
    }

    @Test
    void every_kind_of_job_keeps_to_the_schema() throws IOException {
        for (SyntheticJob job : List.of(
                new SyntheticJob(),
                new SyntheticJob().withFinding().withSecondProduct(),
                new SyntheticJob().withoutPasses(),
                new SyntheticJob().withFinding().withoutDensity())) {
            assertEquals(Set.of(), Schemas.faults(ResultFile.DIAGNOSIS, JSON.readTree(bytes(saved(job)))));
        }
    }

    @Test
    void comparisons_keep_to_their_schema() throws IOException {
        SavedDiagnosis faulty = saved(new SyntheticJob().withFinding());
        SavedDiagnosis even = saved(new SyntheticJob().even());
        for (byte[] json : List.of(comparison(faulty, even), comparison(even, faulty), comparison(faulty, faulty))) {
            assertEquals(Set.of(), Schemas.faults(ResultFile.COMPARISON, JSON.readTree(json)));
        }
        ObjectNode wrong = (ObjectNode) JSON.readTree(comparison(faulty, even));
        wrong.remove("gone");
        assertFalse(Schemas.faults(ResultFile.COMPARISON, wrong).isEmpty());
    }

    /** Row 7: half the evaluated bins at 0, half at 1; row 3 at 1.06; the first bin of a pass is not evaluated. */
    @Test
    void the_diagnosis_holds_rows_picture_and_findings() throws IOException {
        JsonNode json = JSON.readTree(bytes(saved(new SyntheticJob().withFinding())));
        assertEquals("2026-06-14T13:00:00Z", json.get("start").asText());
        // 250 m in 125 s.
        assertEquals(2, json.get("fastest_pass_mps").asDouble());
        JsonNode row7 = json.get("products").get(0).get("rows").get(6);
        assertEquals(-50, row7.get("median_deviation_pct").asDouble());
        assertEquals(50, row7.get("beyond_10_pct_share_pct").asDouble());
        assertEquals(1200, row7.get("evaluated_s").asDouble());
        JsonNode row3 = json.get("products").get(0).get("rows").get(2);
        assertEquals(1.06, row3.get("baseline").get("median_ratio").asDouble());
        assertTrue(row3.get("baseline").get("outlier").asBoolean());
        JsonNode picture = json.get("products").get(0).get("picture");
        assertEquals(250, picture.get("from_s").size());
        assertEquals(150, picture.get("from_s").get(25).asDouble());
        assertEquals(2, picture.get("pass").get(25).asInt());
        assertTrue(picture.get("deviation_pct").get(6).get(25).isNull());
        assertEquals(0, picture.get("deviation_pct").get(6).get(26).asDouble());
        assertEquals(-100, picture.get("deviation_pct").get(6).get(126).asDouble());
        JsonNode finding = json.get("findings").get(0);
        assertEquals("uan", finding.get("product").asText());
        assertEquals("2026-06-14T13:12:30Z", finding.get("from").asText());
        assertEquals(-40, finding.get("volume_l").asDouble());
        assertEquals("1", finding.get("figures").get(0).get("unit").asText());
    }

    @Test
    void what_is_written_reads_back_and_writes_the_same_bytes() throws IOException {
        for (SyntheticJob job : List.of(
                new SyntheticJob().withFinding().withSecondProduct(),
                new SyntheticJob().even(),
                new SyntheticJob().withoutDensity().withFinding())) {
            byte[] json = bytes(saved(job));
            assertArrayEquals(json, bytes(readBack(json)));
        }
    }

    /** Rows 7 and 8 on one meter: the file says so, since the figures of both are the meter's. */
    @Test
    void meters_of_several_rows_are_told_and_read_back() throws IOException {
        SavedDiagnosis plain = saved(new SyntheticJob());
        ProductState product = plain.products().get(0);
        SavedDiagnosis shared = new SavedDiagnosis(
                plain.field(),
                plain.rig(),
                plain.zone(),
                plain.startS(),
                plain.endS(),
                plain.rows(),
                plain.fastestPassMps(),
                List.of(new ProductState(
                        product.key(),
                        product.name(),
                        List.of(List.of(7, 8)),
                        product.picture(),
                        product.rows(),
                        product.baselines())),
                plain.findings(),
                plain.notes());
        byte[] json = bytes(shared);
        assertEquals(
                "[[7,8]]",
                JSON.readTree(json).get("products").get(0).get("meters").toString());
        assertEquals(Set.of(), Schemas.faults(ResultFile.DIAGNOSIS, JSON.readTree(json)));
        assertArrayEquals(json, bytes(readBack(json)));
    }

    @Test
    void a_comparison_says_what_is_gone_and_how_each_row_fared() throws IOException {
        JsonNode json =
                JSON.readTree(comparison(saved(new SyntheticJob().withFinding()), saved(new SyntheticJob().even())));
        assertEquals(1, json.get("gone").size());
        assertEquals("plugged", json.get("gone").get(0).get("kind").asText());
        assertEquals(0, json.get("new").size());
        JsonNode rows = json.get("products").get(0).get("rows");
        assertEquals("repaired", rows.get(6).get("verdict").asText());
        // 6 % over is more than 5 %.
        assertEquals("repaired", rows.get(2).get("verdict").asText());
        assertEquals("fine", rows.get(0).get("verdict").asText());
    }

    @Test
    void a_file_that_is_not_what_report_writes_is_refused_by_file_and_place() throws IOException {
        byte[] good = bytes(saved(new SyntheticJob().withFinding()));
        Map<String, Consumer<ObjectNode>> spoilt = new LinkedHashMap<>();
        spoilt.put("schema", json -> json.put("schema", "rowledger-diagnosis/9"));
        spoilt.put("rows", json -> json.put("rows", 0));
        spoilt.put("zone", json -> json.put("zone", "Middle/Nowhere"));
        spoilt.put("end", json -> json.put("end", "yesterday"));
        spoilt.put("products", json -> json.remove("products"));
        spoilt.put("findings[0].kind", json -> first(json).put("kind", "haunted"));
        spoilt.put("findings[0].rows[0]", json -> first(json).putArray("rows").add(11));
        spoilt.put("findings[0].confidence", json -> first(json).put("confidence", 7));
        spoilt.put("findings[0].to", json -> first(json).put("to", "2020-01-01T00:00:00Z"));
        spoilt.put(
                "products[0].picture.pass",
                json -> ((ArrayNode) json.get("products").get(0).get("picture").get("pass")).remove(0));
        spoilt.put(
                "products[0].picture.deviation_pct[3][4]",
                json -> ((ArrayNode) json.get("products")
                                .get(0)
                                .get("picture")
                                .get("deviation_pct")
                                .get(3))
                        .set(4, "x"));
        for (Map.Entry<String, Consumer<ObjectNode>> one : spoilt.entrySet()) {
            ObjectNode json = (ObjectNode) JSON.readTree(good);
            one.getValue().accept(json);
            UnusableInputException refused = assertThrows(
                    UnusableInputException.class, () -> readBack(JSON.writeValueAsBytes(json)), one.getKey());
            assertEquals(one.getKey(), refused.column());
            assertTrue(String.valueOf(refused.file()).endsWith(ResultFile.DIAGNOSIS.fileName()), refused.getMessage());
        }
    }

    private static ObjectNode first(ObjectNode json) {
        return (ObjectNode) json.get("findings").get(0);
    }
}
