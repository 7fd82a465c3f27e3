package io.rowledger.report.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.rowledger.analysis.Analysis;
import io.rowledger.analysis.JobFiles;
import io.rowledger.analysis.Pipeline;
import io.rowledger.analysis.Progress;
import io.rowledger.coverage.grid.ReceivedGrid;
import io.rowledger.document.pdf.Paper;
import io.rowledger.report.common.ReportOptions;
import io.rowledger.report.record.NitrogenRecord.Day;
import io.rowledger.report.record.NitrogenRecord.Liquid;
import io.rowledger.report.record.NitrogenRecord.MapClass;
import io.rowledger.report.record.NitrogenRecord.Sentence;
import io.rowledger.results.SummaryJson;
import io.rowledger.units.UnitSystem;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every figure on a record of two days, worked out once more from summary.json and the job block with exact definitions of the
 * units: 1 US gallon 3.785411784 L, 1 pound 0.45359237 kg, 1 acre 4046.8564224 m² (NIST SP 811).
 */
@Tag("slow")
class RecordRecomputedTest {
    private static final double L = 3.785411784;
    private static final double LB = 0.45359237;
    private static final double AC = 4046.8564224;
    /** Of the job below: pounds a gallon, fraction of nitrogen. */
    private static final double LB_PER_GAL = 11.06;

    private static final double N = 0.32;
    /** In the turn between passes 6 and 7 of the sample. */
    private static final Instant NIGHT = Instant.parse("2026-06-03T14:23:30Z");

    private static final String JOB = """
              state: Ohio
              zone: America/Chicago
              order: {uan: 560 gal}
              tickets:
                - {number: A1, date: 2026-06-03, product: uan, weight: 3000 lb}
                - {number: A2, date: 2026-06-04, product: uan, weight: 3100 lb}
              plan: 180 lb/ac
              earlier:
                - {date: 2026-04-28, what: Starter, rate: 5 gal/ac, density: 11.65 lb/gal, analysis: 10-34-0}
            """;

    private static Analysis analysis;
    private static NitrogenRecord record;
    private static JsonNode field;
    private static JsonNode summary;

    @BeforeAll
    static void twoDays(@TempDir Path folder) throws IOException {
        Path sample = Path.of("sample-logs/plugged-row");
        List<String> lines = new ArrayList<>();
        for (String line : Files.readAllLines(sample.resolve("log.csv"))) {
            int comma = line.indexOf(',');
            boolean header = line.startsWith("time");
            Instant time = header ? Instant.EPOCH : Instant.parse(line.substring(0, comma));
            lines.add(header || time.isBefore(NIGHT) ? line : time.plus(Duration.ofDays(1)) + line.substring(comma));
        }
        Files.write(folder.resolve("log.csv"), lines);
        Files.writeString(
                folder.resolve("rig.yaml"),
                Files.readString(sample.resolve("rig.yaml")).stripTrailing() + "\n" + JOB);
        analysis = Pipeline.analyze(
                new JobFiles(
                        List.of(folder.resolve("log.csv")),
                        folder.resolve("rig.yaml"),
                        sample.resolve("boundary.geojson")),
                2,
                Progress.SILENT);
        ReportOptions options =
                new ReportOptions(UnitSystem.US, Paper.LETTER, ZoneId.of("America/Chicago"), null, "test");
        record = NitrogenRecordReport.of(analysis, options).content();
        ByteArrayOutputStream json = new ByteArrayOutputStream();
        SummaryJson.write(analysis, "test", json);
        summary = new ObjectMapper().readTree(json.toByteArray());
        field = summary.get("field");
    }

    private static String rounded(double value, int decimals) {
        String plain = BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
        int point = plain.indexOf('.') < 0 ? plain.length() : plain.indexOf('.');
        StringBuilder out = new StringBuilder(plain);
        for (int i = point - 3; i > 0; i -= 3) {
            out.insert(i, ',');
        }
        return out.toString();
    }

    private static double product(String name) {
        return field.get("products").get("uan").get(name).asDouble();
    }

    private static double gallons() {
        return product("volume_l") / L;
    }

    private static double acres() {
        return field.get("covered_area_m2").asDouble() / AC;
    }

    private static String all(List<Sentence> sentences) {
        return sentences.stream()
                .map(Sentence::text)
                .collect(Collectors.joining(" "))
                .replace('\u00a0', ' ');
    }

    private static void assertHolds(String words, String text) {
        assertTrue(text.contains(words), () -> words + " not in: " + text);
    }

