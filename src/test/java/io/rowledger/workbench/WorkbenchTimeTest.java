package io.rowledger.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Times without a zone: the screen is told so, and what a person chooses moves the times of the log. */
class WorkbenchTimeTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    private Path season;

    @Test
    void local_times_are_read_as_such_once_somebody_says_so() throws IOException {
        Path sample = Path.of("sample-logs/plugged-row");
        Path field = Files.createDirectory(season.resolve("north"));
        String log =
                String.join("\n", Files.readAllLines(sample.resolve("log.csv")).subList(0, 400));
        // 2026-06-03T14:00:00.000Z without the letter that says UTC.
        Files.writeString(field.resolve("log.csv"), log.replaceAll("(?m)^(2026-\\S{18})Z,", "$1,"));
        Files.copy(sample.resolve("rig.yaml"), field.resolve("rig.yaml"));
        try (Workbench workbench = Workbench.start(new Workbench.Settings(season, "test", failure -> {
            throw new AssertionError(failure);
        }))) {
            Visitor visitor = Visitor.at(workbench.link());
            JsonNode state = JSON.readTree(visitor.get("/api/fields/north/rig").bytes());
            assertTrue(state.path("zoneless").asBoolean(), state.toString());
            assertEquals("America/Chicago", state.path("zone").asText());
            assertEquals(
                    Instant.parse("2026-06-03T14:00:00Z").toEpochMilli() / 1000.0,
                    state.path("startS").asDouble(),
                    0.5);
            JsonNode columns = JSON.readTree(visitor.with("X-Language", "es")
                    .get("/api/fields/north/columns")
                    .bytes());
            assertEquals(
                    "sin huso: se toma como UTC",
                    columns.at("/columns/0/remark").asText(),
                    columns.toString());
            Visitor.Answer saved = visitor.json(
                    "PUT", "/api/fields/north/rig", "{\"blocks\": {\"log\": {\"zone\": \"America/Chicago\"}}}");
            assertEquals(200, saved.status(), saved.text());
            state = JSON.readTree(visitor.get("/api/fields/north/rig").bytes());
            assertFalse(state.path("zoneless").asBoolean(), state.toString());
            // 2 PM of Central Daylight Time.
            assertEquals(
                    Instant.parse("2026-06-03T19:00:00Z").toEpochMilli() / 1000.0,
                    state.path("startS").asDouble(),
                    0.5);
        }
    }
}
