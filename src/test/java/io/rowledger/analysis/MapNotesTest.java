package io.rowledger.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimRig;
import io.rowledger.text.Argument;
import io.rowledger.text.Message;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the reader is told of maps that had to be mended. */
class MapNotesTest {
    @Test
    void boundary_prescription_and_keep_out_that_cross_themselves_are_each_said_to_be_repaired(@TempDir Path folder)
            throws IOException {
        SimRig rig = SimRig.drawn(6);
        new Scenario(5, rig, PassPlan.rectangle(80, 3, 0, rig.widthM()))
                .withoutGround()
                .run()
                .writeTo(folder);
        JsonNode field =
                new ObjectMapper().readTree(folder.resolve("boundary.geojson").toFile());
        JsonNode corner = field.findValue("coordinates");
        while (corner.get(0).isArray()) {
            corner = corner.get(0);
        }
        double west = corner.get(0).asDouble();
        double south = corner.get(1).asDouble();
        String bow = String.format(
                Locale.ROOT,
                "[[[%1$f,%2$f],[%3$f,%4$f],[%3$f,%2$f],[%1$f,%4$f],[%1$f,%2$f]]]",
                west - 0.001,
                south - 0.001,
                west + 0.001,
                south + 0.001);
        Path boundary = Files.writeString(folder.resolve("bow.geojson"), feature("", bow));
        Path zones = Files.writeString(folder.resolve("zones.geojson"), feature("\"target\":\"30 gal/ac\"", bow));
        Path away = Files.writeString(
                folder.resolve("away.geojson"), feature("\"setback\":\"10 ft\",\"name\":\"Pond\"", bow));
        List<Message> notes = Pipeline.analyze(
                        new JobFiles(
                                List.of(folder.resolve("log.csv")),
                                folder.resolve("rig.yaml"),
                                boundary,
                                zones,
                                away,
                                Double.NaN),
                        2,
                        Progress.SILENT)
                .notes();
        for (String file : List.of("bow.geojson", "zones.geojson", "away.geojson")) {
            assertEquals(
                    1,
                    notes.stream()
                            .filter(note -> note.key().endsWith("repaired"))
                            .filter(note -> note.arguments().get(0) instanceof Argument.Text text
                                    && text.text().endsWith(file))
                            .count(),
                    file + " in " + notes);
        }
        assertTrue(
                notes.stream()
                        .anyMatch(note -> note.key().equals("notes.outline.place.repaired")
                                && note.arguments().get(1).equals(new Argument.Text("Pond"))),
                notes.toString());
    }

    private static String feature(String properties, String rings) {
        return "{\"type\":\"Feature\",\"properties\":{" + properties
                + "},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":" + rings + "}}";
    }
}