    @Test
    void gallons_times_density_times_analysis_is_the_nitrogen_and_acres_are_the_one_denominator() {
        double pounds = gallons() * LB_PER_GAL * N;
        assertEquals(product("nitrogen_kg") / LB, pounds, 1e-3 * pounds);
        Liquid uan = record.liquids().get(0);
        assertEquals(rounded(gallons(), 1), uan.volume());
        assertEquals(rounded(gallons() / acres(), 1), uan.rate());
        assertEquals(rounded(pounds, 0), uan.nitrogen());
        assertEquals(rounded(pounds / acres(), 0), uan.nitrogenRate());
        assertEquals("32-0-0", uan.analysis());
        assertHolds(
                rounded(gallons(), 1) + " gal × 11.06 lb/gal × 32% N = " + rounded(pounds, 0) + " lb N.",
                all(record.liquidNotes()));
        String answer = all(record.answer());
        assertHolds(
                rounded(pounds / acres(), 0) + " pounds of nitrogen an acre went onto " + rounded(acres(), 2)
                        + " acres, " + rounded(pounds, 0) + " pounds in all: " + rounded(gallons(), 1)
                        + " gal of UAN 32-0-0.",
                answer);
        JsonNode perHa = field.get("intervals").get("nitrogen_kg_per_ha");
        double toLbPerAc = AC / 10_000 / LB;
        assertHolds(
                rounded(Math.floor(perHa.get("low").asDouble() * toLbPerAc), 0) + " and "
                        + rounded(Math.ceil(perHa.get("high").asDouble() * toLbPerAc), 0) + " lb N/ac",
                answer);
    }

    @Test
    void tickets_and_order_stand_beside_the_meters() {
        Liquid uan = record.liquids().get(0);
        double delivered = (3000 + 3100) / LB_PER_GAL;
        assertEquals("560.0", uan.ordered());
        assertEquals(rounded(delivered, 1), uan.delivered());
        double off = (delivered / gallons() - 1) * 100;
        assertHolds(
                rounded(delivered, 1) + " gal delivered on 2 load tickets (no. A1, A2)†, "
                        + rounded(Math.abs(delivered - gallons()), 1) + " gal (" + rounded(Math.abs(off), 1)
                        + "%) " + (off > 0 ? "more" : "less") + " than the meters counted.",
                all(record.liquidNotes()));
    }

    @Test
    void each_day_has_its_local_date_and_the_days_add_up() {
        List<Day> days = record.days();
        assertEquals(3, days.size());
        assertEquals("June 3, 2026", days.get(0).date());
        assertEquals("June 4, 2026", days.get(1).date());
        assertEquals("9:00:09 AM to 9:23:16 AM", days.get(0).hours().replace('\u00a0', ' '));
        double[] liters = new double[2];
        double[] sweptM2 = new double[2];
        for (JsonNode pass : summary.get("passes")) {
            int day = Instant.parse(pass.get("start").asText()).isBefore(NIGHT) ? 0 : 1;
            liters[day] += pass.get("products").get("uan").get("volume_l").asDouble();
            sweptM2[day] += pass.get("swept_area_m2").asDouble();
        }
        // Each printed figure is the step between two rounded sums: within one unit of its last place.
        for (int d = 0; d < 2; d++) {
            assertEquals(liters[d] / L, number(days.get(d).volumes()), 0.11);
            assertEquals(sweptM2[d] / AC, number(days.get(d).swept()), 0.011);
            assertEquals(liters[d] / L * LB_PER_GAL * N, number(days.get(d).nitrogen()), 1.1);
        }
        Day total = days.get(2);
        assertEquals(
                number(total.volumes()),
                number(days.get(0).volumes()) + number(days.get(1).volumes()),
                1e-9);
        assertEquals(
                number(total.swept()),
                number(days.get(0).swept()) + number(days.get(1).swept()),
                1e-9);
        assertEquals(
                number(total.nitrogen()),
                number(days.get(0).nitrogen()) + number(days.get(1).nitrogen()),
                1e-9);
        assertEquals(record.liquids().get(0).volume(), total.volumes());
        assertEquals(record.liquids().get(0).nitrogen(), total.nitrogen());
    }

    private static double number(String printed) {
        return Double.parseDouble(printed.replace(",", ""));
    }

    @Test
    void ground_and_shares_are_those_of_the_summary() {
        String ground = record.ground().stream()
                .map(NitrogenRecord.Item::value)
                .collect(Collectors.joining(" | "))
                .replace('\u00a0', ' ');
        assertHolds(rounded(acres(), 2) + " ac, each place once", ground);
        assertHolds(rounded(field.get("boundary_area_m2").asDouble() / AC, 2) + " ac inside the boundary", ground);
        assertHolds(rounded(field.get("skip_area_m2").asDouble() / AC, 2) + " ac in ", ground);
        assertHolds(rounded(field.get("overlap_area_m2").asDouble() / AC, 2) + " ac in ", ground);
    }

