package io.rowledger.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.rowledger.finding.UnusableInputException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a person is told in English and in Spanish when something can't be done. */
class WorkbenchRefusalsTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Path SAMPLE = Path.of("sample-logs/plugged-row");

    @TempDir
    private Path season;

    private Workbench workbench;
    private Visitor visitor;
    private Visitor spanish;

    @BeforeEach
    void open() throws IOException {
        workbench = Workbench.start(new Workbench.Settings(season, "test", failure -> {
            throw new AssertionError(failure);
        }));
        visitor = Visitor.at(workbench.link());
        spanish = visitor.with("X-Language", "es");
    }

    @AfterEach
    void close() {
        workbench.close();
    }

    private static String problem(Visitor.Answer answer) throws IOException {
        assertTrue(answer.status() >= 400 && answer.status() < 500, answer.text());
        return JSON.readTree(answer.bytes()).path("problem").asText();
    }

    private void shortSample(String field) throws IOException {
        Path place = Files.createDirectories(season.resolve(field));
        Files.copy(SAMPLE.resolve("rig.yaml"), place.resolve("rig.yaml"));
        Files.write(
                place.resolve("log.csv"),
                Files.readAllLines(SAMPLE.resolve("log.csv")).subList(0, 700));
    }

    @Test
    void the_workbench_refuses_in_the_language_of_the_page() throws IOException {
        byte[] body = "a".getBytes(StandardCharsets.UTF_8);
        assertEquals("There is no field south.", problem(visitor.get("/api/fields/south")));
        assertEquals("No hay ningún campo south.", problem(spanish.get("/api/fields/south")));
        String name = problem(spanish.put("/api/fields/con/files/a.csv", body));
        assertTrue(name.contains("no puede ser un nombre"), name);
        assertTrue(problem(spanish.get("/nowhere")).contains("Aquí no hay nada"));
        assertTrue(problem(spanish.with("Origin", "http://evil.example").get("/api/season"))
                .contains("Otra página"));
        assertEquals(200, spanish.put("/api/fields/north/files/notes.csv", body).status());
        assertEquals(
                "Ya hay otro archivo llamado notes.csv. ¿Reemplazarlo?",
                problem(spanish.put("/api/fields/north/files/notes.csv", "b".getBytes(StandardCharsets.UTF_8))));
        try (Socket socket = spanish.open()) {
            Visitor.write(socket, spanish.head("PUT", "/api/fields/north/files/log.csv", 2L << 30));
            String told = problem(Visitor.read(socket));
            assertTrue(told.startsWith("Este archivo ocupa más de 1024 MB."), told);
        }
        String same = "{\"before\": \"north\", \"after\": \"north\"}";
        assertEquals("Elija dos trabajos distintos.", problem(spanish.json("POST", "/api/compare", same)));
    }

    @Test
    void a_page_that_has_no_language_yet_is_refused_in_the_one_of_the_browser() throws IOException {
        Visitor stranger = Visitor.stranger(workbench.link()).with("Accept", "text/html");
        assertTrue(stranger.get("/").text().startsWith("The page was not opened from its link."));
        Visitor.Answer answer =
                stranger.with("Accept-Language", "es-MX,es;q=0.9").get("/");
        assertTrue(answer.text().startsWith("La página no se abrió desde su enlace."), answer.text());
    }

    @Test
    void a_refusal_of_the_engine_has_words_of_the_page_before_it() throws IOException {
        Path place = Files.createDirectories(season.resolve("north"));
        Files.writeString(place.resolve("log.csv"), "");
        String told = JSON.readTree(spanish.get("/api/fields/north/logs").bytes())
                .at("/logs/0/problems/0")
                .asText();
        assertEquals(
                "log.csv: el archivo está vacío, dañado o cortado. Cópielo otra vez del monitor.\n"
                        + "El detalle, en inglés: found an empty file; expected a log in CSV that starts with a line of column "
                        + "names. Hint: export the log again.",
                told);
        String english = JSON.readTree(visitor.get("/api/fields/north/logs").bytes())
                .at("/logs/0/problems/0")
                .asText();
        assertTrue(english.startsWith("log.csv: the file is empty, damaged or cut off."), english);
    }

    @Test
    void a_question_carries_its_kind_and_rows_ask_once() throws IOException {
        shortSample("north");
        Path log = season.resolve("north/log.csv");
        Files.writeString(log, Files.readString(log).replace("[gal/min]", ""));
        JsonNode problems =
                JSON.readTree(visitor.get("/api/fields/north/columns").bytes()).path("problems");
        List<String> kinds = new ArrayList<>();
        problems.forEach(each -> kinds.add(each.path("kind").asText()));
        assertEquals(List.of("FLOW_UNIT"), kinds, problems.toString());
        assertTrue(problems.get(0).path("text").asText().contains("Choose the unit"), problems.toString());
    }

    @Test
    void what_a_rig_file_lacks_is_named_as_the_screens_name_it() throws IOException {
        shortSample("north");
        Path rig = season.resolve("north/rig.yaml");
        Files.writeString(rig, Files.readString(rig).replaceFirst("(?m)^ *hitch_to_drop:.*\n", ""));
        JsonNode field = JSON.readTree(spanish.get("/api/fields/north").bytes());
        assertEquals(
                "Todavía falta: la medida del perno de enganche al punto de caída.",
                field.path("wants").asText());
        assertEquals("rig.hitch_to_drop", field.path("wantsKey").asText());
        JsonNode state = JSON.readTree(spanish.json(
                        "POST",
                        "/api/fields/north/rig/consider",
                        "{\"blocks\": {\"rows\": {\"count\": \"12\", \"spacing\": \"30 fathom\"}}}")
                .bytes());
        assertTrue(state.at("/problems/rows.spacing").asText().startsWith("\"30 fathom\" no se entiende"), "" + state);
    }

    @Test
    void a_run_that_fails_is_told_in_the_language_of_each_page() throws Exception {
        shortSample("north");
        Path log = season.resolve("north/log.csv");
        Files.writeString(log, Files.readString(log).replace("2026-", "2097-"));
        visitor.json("POST", "/api/work", "{\"fields\": [\"north\"]}");
        JsonNode work = JSON.readTree(visitor.get("/api/work").bytes());
        for (int i = 0; i < 400 && work.path("busy").asBoolean(); i++) {
            Thread.sleep(25);
            work = JSON.readTree(visitor.get("/api/work").bytes());
        }
        String english = work.at("/lines/0/message").asText();
        assertTrue(english.startsWith("log.csv:") && english.contains("Hint:"), work.toString());
        String told = JSON.readTree(spanish.get("/api/work").bytes())
                .at("/lines/0/message")
                .asText();
        assertTrue(told.contains("esto no se puede usar como está.\nEl detalle, en inglés: found"), told);
    }

    @Test
    void a_bar_that_cannot_be_read_hides_neither_the_season_nor_the_other_bars() throws IOException {
        Path bars = Files.createDirectories(season.resolve("bars"));
        Files.copy(SAMPLE.resolve("rig.yaml"), bars.resolve("Good.yaml"));
        Files.writeString(bars.resolve("Bad.yaml"), "rig: [");
        Visitor.Answer answer = spanish.get("/api/season");
        assertEquals(200, answer.status(), answer.text());
        JsonNode all = JSON.readTree(answer.bytes());
        assertEquals("Good", all.at("/bars/0").asText());
        assertTrue(all.at("/closed/0").asText().startsWith("Bad.yaml no se puede leer"), answer.text());
        assertFalse(all.at("/closed/1").isTextual(), answer.text());
    }

    @Test
    void the_examples_that_stand_in_the_fields_can_be_entered() throws IOException {
        shortSample("north");
        Path scripts = Path.of("src/main/resources/io/rowledger/web/workbench");
        String script = Files.readString(scripts.resolve("amounts.js"));
        for (List<String> each : List.of(
                List.of("180 lb/ac", "200 lb/ac", "30 lb/ac", "1300 gal", "14380 lb", "64 F", "1.85 USD/gal"),
                List.of("200 kg/ha", "225 kg/ha", "35 kg/ha", "4900 L", "6500 kg", "18 C", "0.49 USD/L"))) {
            each.forEach(text -> assertTrue(script.contains("'" + text + "'"), text));
            String block = String.format(
                    "{\"blocks\": {\"job\": {\"plan\": \"%s\", \"cap\": \"%s\", \"credits\": [{\"what\": \"beans\","
                            + " \"nitrogen\": \"%s\"}], \"order\": {\"uan\": \"%s\"}, \"tickets\": [{\"number\": \"1\","
                            + " \"weight\": \"%s\", \"temperature\": \"%s\"}], \"price\": {\"uan\": \"%s\"}}}}",
                    each.toArray());
            JsonNode state = JSON.readTree(visitor.json("POST", "/api/fields/north/rig/consider", block)
                    .bytes());
            assertEquals("", state.path("wants").asText(), block);
        }
    }

    @Test
    void somebody_without_a_terminal_reads_in_both_languages_why_it_can_not_start() {
        UnusableInputException refused = assertThrows(
                UnusableInputException.class,
                () -> Workbench.start(new Workbench.Settings(season, "test", failure -> {
                            throw new AssertionError(failure);
                        }))
                        .close());
        List<String> pages = new ArrayList<>();
        Workbench.showRefusal(refused, link -> {
            try {
                Visitor.Answer page =
                        Visitor.stranger(link).get(URI.create(link).getPath());
                assertEquals(200, page.status());
                return pages.add(page.text());
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
        assertEquals(1, pages.size());
        String page = pages.get(0);
        assertTrue(page.contains("the season folder is open in another workbench"), page);
        assertTrue(page.contains("la carpeta de la temporada está abierta en otro banco de trabajo"), page);
    }
}
