package io.rowledger.batch;

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
import io.rowledger.sim.SimResult;
import io.rowledger.sim.SimRig;
import io.rowledger.sim.SimSite;
import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
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

/** A small simulated season through the whole program. */
@TestInstance(Lifecycle.PER_CLASS)
@Tag("slow")
class BatchTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final SimRig BAR = SimRig.carried(6);
    private static final long JUNE_2_NOON = 1_780_423_200L;

    private Path season;
    private Path out;
    private Calls call;

    @BeforeAll
    void a_season(@TempDir Path temporary) throws IOException {
        season = temporary.resolve("season");
        out = temporary.resolve("season-results");
        SimResult north = simulate(31, 0);
        Files.createDirectories(season.resolve("two-oaks/north"));
        int half = north.records() / 2;
        Files.writeString(season.resolve("two-oaks/north/morning.csv"), north.logText(0, half));
        Files.writeString(season.resolve("two-oaks/north/noon.csv"), north.logText(half, north.records()));
        Files.writeString(season.resolve("two-oaks/north/boundary.geojson"), north.boundaryText());
        Files.writeString(season.resolve("rig.yaml"), north.rigText());
        Files.createDirectories(season.resolve("=1+1"));
        try (OutputStream gz = new GZIPOutputStream(Files.newOutputStream(season.resolve("=1+1/log.csv.gz")))) {
            gz.write(simulate(32, 1).logText().getBytes(StandardCharsets.UTF_8));
        }
        Files.createDirectories(season.resolve("bad"));
        Files.writeString(season.resolve("bad/log.csv"), "time,lat,lon\n");
        Files.createDirectories(season.resolve("copy"));
        Files.copy(season.resolve("=1+1/log.csv.gz"), season.resolve("copy/copy.csv.gz"));
        call = Calls.of("batch", season);
    }

    private static SimResult simulate(long seed, int place) {
        return new Scenario(seed, BAR, PassPlan.rectangle(80, 4, 0, BAR.widthM()))
                .gnss(GnssModel.rtk(2))
                .site(new SimSite(41.52 + 0.01 * place, -93.48, JUNE_2_NOON + 7200L * place))
                .job(Map.of("crop", "Corn"))
                .withoutGround()
                .run();
    }

    /** What was printed, with plain spaces. */
    private static String plain(Calls call) {
        return call.out().replace('\u00a0', ' ');
    }

    /** Every file below a folder with its bytes. */
    private static Map<String, byte[]> bytes(Path folder) throws IOException {
        Map<String, byte[]> bytes = new TreeMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                bytes.put(folder.relativize(file).toString(), Files.readAllBytes(file));
            }
        }
        return bytes;
    }

    private static void assertSame(Path expected, Path actual) throws IOException {
        Map<String, byte[]> a = bytes(expected);
        Map<String, byte[]> b = bytes(actual);
        assertEquals(a.keySet(), b.keySet());
        for (String file : a.keySet()) {
            assertArrayEquals(a.get(file), b.get(file), file);
        }
    }

    private static JsonNode json(Path file) throws IOException {
        return JSON.readTree(file.toFile());
    }

    @Test
    void shards_and_a_last_call_leave_the_bytes_of_one_run(@TempDir Path temporary) throws IOException {
        Path shared = temporary.resolve("season-results");
        for (String shard : List.of("2/3", "1/3", "3/3", "1/3")) {
            Calls part = Calls.of("batch", season, "--out", shared, "--shard", shard);
            assertTrue(part.status() == 0 || part.status() == 2, part.err());
            assertFalse(Files.exists(shared.resolve("batch-summary.pdf")));
        }
        assertEquals(call.status(), Calls.of("batch", season, "--out", shared).status());
        // The ledger of a season names its folder: the one run goes to the same place.
        Path sharded = Files.move(shared, temporary.resolve("sharded"));
        assertEquals(call.status(), Calls.of("batch", season, "--out", shared).status());
        assertSame(shared, sharded);
    }

    @Test
    void each_field_has_what_report_alone_writes_to_the_byte(@TempDir Path alone) throws IOException {
        Path north = season.resolve("two-oaks/north");
        Calls one = Calls.of(
                "report",
                north.resolve("morning.csv"),
                north.resolve("noon.csv"),
                "--rig",
                season.resolve("rig.yaml"),
                "--boundary",
                north.resolve("boundary.geojson"),
                "--out",
                alone.resolve("north"));
        assertEquals(0, one.status(), one.err());
        assertSame(alone.resolve("north"), out.resolve("two-oaks/north"));
        Calls other = Calls.of(
                "report",
                season.resolve("=1+1/log.csv.gz"),
                "--rig",
                season.resolve("rig.yaml"),
                "--out",
                alone.resolve("other"));
        assertEquals(0, other.status(), other.err());
        assertSame(alone.resolve("other"), out.resolve("=1+1"));
    }

    @Test
    void a_bad_log_is_said_and_stops_nothing() {
        assertEquals(2, call.status(), call.err());
        assertEquals(1, call.err().lines().count(), call.err());
        assertTrue(
                call.err().startsWith("rowledger: bad: " + season.resolve("bad/log.csv") + ":1: found "), call.err());
        for (String words : List.of(
                "4 jobs: 2 done now, 1 skipped (logs of another job), 1 not done: see below.",
                "Skipped, copy: Its logs are those of =1+1, and are counted there.",
                "Summary: " + out.resolve("batch-summary.pdf"))) {
            assertTrue(plain(call).contains(words), () -> words + " not in:\n" + call.out());
        }
        assertTrue(call.out().lines().anyMatch(line -> line.matches("bad +can't be used")), call.out());
        assertTrue(call.out()
                .lines()
                .anyMatch(line -> line.matches("[0-9.]+ s in all, [0-9.]+ s for each field done\\.")));
    }

    @Test
    void totals_are_the_sums_of_the_summaries_to_the_last_digit() throws IOException {
        BigDecimal volume = BigDecimal.ZERO;
        BigDecimal nitrogen = BigDecimal.ZERO;
        for (String job : List.of("two-oaks/north", "=1+1")) {
            JsonNode uan = json(out.resolve(job).resolve("summary.json")).at("/field/products/uan");
            volume = volume.add(new BigDecimal(uan.get("volume_l").asText()));
            nitrogen = nitrogen.add(new BigDecimal(uan.get("nitrogen_kg").asText()));
        }
        JsonNode ledger = json(out.resolve("season.json")).get("season");
        assertEquals(
                0, nitrogen.compareTo(new BigDecimal(ledger.get("nitrogen_kg").asText())));
        BigDecimal summed = BigDecimal.ZERO;
        for (JsonNode job : json(out.resolve("batch-summary.json")).get("jobs")) {
            JsonNode figures = job.get("figures");
            summed = figures.isNull()
                    ? summed
                    : summed.add(new BigDecimal(figures.get("volume_l").asText()));
        }
        assertEquals(0, volume.compareTo(summed));
        // 1 US gallon is 231 cubic inches of 2.54 cm.
        String gallons = volume.divide(new BigDecimal("3.785411784"), 1, java.math.RoundingMode.HALF_UP)
                .toPlainString();
        assertTrue(plain(call).contains(gallons + " gal of liquid"), call.out());
    }

    @Test
    void summary_and_ledger_keep_to_their_schemas_and_the_schemas_refuse_another_key() throws IOException {
        for (ResultFile kind : List.of(ResultFile.BATCH, ResultFile.BATCH_LEDGER)) {
            JsonNode file = json(out.resolve(kind.fileName()));
            assertEquals(Set.of(), Schemas.faults(kind, file));
            ((ObjectNode) file.get("jobs").get(0)).put("nitrogn_kg", 1);
            assertFalse(Schemas.faults(kind, file).isEmpty());
        }
    }

    @Test
    void a_spreadsheet_finds_no_formula_in_the_name_of_a_folder() throws IOException {
        try (CSVParser parser = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(Files.newBufferedReader(out.resolve("batch-summary.csv")))) {
            List<CSVRecord> lines = parser.getRecords();
            assertEquals(
                    List.of("'=1+1", "bad", "copy", "two-oaks/north"),
                    lines.stream().map(line -> line.get("job")).toList());
            assertEquals("'=1+1", lines.get(0).get("results"));
            double coveredM2 = json(out.resolve("two-oaks/north/summary.json"))
                    .at("/field/covered_area_m2")
                    .asDouble();
            // An acre is 4,046.8564224 m²; the cell has four decimals.
            assertEquals(
                    coveredM2 / 4046.8564224, Double.parseDouble(lines.get(3).get("covered_area[ac]")), 0.00006);
        }
    }

    @Test
    void the_page_says_what_was_done_what_was_skipped_and_what_failed_and_why() throws IOException {
        String text;
        try (PDDocument document =
                Loader.loadPDF(out.resolve("batch-summary.pdf").toFile())) {
            text = new PDFTextStripper()
                    .getText(document)
                    .replace('\u00a0', ' ')
                    .replaceAll("\\s+", " ");
        }
        for (String words : List.of(
                "Batch summary June 2, 2026",
                "4 jobs: 2 done now, 1 skipped (logs of another job), 1 not done: see below.",
                "Not done, and why Job Why bad",
                "copy Its logs are those of =1+1, and are counted there.",
                "two-oaks/north 2 logs as one job, rig.yaml of the folder above (season), boundary.geojson.",
                "This report is not legal advice")) {
            assertTrue(text.contains(words), () -> words + " not in:\n" + text);
        }
    }

    @Test
    void what_is_done_stays_until_its_rig_file_changes(@TempDir Path elsewhere) throws IOException {
        Path mine = elsewhere.resolve("season");
        copy(season.resolve("=1+1"), mine.resolve("hill"));
        Files.copy(season.resolve("rig.yaml"), mine.resolve("hill/rig.yaml"));
        copy(season.resolve("two-oaks/north"), mine.resolve("north"));
        Path rig = Files.copy(season.resolve("rig.yaml"), elsewhere.resolve("bar.yaml"));
        Path results = elsewhere.resolve("results");
        assertEquals(0, Calls.of("batch", mine, "--rig", rig, "--out", results).status());
        FileTime old = FileTime.fromMillis(1_000_000_000_000L);
        Files.setLastModifiedTime(results.resolve("hill/rows.csv"), old);
        Files.setLastModifiedTime(results.resolve("north/rows.csv"), old);
        Files.writeString(rig, Files.readString(rig).replaceAll("hitch_to_drop: \\S+ in", "hitch_to_drop: 111 in"));
        Calls again = Calls.of("batch", mine, "--rig", rig, "--out", results);
        assertEquals(0, again.status(), again.err());
        assertTrue(plain(again).contains("2 jobs: 1 done now, 1 as before (same files and options)."), again.out());
        assertEquals(old, Files.getLastModifiedTime(results.resolve("hill/rows.csv")));
        assertFalse(old.equals(Files.getLastModifiedTime(results.resolve("north/rows.csv"))));
        Path alone = elsewhere.resolve("alone");
        Calls.of(
                "report",
                mine.resolve("north/morning.csv"),
                mine.resolve("north/noon.csv"),
                "--rig",
                rig,
                "--boundary",
                mine.resolve("north/boundary.geojson"),
                "--out",
                alone);
        assertSame(alone, results.resolve("north"));
    }

    @Test
    void logs_in_one_folder_that_lie_far_apart_are_asked_about(@TempDir Path elsewhere) throws IOException {
        Path mine = elsewhere.resolve("season");
        copy(season.resolve("two-oaks/north"), mine.resolve("monday"));
        Files.delete(mine.resolve("monday/boundary.geojson"));
        Files.copy(season.resolve("=1+1/log.csv.gz"), mine.resolve("monday/hill.csv.gz"));
        Path rig = season.resolve("rig.yaml");
        Calls asked = Calls.of("batch", mine, "--rig", rig, "--out", elsewhere.resolve("out"));
        assertEquals(2, asked.status(), asked.out());
        // 0.01 degrees of latitude are 1,111 m (WGS 84 meridian at 41.5 degrees), less the field's own length.
        assertTrue(
                asked.err()
                        .matches("(?s)rowledger: monday: .*monday: found 3 logs whose work lies 1?[0-9]{3} m apart;.*"),
                asked.err());
        Calls said = Calls.of("batch", mine, "--rig", rig, "--each", "folder", "--out", elsewhere.resolve("out"));
        assertEquals(0, said.status(), said.err());
    }

    @Test
    void killed_in_mid_run_it_leaves_whole_results_and_goes_on_from_there(@TempDir Path elsewhere) throws Exception {
        Path mine = elsewhere.resolve("season");
        Files.createDirectories(mine);
        Files.copy(season.resolve("rig.yaml"), mine.resolve("rig.yaml"));
        SimResult one = simulate(33, 2);
        for (int i = 0; i < 8; i++) {
            Files.createDirectories(mine.resolve("field" + i));
            // Each a few records shorter than the one before, so that no two are the same log.
            Files.writeString(mine.resolve("field" + i + "/log.csv"), one.logText(0, one.records() - 3 * i));
        }
        Path results = elsewhere.resolve("results");
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        "io.rowledger.cli.Main",
                        "batch",
                        mine.toString(),
                        "--out",
                        results.toString())
                .redirectErrorStream(true)
                .redirectOutput(elsewhere.resolve("said.txt").toFile())
                .start();
        try {
            for (int i = 0; i < 12_000 && process.isAlive() && done(results) < 2; i++) {
                Thread.sleep(10);
            }
        } finally {
            process.destroyForcibly();
            assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        }
        int before = done(results);
        assertTrue(before >= 2 && before < 8, "done when killed: " + before);
        Calls again = Calls.of("batch", mine, "--out", results);
        assertEquals(0, again.status(), again.err());
        assertTrue(
                plain(again).contains((8 - before) + " done now, " + before + " as before"),
                () -> before + " were done: " + again.out());
        Path whole = elsewhere.resolve("whole");
        assertEquals(0, Calls.of("batch", mine, "--out", whole, "--jobs", 1).status());
        for (int i = 0; i < 8; i++) {
            assertSame(whole.resolve("field" + i), results.resolve("field" + i));
        }
        assertArrayEquals(
                Files.readAllBytes(whole.resolve("batch-ledger.json")),
                Files.readAllBytes(results.resolve("batch-ledger.json")));
    }

    private static int done(Path results) throws IOException {
        Path ledger = results.resolve("batch-ledger.json");
        return Files.exists(ledger) ? json(ledger).get("jobs").size() : 0;
    }

    private static void copy(Path from, Path to) throws IOException {
        Files.createDirectories(to);
        try (Stream<Path> files = Files.list(from)) {
            for (Path file : files.toList()) {
                Files.copy(file, to.resolve(file.getFileName()));
            }
        }
    }
}
