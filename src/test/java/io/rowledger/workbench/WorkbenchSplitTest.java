package io.rowledger.workbench;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two fields whose work came in one log or in two, made two fields by one call. */
class WorkbenchSplitTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Path SAMPLE = Path.of("sample-logs/plugged-row");
    /** Column of the latitude in the sample. */
    private static final int LAT = 1;

    @TempDir
    private Path around;

    private Path season;
    private Workbench workbench;
    private Visitor visitor;
    private String header;
    private List<String> here;
    private List<String> there;

    @BeforeEach
    void open() throws IOException {
        season = Files.createDirectory(around.resolve("season"));
        workbench = Workbench.start(new Workbench.Settings(season, "test", failure -> {
            throw new AssertionError(failure);
        }));
        visitor = Visitor.at(workbench.link());
        List<String> lines = Files.readAllLines(SAMPLE.resolve("log.csv"));
        header = lines.get(0);
        assertEquals("lat", header.split(",", -1)[LAT]);
        // The second field is the ground of a later pass, 0.02 degrees or some 2.2 km north of the first.
        here = lines.subList(800, 1400);
        there = lines.subList(1400, 2000).stream()
                .map(WorkbenchSplitTest::moved)
                .toList();
    }

    private static String moved(String record) {
        String[] fields = record.split(",", -1);
        fields[LAT] = String.format(Locale.ROOT, "%.9f", Double.parseDouble(fields[LAT]) + 0.02);
        return String.join(",", fields);
    }

    @AfterEach
    void close() {
        workbench.close();
    }

    private void field(String log, List<String> records) throws IOException {
        Path place = Files.createDirectories(season.resolve("Home"));
        Files.copy(
                SAMPLE.resolve("rig.yaml"),
                place.resolve("rig.yaml"),
                java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        List<String> lines = new ArrayList<>(List.of("# from the console", header));
        lines.addAll(records);
        Files.write(place.resolve(log), lines);
    }

    private JsonNode logs(String field) throws IOException {
        return JSON.readTree(visitor.get("/api/fields/" + field + "/logs").bytes());
    }

    private List<String> split() throws IOException {
        Visitor.Answer answer = visitor.json("POST", "/api/fields/Home/split", "{}");
        assertEquals(200, answer.status(), answer.text());
        List<String> fields = new ArrayList<>();
        JSON.readTree(answer.bytes()).path("fields").forEach(each -> fields.add(each.asText()));
        return fields;
    }

    @Test
    void a_log_of_two_fields_is_cut_between_them_and_the_whole_one_is_kept() throws IOException {
        List<String> all = new ArrayList<>(here);
        all.addAll(there);
        field("log.csv", all);
        byte[] whole = Files.readAllBytes(season.resolve("Home/log.csv"));
        assertEquals(2, logs("Home").path("places").asInt());
        assertEquals(List.of("Home", "Home 2"), split());
        assertFalse(Files.exists(season.resolve("Home/log.csv")));
        List<String> first = Files.readAllLines(season.resolve("Home/log part 1.csv"));
        List<String> second = Files.readAllLines(season.resolve("Home 2/log part 2.csv"));
        assertEquals(List.of("# from the console", header), first.subList(0, 2));
        assertEquals(List.of("# from the console", header), second.subList(0, 2));
        assertEquals(here, first.subList(2, first.size()));
        assertEquals(there, second.subList(2, second.size()));
        for (String field : List.of("Home", "Home%202")) {
            assertEquals(1, logs(field).path("places").asInt(), field);
            assertEquals(0, logs(field).path("apartM").asInt(), field);
        }
        String rig = Files.readString(season.resolve("Home 2/rig.yaml"));
        assertTrue(rig.contains("hitch_to_wheels: 174 in") && !rig.contains("School eighty"), rig);
        try (Stream<Path> kept = Files.walk(season.resolve(".replaced"))) {
            Path log = kept.filter(path -> path.endsWith("Home/log.csv"))
                    .findFirst()
                    .orElseThrow();
            assertEquals(new String(whole, StandardCharsets.UTF_8), Files.readString(log));
        }
    }

    @Test
    void of_two_logs_each_goes_to_its_field_as_it_is() throws IOException {
        field("a.csv", here);
        field("b.csv", there);
        byte[] b = Files.readAllBytes(season.resolve("Home/b.csv"));
        assertEquals(List.of("Home", "Home 2"), split());
        assertTrue(Files.isRegularFile(season.resolve("Home/a.csv")));
        assertFalse(Files.exists(season.resolve("Home/b.csv")));
        assertEquals(new String(b, StandardCharsets.UTF_8), Files.readString(season.resolve("Home 2/b.csv")));
        assertEquals(409, visitor.json("POST", "/api/fields/Home/split", "{}").status());
    }

    @Test
    void a_packed_log_is_cut_into_plain_ones_and_the_packed_one_is_kept() throws IOException {
        List<String> all = new ArrayList<>(here);
        all.addAll(there);
        field("log.csv", all);
        Path log = season.resolve("Home/log.csv");
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (OutputStream out = new GZIPOutputStream(packed)) {
            out.write(Files.readAllBytes(log));
        }
        Files.write(season.resolve("Home/log.csv.gz"), packed.toByteArray());
        Files.delete(log);
        assertEquals(List.of("Home", "Home 2"), split());
        List<String> second = Files.readAllLines(season.resolve("Home 2/log part 2.csv"));
        assertEquals(there, second.subList(2, second.size()));
        assertTrue(Files.isRegularFile(season.resolve("Home/log part 1.csv")));
        assertFalse(Files.exists(season.resolve("Home/log.csv.gz")));
        try (Stream<Path> kept = Files.walk(season.resolve(".replaced"))) {
            Path whole = kept.filter(path -> path.endsWith("Home/log.csv.gz"))
                    .findFirst()
                    .orElseThrow();
            assertArrayEquals(packed.toByteArray(), Files.readAllBytes(whole));
        }
    }

    @Test
    void polygons_are_not_cut_and_nothing_changes() throws IOException {
        Path place = Files.createDirectories(season.resolve("Home"));
        StringBuilder features = new StringBuilder();
        for (String lat : List.of("41.50", "41.55")) {
            features.append(features.isEmpty() ? "" : ",").append("""
                    {"type": "Feature", "properties": {"rate[gal/ac]": 42}, "geometry": {"type": "Polygon", "coordinates":
                     [[[-93.01, LAT], [-93.01, LAT1], [-93.00, LAT1], [-93.00, LAT], [-93.01, LAT]]]}}
                    """.replace("LAT", lat));
        }
        String map = "{\"type\": \"FeatureCollection\", \"features\": [" + features + "]}";
        Files.writeString(place.resolve("areas.geojson"), map);
        assertEquals(2, logs("Home").path("places").asInt());
        Visitor.Answer answer = visitor.json("POST", "/api/fields/Home/split", "{}");
        assertEquals(422, answer.status(), answer.text());
        assertTrue(answer.text().contains("export the polygons of each field"), answer.text());
        assertEquals(map, Files.readString(place.resolve("areas.geojson")));
        assertFalse(Files.exists(season.resolve("Home 2")));
    }

    @Test
    void task_data_beside_the_rig_file_is_taken_out_whole_and_nothing_else() throws IOException {
        Path place = Files.createDirectories(season.resolve("Home"));
        Files.copy(SAMPLE.resolve("rig.yaml"), place.resolve("rig.yaml"));
        for (String file : List.of("TASKDATA.XML", "TLG00001.XML", "TLG00001.BIN")) {
            Files.writeString(place.resolve(file), "not whole");
        }
        assertEquals("Home", logs("Home").at("/logs/0/file").asText());
        assertEquals(
                200,
                visitor.json("POST", "/api/fields/Home/files/Home/away", "{}").status());
        try (Stream<Path> left = Files.list(place)) {
            assertEquals(List.of(place.resolve("rig.yaml")), left.toList());
        }
        try (Stream<Path> kept = Files.walk(season.resolve(".replaced"))) {
            assertEquals(3, kept.filter(Files::isRegularFile).count());
        }
    }
}
