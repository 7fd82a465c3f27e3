package io.rowledger.workbench;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.rowledger.workbench.Visitor.Answer;
import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Fields at work: progress, stop, what is left when something breaks off, and files that are traps. */
@Tag("slow")
class WorkbenchRunTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int SHORT_LINES = 1500;

    @TempDir
    private Path around;

    private Path season;
    private Workbench workbench;
    private final List<Path> shown = new CopyOnWriteArrayList<>();
    private Visitor visitor;
    private final List<Throwable> failures = new CopyOnWriteArrayList<>();

    @BeforeEach
    void open() throws IOException {
        season = Files.createDirectory(around.resolve("season"));
        start();
    }

    private void start() throws IOException {
        workbench = Workbench.start(new Workbench.Settings(
                season,
                0,
                "test",
                Duration.ofMinutes(10),
                Workbench.UploadLimits.DEFAULTS,
                place -> shown.add(place.toAbsolutePath()),
                failures::add));
        visitor = Visitor.at(workbench.link());
    }

    @AfterEach
    void close() {
        workbench.close();
        assertEquals(List.of(), failures);
    }

    private void sample(String field, String... files) throws IOException {
        Path place = Files.createDirectories(season.resolve(field));
        for (String file : files) {
            Files.copy(Path.of("sample-logs/plugged-row").resolve(file), place.resolve(file));
        }
    }

    /** A field with the first quarter hour of the sample, for tests that are not about what its review says. */
    private void shortSample(String field) throws IOException {
        sample(field, "rig.yaml");
        List<String> lines = Files.readAllLines(Path.of("sample-logs/plugged-row/log.csv"));
        Files.write(season.resolve(field).resolve("log.csv"), lines.subList(0, Math.min(SHORT_LINES, lines.size())));
    }

    private JsonNode work() throws IOException {
        return JSON.readTree(visitor.get("/api/work").bytes());
    }

    private JsonNode ended() throws Exception {
        for (int i = 0; i < 1200; i++) {
            JsonNode work = work();
            if (!work.path("busy").asBoolean()) {
                return work;
            }
            Thread.sleep(50);
        }
        throw new AssertionError("still at work after a minute");
    }

    @Test
    void progress_is_told_by_phase_and_a_stop_leaves_nothing_half_done() throws Exception {
        sample("north", "log.csv", "rig.yaml");
        StringBuilder told = new StringBuilder();
        try (Socket page = visitor.open()) {
            Visitor.write(page, visitor.head("GET", "/api/events", 0));
            Visitor.firstBytes(page.getInputStream());
            assertEquals(
                    200,
                    visitor.json("POST", "/api/work", "{\"fields\": [\"north\"]}")
                            .status());
            while (told.indexOf("computing coverage") < 0) {
                told.append(Visitor.firstBytes(page.getInputStream()));
            }
        }
        assertTrue(told.indexOf("reading the log") >= 0 && told.indexOf("\"percent\":40") >= 0, told.toString());
        // The browser is gone and the work goes on, until it is stopped.
        assertEquals(200, visitor.json("POST", "/api/work/stop", "{}").status());
        JsonNode line = ended().path("lines").get(0);
        assertEquals("stopped", line.path("state").asText());
        assertFalse(Files.exists(season.resolve("results/north")));
        assertEquals(
                200,
                visitor.json("POST", "/api/work", "{\"fields\": [\"north\"]}").status());
        assertEquals("done", ended().path("lines").get(0).path("state").asText());
        assertTrue(Files.isRegularFile(season.resolve("results/north/review.html")));
        JsonNode field = JSON.readTree(visitor.get("/api/fields/north").bytes());
        assertTrue(field.path("result").path("verdict").get(0).asText().contains("row 7"), field.toString());
        assertFalse(field.path("old").asBoolean());
        Answer page = visitor.with("Origin", null).get("/results/north/review.html");
        assertTrue(page.headers().get("content-security-policy").startsWith("sandbox allow-scripts"));
        Answer pdf = visitor.with("Origin", null).get("/results/north/pass-review.pdf");
        assertEquals("application/pdf", pdf.headers().get("content-type"));
        assertEquals(Files.size(season.resolve("results/north/pass-review.pdf")), pdf.bytes().length);
    }

    @Test
    void a_process_that_is_killed_in_mid_run_loses_nothing_and_the_next_one_goes_on() throws Exception {
        shortSample("north");
        shortSample("south");
        Path south = season.resolve("south/log.csv");
        Files.writeString(south, Files.readString(south).replace(",41.53", ",41.54"));
        visitor.json("POST", "/api/work", "{\"fields\": [\"north\"]}");
        ended();
        workbench.close();
        byte[] done = Files.readAllBytes(season.resolve("results/north/summary.json"));
        // Half an upload, as a kill leaves it too.
        Files.writeString(season.resolve(".rowledger/part-1.tmp"), "half");
        killedWhileRunning("south");
        assertArrayEquals(done, Files.readAllBytes(season.resolve("results/north/summary.json")));
        assertFalse(Files.exists(season.resolve("results/south")));
        start();
        assertEquals(
                200, visitor.json("POST", "/api/work", "{\"fields\": null}").status());
        JsonNode lines = ended().path("lines");
        assertEquals(2, lines.size());
        lines.forEach(line -> assertEquals("done", line.path("state").asText(), line.toString()));
        assertArrayEquals(done, Files.readAllBytes(season.resolve("results/north/summary.json")));
        assertTrue(Files.isRegularFile(season.resolve("results/south/review.html")));
        assertTrue(Files.isRegularFile(season.resolve("results/season.pdf")));
        assertFalse(Files.exists(season.resolve(".rowledger/part-1.tmp")));
        try (Stream<Path> all = Files.walk(season)) {
            assertEquals(
                    List.of(),
                    all.filter(each -> each.toString().contains("job-")
                                    || each.toString().endsWith(".tmp"))
                            .toList());
        }
        compared();
    }

    /** Starts the program over the season folder, runs a field and kills the process while it is at work. */
    private void killedWhileRunning(String field) throws Exception {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("kills.classpath", System.getProperty("java.class.path")),
                        "io.rowledger.cli.Main",
                        "open",
                        season.toString(),
                        "--no-browser")
                .redirectErrorStream(true)
                .start();
        try (BufferedReader out = process.inputReader(StandardCharsets.UTF_8)) {
            String link = out.lines()
                    .filter(line -> line.startsWith("http://"))
                    .findFirst()
                    .orElseThrow();
            Visitor other = Visitor.at(link);
            other.json("POST", "/api/work", "{\"fields\": [\"" + field + "\"]}");
            JsonNode line =
                    JSON.readTree(other.get("/api/work").bytes()).path("lines").path(0);
            while (line.path("percent").asInt() < 40) {
                assertFalse(line.path("state").asText().equals("failed"), line.toString());
                line = JSON.readTree(other.get("/api/work").bytes())
                        .path("lines")
                        .path(0);
            }
            assertEquals("running", line.path("state").asText());
        } finally {
            process.destroyForcibly();
            process.waitFor();
        }
    }

    /** Both jobs of the season beside each other, and the folder of one shown by the system. */
    private void compared() throws Exception {
        Answer compared = visitor.json("POST", "/api/compare", "{\"before\": \"north\", \"after\": \"south\"}");
        assertEquals(200, compared.status(), compared.text());
        JsonNode comparison = JSON.readTree(compared.bytes());
        assertTrue(comparison.path("answer").size() > 0, compared.text());
        Path pdf = season.resolve("results")
                .resolve(comparison.path("folder").asText())
                .resolve("comparison.pdf");
        assertTrue(Files.size(pdf) > 1000, pdf.toString());
        String same = "{\"before\": \"north\", \"after\": \"north\"}";
        assertEquals(400, visitor.json("POST", "/api/compare", same).status());
        assertEquals(200, visitor.json("POST", "/api/fields/north/show", "{}").status());
        assertEquals(List.of(season.resolve("results/north").toRealPath()), shown);
        assertEquals(409, visitor.json("POST", "/api/fields/east/show", "{}").status());
        assertEquals(1, shown.size());
    }

    @Test
    void a_second_field_of_the_same_files_is_told_where_its_results_are() throws Exception {
        shortSample("north");
        shortSample("south");
        visitor.json("POST", "/api/work", "{\"fields\": [\"north\"]}");
        ended();
        visitor.json("POST", "/api/work", "{\"fields\": [\"south\"]}");
        JsonNode line = ended().path("lines").get(0);
        assertEquals("failed", line.path("state").asText(), line.toString());
        assertTrue(line.path("message").asText().contains("north"), line.toString());
    }

    @Test
    void a_link_to_a_file_outside_is_neither_shown_nor_run() throws Exception {
        sample("north", "rig.yaml");
        Path secret = Files.writeString(around.resolve("secret.csv"), "time,lat,lon\nnot,for,you\n");
        try {
            Files.createSymbolicLink(season.resolve("north/log.csv"), secret);
        } catch (IOException | UnsupportedOperationException e) {
            Assumptions.abort("this system makes no links");
        }
        for (String path : List.of("/api/fields/north", "/api/fields/north/logs", "/api/fields/north/columns")) {
            Answer answer = visitor.get(path);
            assertEquals(403, answer.status(), path);
            assertFalse(answer.text().contains("not,for,you"));
        }
        assertEquals(
                403, visitor.json("POST", "/api/work", "{\"fields\": null}").status());
        assertEquals(403, visitor.json("POST", "/api/fields/north/check", "{}").status());
        Files.createDirectories(season.resolve("results"));
        Files.createSymbolicLink(season.resolve("results/out.csv"), secret);
        assertEquals(403, visitor.with("Origin", null).get("/results/out.csv").status());
        Files.delete(secret);
    }

    @Test
    void a_log_that_unpacks_without_end_is_refused_in_words() throws Exception {
        ByteArrayOutputStream bomb = new ByteArrayOutputStream();
        try (OutputStream out = new GZIPOutputStream(bomb)) {
            out.write("time,lat,lon,flow_01[gal/min]\n".getBytes(StandardCharsets.UTF_8));
            byte[] zeros = new byte[1 << 20];
            for (int i = 0; i < 600; i++) {
                out.write(zeros);
            }
        }
        assertEquals(
                200,
                visitor.put("/api/fields/north/files/log.csv.gz", bomb.toByteArray())
                        .status());
        JsonNode logs = JSON.readTree(visitor.get("/api/fields/north/logs").bytes());
        JsonNode log = logs.path("logs").get(0);
        assertTrue(log.path("unusable").asBoolean(), logs.toString());
        assertTrue(log.path("problems").get(0).asText().contains("Hint:"), logs.toString());
        assertEquals(422, visitor.get("/api/fields/north/columns").status());
    }

    @Test
    void the_columns_are_those_of_the_log_with_an_open_question() throws Exception {
        shortSample("north");
        List<String> lines = new ArrayList<>(Files.readAllLines(season.resolve("north/log.csv")));
        lines.set(0, lines.get(0).replace("flow_03[gal/min]", "flow_03"));
        Files.write(season.resolve("north/second.csv"), lines);
        JsonNode table = JSON.readTree(visitor.get("/api/fields/north/columns").bytes());
        assertEquals("second.csv", table.path("file").asText());
        assertEquals(1, table.path("problems").size(), table.path("problems").toString());
        Files.delete(season.resolve("north/second.csv"));
        table = JSON.readTree(visitor.get("/api/fields/north/columns").bytes());
        assertEquals("log.csv", table.path("file").asText());
    }

    @Test
    void what_the_screens_change_is_the_rig_file_and_the_rest_of_it_stays() throws Exception {
        sample("north", "log.csv", "rig.yaml");
        Answer saved = visitor.json(
                "PUT",
                "/api/fields/north/rig",
                "{\"blocks\": {\"rows\": {\"count\": \"12\", \"spacing\": \"30 in\", \"outer_share\": \"0.5\"}}}");
        assertEquals(200, saved.status(), saved.text());
        String rig = Files.readString(season.resolve("north/rig.yaml"));
        assertTrue(rig.contains("outer_share: 0.5") && rig.contains("soil: Moist silty clay loam"), rig);
        assertEquals("", JSON.readTree(saved.bytes()).path("wants").asText());
        try (Stream<Path> kept = Files.walk(season.resolve(".replaced"))) {
            assertEquals(1, kept.filter(Files::isRegularFile).count());
        }
        assertTrue(Files.isRegularFile(season.resolve("bars/Twelve-row pull-type bar.yaml")));
    }

    @Test
    void a_boundary_is_drawn_around_the_passes_and_report_can_use_it() throws Exception {
        sample("north", "log.csv", "rig.yaml");
        Answer ring = visitor.get("/api/fields/north/boundary/around");
        assertEquals(200, ring.status(), ring.text());
        Answer maps = visitor.json("PUT", "/api/fields/north/boundary", ring.text());
        assertEquals(200, maps.status(), maps.text());
        List<Double> shape = new ArrayList<>();
        JSON.readTree(maps.bytes()).path("boundary").path("shapes").get(0).forEach(each -> shape.add(each.asDouble()));
        double twiceAreaM2 = 0;
        for (int i = 0; i + 3 < shape.size(); i += 2) {
            twiceAreaM2 += shape.get(i) * shape.get(i + 3) - shape.get(i + 2) * shape.get(i + 1);
        }
        // The sample's own boundary holds 11.9 ac; the drawn one holds the turns too.
        double acres = Math.abs(twiceAreaM2) / 2 / 4046.8564224;
        assertTrue(acres > 11 && acres < 17, acres + " ac");
    }

    @Test
    void a_distance_is_given_to_every_place_without_one_and_a_prescriptions_attribute_is_chosen() throws Exception {
        sample("north", "log.csv", "rig.yaml");
        String places = """
                {"type": "FeatureCollection", "features": [
                {"type": "Feature", "properties": {"name": "Well"},
                 "geometry": {"type": "Point", "coordinates": [-93.5120, 41.5340]}},
                {"type": "Feature", "properties": {"name": "Ditch", "setback": "10 ft"},
                 "geometry": {"type": "LineString", "coordinates": [[-93.5131, 41.5335], [-93.5100, 41.5335]]}}]}
                """;
        visitor.put("/api/fields/north/files/keep-out.geojson", places.getBytes(StandardCharsets.UTF_8));
        JsonNode maps = JSON.readTree(visitor.get("/api/fields/north/maps").bytes());
        assertEquals(
                1,
                maps.path("keepOut").path("withoutSetback").asInt(),
                maps.path("keepOut").toString());
        Answer wrong = visitor.json("PUT", "/api/fields/north/setback", "{\"setback\": \"35\"}");
        assertEquals(422, wrong.status(), "a bare number is asked about");
        Answer given = visitor.json("PUT", "/api/fields/north/setback", "{\"setback\": \"35 ft\"}");
        assertEquals(
                0,
                JSON.readTree(given.bytes())
                        .path("keepOut")
                        .path("withoutSetback")
                        .asInt(),
                given.text());
        JsonNode written = JSON.readTree(Files.readString(season.resolve("north/keep-out.geojson")));
        assertEquals("35 ft", written.at("/features/0/properties/setback").asText());
        assertEquals("10 ft", written.at("/features/1/properties/setback").asText());
        visitor.put("/api/fields/north/files/prescription.geojson", zones().getBytes(StandardCharsets.UTF_8));
        Answer chosen = visitor.json(
                "PUT",
                "/api/fields/north/rig",
                "{\"blocks\": {\"prescription\": {\"rate\": \"Y99\", \"unit\": \"gal/ac\"}}}");
        assertEquals(200, chosen.status());
        assertTrue(Files.readString(season.resolve("north/rig.yaml")).contains("rate: Y99"));
        assertEquals(
                200,
                visitor.json("POST", "/api/work", "{\"fields\": [\"north\"]}").status());
        assertEquals("done", ended().path("lines").get(0).path("state").asText());
        JsonNode summary = JSON.readTree(Files.readString(season.resolve("results/north/summary.json")));
        assertTrue(summary.at("/field/setbacks").size() > 0, "the setbacks are in the results");
        assertTrue(summary.at("/field/prescription").isObject(), "the prescription is in the results");
    }

    /** A prescription of two rates, west and east of the field's middle. */
    private static String zones() {
        return """
                {"type": "FeatureCollection", "features": [
                {"type": "Feature", "properties": {"Y99": 44}, "geometry": {"type": "Polygon", "coordinates":
                 [[[-93.516, 41.532], [-93.5127, 41.532], [-93.5127, 41.536], [-93.516, 41.536], [-93.516, 41.532]]]}},
                {"type": "Feature", "properties": {"Y99": 52}, "geometry": {"type": "Polygon", "coordinates":
                 [[[-93.5127, 41.532], [-93.509, 41.532], [-93.509, 41.536], [-93.5127, 41.536], [-93.5127, 41.532]]]}}]}
                """;
    }

    @Test
    void the_facts_are_those_of_the_states_rule() throws Exception {
        sample("north", "log.csv", "rig.yaml");
        JsonNode facts = JSON.readTree(visitor.get("/api/fields/north/facts").bytes());
        List<String> states = new ArrayList<>();
        facts.path("states").forEach(state -> states.add(state.asText()));
        assertTrue(states.contains("Ohio") && states.contains("Minnesota"), states.toString());
        assertEquals("School eighty", facts.path("job").path("field").asText());
    }
}
