package io.rowledger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.rowledger.sim.PassPlan;
import io.rowledger.sim.Scenario;
import io.rowledger.sim.SimResult;
import io.rowledger.sim.SimRig;
import io.rowledger.text.VisibleText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Names that mean something to a browser, a template, a terminal, a spreadsheet or a parser, in every text of a rig file and
 * in the names of files, through {@code batch}, {@code season} and {@code compare} into every output.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Tag("slow")
class HostileTextTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Pattern SCRIPT = Pattern.compile("(?i)<script");
    /** Bidirectional controls and control characters other than the layout's own. */
    private static final Pattern HIDDEN = Pattern.compile(
            "[\\x00-\\x08\\x0b\\x0c\\x0e-\\x1f\\x7f-\\x9f\\u202a-\\u202e\\u2066-\\u2069\\u200e\\u200f]");

    private Path folder;

    private SimResult job;
    private int plainScripts;

    /** What the names of a farm could be. */
    static List<String> texts() {
        String markup =
                "</script><script>alert(1)</script>\"'><img src=x onerror=alert(2)>]]>--><!--{{field}}{{{head}}}&lt;%s%n";
        String unseen = "Nord\u202efdp.exe\u2066\u200b\u001b[31m\u0007\u0085\u00ad\ufeff40";
        String formula = "=HYPERLINK(\"http://x\",1);DROP TABLE field;\\..\\../..\"\"''``$(id)\ufffc";
        if (!Boolean.getBoolean("hostile.all")) {
            return List.of(formula + markup + unseen);
        }
        return List.of(
                markup,
                unseen,
                formula,
                "\ud83d\udc69\u200d\ud83c\udf3e حقل שדה 田 Ñ",
                "x".repeat(5000),
                "word ".repeat(2000).strip(),
                "a\nb\r\nc\td",
                "null",
                "NaN",
                "-1",
                "</title><plaintext>",
                "javascript:alert(1)",
                "\u0000\u0001\u0002",
                "a\u2028b\u2029c",
                "{{#t}}{{/t}}{{=<% %>=}}",
                "\\u202e\\x1b[2J");
    }

    @BeforeAll
    void simulate(@TempDir Path temporary) throws IOException {
        folder = temporary;
        SimRig rig = SimRig.drawn(4);
        job = new Scenario(5, rig, PassPlan.rectangle(60, 2, 0, rig.widthM()))
                .job(facts("North"))
                .withoutGround()
                .run();
        plainScripts = scripts(run("plain", "Plain"));
    }

    private static Map<String, String> facts(String text) {
        Map<String, String> facts = new LinkedHashMap<>();
        for (String key :
                List.of("farm", "field", "crop", "method", "operator", "soil", "weather", "landlord", "anything")) {
            facts.put(key, text);
        }
        return facts;
    }

    private static String quoted(String text) {
        StringBuilder out = new StringBuilder("\"");
        text.chars().forEach(c -> {
            if (c == '"' || c == '\\') {
                out.append('\\').append((char) c);
            } else if (c < ' ' || (c > '~' && !Character.isSurrogate((char) c))) {
                out.append(String.format("\\u%04x", c));
            } else {
                out.append((char) c);
            }
        });
        return out.append('"').toString();
    }

    /** A batch of one field whose rig file has this text everywhere; returns the folder of its results. */
    private Path run(String name, String text) throws IOException {
        Path season = Files.createDirectories(folder.resolve(name));
        Path field = Files.createDirectories(season.resolve("field"));
        job.writeTo(field);
        String rig = job.rigText()
                .replaceAll(
                        "(?m)^(\\s*)(farm|field|crop|method|operator|soil|weather|landlord|anything|name): .*$",
                        "$1$2: " + Matcher.quoteReplacement(quoted(text)));
        Files.writeString(
                field.resolve("rig.yaml"),
                rig.replaceFirst(
                        "(?m)^job:.*$",
                        "job:\n  credits:\n    - {what: " + Matcher.quoteReplacement(quoted(text))
                                + ", nitrogen: 30 lb/ac}"));
        Path out = folder.resolve(name + "-out");
        console(Calls.of("batch", season, "--out", out), out);
        Path copy = out.resolve("field");
        console(Calls.of("season", copy, "--out", out.resolve("ledger")), out);
        Path again = folder.resolve(name + "-again");
        console(Calls.of("report", field.resolve("log.csv"), "--rig", field.resolve("rig.yaml"), "--out", again), out);
        console(Calls.of("compare", copy, again, "--out", out.resolve("comparison")), out);
        return out;
    }

    private static void console(Calls call, Path out) {
        assertEquals(0, call.status(), call.err());
        assertFalse(HIDDEN.matcher(call.out() + call.err()).find(), () -> "on the console of " + out + call.out());
    }

    @ParameterizedTest
    @MethodSource("texts")
    void every_output_keeps_its_form_and_shows_what_is_hidden(String text) throws Exception {
        Path out = run("hostile" + Integer.toHexString(text.hashCode()), text);
        assertEquals(plainScripts, scripts(out), "scripts in review.html");
        List<String> kinds = new ArrayList<>();
        for (Path file : files(out)) {
            String name = file.toString();
            String kind = name.substring(name.lastIndexOf('.') + 1);
            kinds.add(kind);
            switch (kind) {
                case "json", "geojson" -> JSON.readTree(Files.readAllBytes(file));
                case "gpx" ->
                    DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(file.toFile());
                case "pdf" -> pdf(file, text);
                case "csv" -> csv(file);
                case "gpkg" -> geoPackage(file);
                case "html" ->
                    assertFalse(HIDDEN.matcher(Files.readString(file)).find(), name);
                default -> assertTrue(Files.size(file) > 0, name);
            }
        }
        assertTrue(
                kinds.containsAll(List.of("json", "geojson", "gpx", "pdf", "csv", "gpkg", "html")), kinds.toString());
        JsonNode facts = JSON.readTree(Files.readAllBytes(out.resolve("field/summary.json")))
                .at("/job/facts");
        assertEquals(text, facts.path("farm").asText(), "the files for machines keep the text");
    }

    private static int scripts(Path out) throws IOException {
        return (int) SCRIPT.matcher(Files.readString(out.resolve("field/review.html")))
                .results()
                .count();
    }

    private static List<Path> files(Path out) throws IOException {
        try (Stream<Path> walk = Files.walk(out)) {
            return walk.filter(Files::isRegularFile)
                    .filter(path -> !path.toString().contains(".rowledger"))
                    .toList();
        }
    }

    private static void pdf(Path file, String text) throws IOException {
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            String words = new PDFTextStripper().getText(document);
            assertFalse(HIDDEN.matcher(words).find(), file.toString());
            assertTrue(document.getNumberOfPages() < 60, file + ": " + document.getNumberOfPages() + " pages");
            boolean shows = VisibleText.line(text).contains("<U+202E>") && words.contains("fdp.exe");
            assertTrue(
                    !shows || words.replaceAll("\\s", "").contains("202E"), file + " shows the name without its turn");
        }
    }

    private static void csv(Path file) throws IOException {
        try (CSVParser parser = CSVFormat.RFC4180.parse(Files.newBufferedReader(file))) {
            int columns = -1;
            for (CSVRecord line : parser) {
                assertTrue(columns < 0 || line.size() == columns, file + ": a line of " + line.size() + " cells");
                columns = line.size();
            }
        }
    }

    private static void geoPackage(Path file) throws Exception {
        try (Connection db = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement s = db.createStatement();
                ResultSet r = s.executeQuery("PRAGMA integrity_check")) {
            assertTrue(r.next());
            assertEquals("ok", r.getString(1));
        }
    }
}
