package io.rowledger.report.season;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.rowledger.cli.Calls;
import io.rowledger.results.ResultFile;
import io.rowledger.results.Schemas;
import io.rowledger.sim.GnssModel;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimProduct;
import io.rowledger.sim.SimRig;
import io.rowledger.sim.SimSite;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.io.TempDir;

/** Three simulated jobs on two fields, reported and added up. */
@TestInstance(Lifecycle.PER_CLASS)
@Tag("slow")
class SeasonTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final long JUNE_2_NOON = 1_780_423_200L;
    private static final long DAY_S = 86_400;

    private Path folder;
    private Path spring;
    private Path june;
    private Path hill;
    private Path ledger;

    @BeforeAll
    void report_on_three_jobs(@TempDir Path temporary) {
        folder = temporary;
        Map<String, String> north = Map.of("farm", "Two Oaks", "field", "North bottom");
        Map<String, String> northInJune = new LinkedHashMap<>(north);
        // The first is the job of May 3 itself, the second came before the ledger began.
        northInJune.put(
                "earlier",
                "- {date: 2026-05-03, what: First pass, nitrogen: 50 lb/ac}\n"
                        + "- {date: 2025-11-04, what: In the fall, nitrogen: 20 lb/ac}");
        northInJune.put("plan", "180 lb/ac");
        northInJune.put("cap", "190 lb/ac");
        spring = report("spring", 21, -30, north, SimProduct.uan32(15));
        june = report("june", 22, 0, northInJune, SimProduct.uan32(30), SimProduct.ats(5));
        hill = report("hill", 23, 2, Map.of("farm", "Two Oaks", "field", "=HYPERLINK(1)"), SimProduct.uan32(40));
        ledger = folder.resolve("ledger");
        Calls call = Calls.of("season", hill, june, spring, "--out", ledger);
        assertEquals(0, call.status(), call.err());
    }

    private Path report(String name, long seed, int day, Map<String, String> job, SimProduct... products) {
        Path at = folder.resolve("logs").resolve(name);
        SimRig bar = SimRig.carried(6);
        new Scenario(seed, bar, PassPlan.rectangle(90, 4, 0, bar.widthM()))
                .products(products)
                .gnss(GnssModel.rtk(2))
                .site(new SimSite(41.52, -93.48, JUNE_2_NOON + day * DAY_S))
                .job(job)
                .withoutGround()
                .run()
                .writeTo(at);
        Path out = folder.resolve(name);
        Calls call = Calls.of(
                "report",
                at.resolve("log.csv"),
                "--rig",
                at.resolve("rig.yaml"),
                "--boundary",
                at.resolve("boundary.geojson"),
                "--for",
                "applicator",
                "--out",
                out);
        assertEquals(0, call.status(), call.err());
        return out;
    }

    private static JsonNode summary(Path results) throws IOException {
        return JSON.readTree(results.resolve("summary.json").toFile());
    }

    private static JsonNode season(Path ledger) throws IOException {
        return JSON.readTree(ledger.resolve("season.json").toFile());
    }

    private static BigDecimal sum(String product, String figure, Path... results) throws IOException {
        BigDecimal sum = BigDecimal.ZERO;
        for (Path one : results) {
            JsonNode put = summary(one).get("field").get("products").path(product);
            sum = put.has(figure) ? sum.add(new BigDecimal(put.get(figure).asText())) : sum;
        }
        return sum.stripTrailingZeros();
    }

    private static String text(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return new PDFTextStripper()
                    .getText(document)
                    .replace('\u00a0', ' ')
                    .replaceAll("\\s+", " ");
        }
    }

    @Test
    void totals_are_the_sums_of_the_summaries_to_the_last_digit() throws IOException {
        JsonNode uan = season(ledger).get("products").get(1);
        JsonNode ats = season(ledger).get("products").get(0);
        assertEquals("UAN 32-0-0", uan.get("name").asText());
        for (String figure : List.of("volume_l", "nitrogen_kg", "mass_kg")) {
            assertEquals(
                    sum("uan", figure, spring, june, hill),
                    new BigDecimal(uan.get(figure).asText()).stripTrailingZeros());
            assertEquals(
                    sum("ats", figure, june), new BigDecimal(ats.get(figure).asText()).stripTrailingZeros());
        }
        BigDecimal all = sum("uan", "nitrogen_kg", spring, june, hill).add(sum("ats", "nitrogen_kg", june));
        assertEquals(
                all.stripTrailingZeros(),
                new BigDecimal(season(ledger).get("season").get("nitrogen_kg").asText()).stripTrailingZeros());
        assertEquals(
                sum("ats", "sulfur_kg", june),
                new BigDecimal(season(ledger).get("season").get("sulfur_kg").asText()).stripTrailingZeros());
    }

    @Test
    void the_ledger_keeps_to_its_schema_and_the_schema_refuses_another_key() throws IOException {
        ObjectNode season = (ObjectNode) season(ledger);
        assertEquals(Set.of(), Schemas.faults(ResultFile.SEASON, season));
        ((ObjectNode) season.get("season")).put("nitrogn_kg", 1);
        assertFalse(Schemas.faults(ResultFile.SEASON, season).isEmpty());
    }

    /** Each row's figures are those of its jobs' own diagnosis.json, in time order. */
    @Test
    void rows_are_followed_over_the_jobs_that_told_them_apart() throws IOException {
        JsonNode bars = season(ledger).get("bars");
        assertFalse(bars.isEmpty());
        for (JsonNode bar : bars) {
            for (int j = 0; j < bar.get("jobs").size(); j++) {
                Path results = Path.of(bar.get("jobs").get(j).asText()).getFileName();
                JsonNode diagnosis = JSON.readTree(
                        ledger.resolveSibling(results).resolve("diagnosis.json").toFile());
                assertEquals(diagnosis.get("rig"), bar.get("rig"));
                JsonNode rows = null;
                for (JsonNode product : diagnosis.get("products")) {
                    rows = product.get("name").equals(bar.get("product")) ? product.get("rows") : rows;
                }
                assertEquals(rows.size(), bar.get("rows").size());
                for (int r = 0; r < rows.size(); r++) {
                    JsonNode job = bar.get("rows").get(r).get("jobs").get(j);
                    assertEquals(rows.get(r).get("row"), bar.get("rows").get(r).get("row"));
                    assertEquals(rows.get(r).get("baseline").get("median_ratio"), job.get("ratio"));
                    assertEquals(
                            1 + rows.get(r).get("median_deviation_pct").asDouble() / 100,
                            job.get("overall_ratio").asDouble(),
                            1e-4);
                }
            }
        }
    }

    @Test
    void what_the_ledger_holds_itself_is_not_counted_as_earlier() throws IOException {
        JsonNode north = season(ledger).get("fields").get(1);
        assertEquals("North bottom", north.get("field").asText());
        // 20 lb/ac over the boundary's ground; the 50 lb/ac of May 3 are the first job.
        double earlierKg = 20 * 0.45359237 / 4046.8564224 * north.get("area_m2").asDouble();
        assertEquals(earlierKg, north.get("earlier_nitrogen_kg").asDouble(), 0.01);
        assertTrue(season(ledger).get("notes").toString().contains("is taken to be the job of that day in"), "said so");
        assertEquals(2, north.get("jobs").size());
        // 180 lb/ac x 1.120851156
        assertEquals(201.75, north.get("plan_nitrogen_kg_per_ha").asDouble());
    }

    @Test
    void a_spreadsheet_finds_no_formula_in_a_name() throws IOException {
        try (CSVParser parser = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(Files.newBufferedReader(ledger.resolve("season.csv")))) {
            List<CSVRecord> lines = parser.getRecords();
            assertEquals(
                    List.of("job", "job", "job", "job", "field", "field", "product", "product", "season"),
                    lines.stream().map(line -> line.get("line")).toList());
            assertEquals("'=HYPERLINK(1)", lines.get(0).get("field"));
            assertEquals("'=HYPERLINK(1)", lines.get(4).get("field"));
            double totalKg =
                    season(ledger).get("season").get("total_nitrogen_kg").asDouble();
            // Both are rounded to thousandths, and a pound is 0.45359237 kg.
            assertEquals(totalKg / 0.45359237, Double.parseDouble(lines.get(8).get("total_nitrogen[lb]")), 0.0017);
        }
    }

    @Test
    void the_page_says_what_was_put_on_where_and_what_to_know() throws IOException {
        String text = text(ledger.resolve("season.pdf"));
        double kg = season(ledger).get("season").get("nitrogen_kg").asDouble();
        String pounds = new BigDecimal(kg / 0.45359237)
                .setScale(0, java.math.RoundingMode.HALF_UP)
                .toPlainString();
        for (String words : List.of(
                "Nitrogen ledger May 3, 2026 to June 4, 2026",
                "3 jobs on 2 fields: " + pounds + " lb N applied on",
                "Bounds add up from job to job",
                "North bottom Two Oaks 2 ",
                "Season 3 " + pounds + " ",
                "UAN 32-0-0 3 ",
                "ATS 12-0-0-26S 1 ",
                "is taken to be the job of that day in",
                "This report is not legal advice",
                "local nutrient and setback rules and licensed practice come first",
                "Defer to your local rules.")) {
            assertTrue(text.contains(words), () -> words + " not in:\n" + text);
        }
    }

    @Test
    void the_same_results_give_the_same_bytes_and_metric_speaks_of_hectares() throws IOException {
        Path again = folder.resolve("again");
        assertEquals(0, Calls.of("season", hill, june, spring, "--out", again).status());
        for (String file : List.of("season.pdf", "season.csv", "season.json")) {
            assertArrayEquals(Files.readAllBytes(ledger.resolve(file)), Files.readAllBytes(again.resolve(file)), file);
        }
        Path metric = folder.resolve("metric");
        assertEquals(
                0,
                Calls.of("season", hill, june, "--units", "metric", "--out", metric)
                        .status());
        assertTrue(text(metric.resolve("season.pdf")).contains("kg N/ha"));
    }

    @Test
    void a_folder_named_twice_is_counted_once_and_said() throws IOException {
        Path out = folder.resolve("twice");
        Calls call = Calls.of("season", hill, hill.resolve("../hill"), "--out", out);
        assertEquals(0, call.status(), call.err());
        assertTrue(call.out().contains("was named twice and is counted once."), call.out());
        assertEquals(
                sum("uan", "nitrogen_kg", hill),
                new BigDecimal(season(out).get("season").get("nitrogen_kg").asText()).stripTrailingZeros());
    }

    @Test
    void results_of_an_older_version_are_refused_with_one_message() throws IOException {
        Path old = Files.createDirectories(folder.resolve("old"));
        ObjectNode summary = (ObjectNode) summary(hill);
        summary.remove("job");
        JSON.writeValue(old.resolve("summary.json").toFile(), summary);
        Path out = folder.resolve("never");
        Calls call = Calls.of("season", june, old, "--out", out);
        assertEquals(2, call.status(), call.err());
        assertEquals(
                "rowledger: " + old.resolve("summary.json")
                        + ":job: found nothing; expected what report writes there. Hint: run report on the log"
                        + " again, and leave its results as they are.",
                call.err().strip());
        assertFalse(Files.exists(out));
    }
}