    /**
     * Liquid in a cell times density and analysis, and the starter's 5.825 lb N/ac with it, over the plan of 180 lb N/ac: shares of
     * covered ground below 50, 80, 90, 110, 120 and 150 %, and above.
     */
    @Test
    void class_shares_are_the_ground_between_their_bounds() {
        ReceivedGrid grid = analysis.coverage().grid();
        double starter = 5 * 11.65 * 0.10;
        double[] bounds = {0.5, 0.8, 0.9, 1.1, 1.2, 1.5};
        double[] areaM2 = new double[7];
        double groundM2 = 0;
        for (int i = 0; i < grid.coveredM2().length; i++) {
            double cellM2 = grid.coveredM2()[i];
            // A sliver of a cell, under a hundredth, has no rate of its own.
            if (cellM2 >= 0.01 * grid.cellM() * grid.cellM()) {
                double lbPerAc = grid.volumeL()[0][i] / L * LB_PER_GAL * N / (cellM2 / AC) + starter;
                int k = 0;
                while (k < 6 && lbPerAc > bounds[k] * 180) {
                    k++;
                }
                areaM2[k] += cellM2;
                groundM2 += cellM2;
            }
        }
        List<MapClass> classes = record.map().classes();
        assertEquals(7, classes.size());
        for (int k = 0; k < 7; k++) {
            assertEquals(
                    areaM2[k] / groundM2 * 100,
                    number(classes.get(k).share().replace("%", "")),
                    0.0501,
                    classes.get(k).label());
        }
        String[] labels = {
            "up to 84", "84 to 138", "138 to 156", "156 to 192", "192 to 210", "210 to 264", "more than 264"
        };
        for (int k = 0; k < 7; k++) {
            // 180 × 0.5 − 5.825 = 84.175, × 0.8 = 138.175, × 0.9 = 156.175, × 1.1 = 192.175 and so on.
            assertEquals(labels[k], classes.get(k).label());
        }
        String ground = record.ground().stream()
                .map(NitrogenRecord.Item::value)
                .collect(Collectors.joining(" | "))
                .replace('\u00a0', ' ');
        double underM2 = areaM2[0] + areaM2[1] + areaM2[2];
        double overM2 = areaM2[4] + areaM2[5] + areaM2[6];
        assertHolds(
                rounded(areaM2[3] / groundM2 * 100, 1) + "% of the covered ground within 10%, "
                        + rounded(underM2 / groundM2 * 100, 1) + "% under, " + rounded(overM2 / groundM2 * 100, 1)
                        + "% over",
                ground);
    }

    /** 5 gal/ac × 11.65 lb/gal × 10 % = 5.825 lb N/ac of starter. */
    @Test
    void the_budget_adds_the_starter_and_compares_with_the_plan() {
        double job = gallons() * LB_PER_GAL * N / acres();
        double starter = 5 * 11.65 * 0.10;
        List<String> perArea = record.budget().lines().stream()
                .map(NitrogenRecord.BudgetLine::perArea)
                .toList();
        assertTrue(perArea.contains(rounded(job, 0)), perArea.toString());
        assertTrue(perArea.contains(rounded(starter, 1)), perArea.toString());
        assertTrue(perArea.contains(rounded(job + starter, 0)), perArea.toString());
        assertEquals("180", record.budget().limits().get(0).perArea());
    }

    @Test
    void a_meter_in_question_stands_beside_the_gallons_and_every_fault_on_page_one() {
        String notes = all(record.liquidNotes());
        String answer = all(record.answer());
        int meters = 0;
        for (JsonNode finding : summary.get("findings")) {
            String gallons = rounded(Math.abs(finding.get("volume_l").asDouble()) / L, 1) + " ";
            assertHolds(gallons, answer);
            if (finding.get("kind").asText().startsWith("meter_")) {
                meters++;
                assertHolds(
                        "In question: The meter of row "
                                + finding.get("rows").get(0).asInt(),
                        notes);
                assertHolds(gallons, notes);
            }
        }
        assertEquals(1, meters, "the sample has one meter that reads off");
    }

    @Test
    void the_missing_items_are_those_of_ohio_with_source_and_date() {
        assertHolds("Ohio Administrative Code 901:5-4-04, codes.ohio.gov, read 2026-11-28", record.missingIntro());
        List<String> items =
                record.missing().stream().map(NitrogenRecord.Missing::item).toList();
        assertTrue(items.contains("Certificate holder") && items.contains("Forecast for the next day"), "" + items);
        assertTrue(!items.contains("Customer"), "" + items);
    }
}
