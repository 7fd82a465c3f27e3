package io.rowledger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimResult;
import io.rowledger.sim.SimRig;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A rig file whose every name is a formula: no cell of any CSV file made from it starts as a spreadsheet's formula does (OWASP,
 * "CSV Injection"), unless it is a number.
 */
class FormulaCellsTest {
    private static final String FORMULA = "=HYPERLINK(1)";

    @TempDir
    Path folder;

    @Test
    void no_cell_of_rows_passes_season_or_batch_is_a_formula() throws IOException {
        SimRig rig = SimRig.drawn(3);
        SimResult job = new Scenario(5, rig, PassPlan.rectangle(60, 2, 0, rig.widthM()))
                .job(Map.of("farm", FORMULA, "field", FORMULA, "crop", FORMULA))
                .withoutGround()
                .run();
        Path field = Files.createDirectories(folder.resolve("season").resolve(FORMULA));
        job.writeTo(field);
        String rigText = job.rigText().replaceFirst("(?m)^    name: .*UAN.*", "    name: \"" + FORMULA + "\"");
        assertTrue(rigText.contains("    name: \"" + FORMULA), rigText);
        Files.writeString(field.resolve("rig.yaml"), rigText);
        Calls batch = Calls.of("batch", folder.resolve("season"), "--out", folder.resolve("out"));
        assertEquals(0, batch.status(), batch.err());
        TreeSet<String> seen = new TreeSet<>();
        int harmless = 0;
        for (Path csv : csvFiles(folder.resolve("out"))) {
            seen.add(csv.getFileName().toString());
            int before = harmless;
            for (String cell : cells(csv)) {
                boolean number = cell.matches("[+-]?[0-9.]+(E[+-]?[0-9]+)?");
                assertTrue(number || !cell.matches("(?s)[=+\\-@\\t\\r\\n].*"), csv + ": " + cell);
                harmless += cell.startsWith("'=HYPERLINK") ? 1 : 0;
            }
            // The others hold no text of the user's but product keys, and those are refused below.
            boolean named = csv.getParent().equals(folder.resolve("out"));
            assertTrue(harmless > before || !named, csv + " holds no such name: it tells nothing");
        }
        assertEquals(new TreeSet<>(List.of("batch-summary.csv", "passes.csv", "rows.csv", "season.csv")), seen);
    }

    @Test
    void a_product_key_which_would_head_columns_cannot_be_a_formula() throws IOException {
        SimRig rig = SimRig.drawn(3);
        SimResult job = new Scenario(5, rig, PassPlan.rectangle(60, 2, 0, rig.widthM()))
                .withoutGround()
                .run()
                .writeTo(folder);
        for (String key : List.of("=1+1", "-1", "+1", "@SUM(A1)", "\\t=1", "a,=1", "a;=1", "\uff1d1")) {
            Files.writeString(
                    folder.resolve("rig.yaml"),
                    job.rigText()
                            .replaceFirst("(?m)^  uan:", "  " + Matcher.quoteReplacement("\"" + key + "\"") + ":"));
            Calls report = Calls.of("report", folder.resolve("log.csv"), "--rig", folder.resolve("rig.yaml"));
            assertEquals(2, report.status(), key);
            assertTrue(report.err().contains("found the product key"), report.err());
        }
    }

    private static List<Path> csvFiles(Path out) throws IOException {
        try (Stream<Path> walk = Files.walk(out)) {
            return walk.filter(path -> path.toString().endsWith(".csv")).toList();
        }
    }

    private static List<String> cells(Path csv) throws IOException {
        List<String> cells = new ArrayList<>();
        try (CSVParser parser = CSVFormat.RFC4180.parse(Files.newBufferedReader(csv))) {
            for (CSVRecord line : parser) {
                cells.addAll(line.toList());
            }
        }
        return cells;
    }
}
