package io.rowledger.cli;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.rowledger.sim.SmallJob;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every wrong call and every file that can't be used ends with exit status 2 and one message that says what was found,
 * what was expected and how to mend it; and nothing of the user's is touched.
 */
@TestInstance(Lifecycle.PER_CLASS)
@Tag("slow")
class WrongCallsTest {
    private static final Path CASES = Path.of("src/test/resources/cases/bad-input");

    private Path folder;
    private Path log;
    private Path rig;
    private Path boundary;

    @BeforeAll
    void simulate_a_good_log(@TempDir Path temporary) {
        folder = temporary;
        SmallJob.writeTo(folder, 5, 80);
        log = folder.resolve("log.csv");
        rig = folder.resolve("rig.yaml");
        boundary = folder.resolve("boundary.geojson");
    }

    @Test
    void the_good_log_is_good() {
        Calls call = Calls.of("report", log, "--rig", rig, "--boundary", boundary, "--out", folder.resolve("good"));
        assertEquals(0, call.status(), call.err());
        assertEquals("", call.err());
        assertTrue(call.out().contains(folder.resolve("good").toString()), call.out());
        assertTrue(Files.exists(folder.resolve("good/pass-review.pdf")));
        assertTrue(Files.exists(folder.resolve("good/row-diagnosis.pdf")));
    }

    @TestFactory
    Stream<DynamicTest> every_unusable_file_ends_the_report_with_its_message() throws IOException {
        List<Path> folders;
        try (Stream<Path> list = Files.list(CASES)) {
            folders = list.filter(one -> Files.exists(one.resolve("rig.yaml")))
                    .sorted()
                    .toList();
        }
        assertTrue(folders.size() >= 40, folders.size() + " cases");
        return folders.stream()
                .map(one -> DynamicTest.dynamicTest(one.getFileName().toString(), () -> {
                    Path bad;
                    try (Stream<Path> list = Files.list(one)) {
                        bad = list.filter(path -> path.getFileName().toString().startsWith("log."))
                                .findFirst()
                                .orElseThrow();
                    }
                    Path out = folder.resolve("never-" + one.getFileName());
                    Calls call = Calls.of("report", bad, "--rig", one.resolve("rig.yaml"), "--out", out);
                    assertEquals(2, call.status(), call.err());
                    assertEquals(
                            "rowledger: "
                                    + Files.readString(one.resolve("expected.txt"))
                                            .strip(),
                            call.err().replace(one + "/", "").strip());
                    assertEquals("", call.out());
                    assertFalse(Files.exists(out), "an output folder for a log that can't be used");
                }));
    }

    @TestFactory
    Stream<DynamicTest> every_unusable_prescription_ends_the_report_with_its_message() throws IOException {
        List<Path> folders;
        try (Stream<Path> list = Files.list(Path.of("src/test/resources/cases/bad-prescription"))) {
            folders = list.sorted().toList();
        }
        assertTrue(folders.size() >= 12, folders.size() + " cases");
        return folders.stream()
                .map(one -> DynamicTest.dynamicTest(one.getFileName().toString(), () -> {
                    Path out = folder.resolve("never-" + one.getFileName());
                    Calls call = Calls.of(report("--prescription", one.resolve("prescription.geojson"), "--out", out)
                            .toArray());
                    assertEquals(2, call.status(), call.err());
                    assertEquals(
                            "rowledger: "
                                    + Files.readString(one.resolve("expected.txt"))
                                            .strip(),
                            call.err().replace(one + "/", "").strip());
                    assertFalse(Files.exists(out), "an output folder for a prescription that can't be used");
                }));
    }

    @TestFactory
    Stream<DynamicTest> every_unusable_keep_out_file_ends_the_report_with_its_message() throws IOException {
        List<Path> folders;
        try (Stream<Path> list = Files.list(CASES)) {
            folders = list.filter(one -> Files.exists(one.resolve("keep-out.geojson")))
                    .sorted()
                    .toList();
        }
        assertTrue(folders.size() >= 12, folders.size() + " cases");
        return folders.stream()
                .map(one -> DynamicTest.dynamicTest(one.getFileName().toString(), () -> {
                    assertTrue(Files.size(one.resolve("why.txt")) > 0);
                    Path out = folder.resolve("never-" + one.getFileName());
                    Calls call = Calls.of(report("--keep-out", one.resolve("keep-out.geojson"), "--out", out)
                            .toArray());
                    assertEquals(2, call.status(), call.err());
                    assertEquals(
                            "rowledger: "
                                    + Files.readString(one.resolve("expected.txt"))
                                            .strip(),
                            call.err().replace(one + "/", "").strip());
                    assertFalse(Files.exists(out), "an output folder for a keep-out file that can't be used");
                }));
    }

    @TestFactory
    Stream<DynamicTest> every_wrong_call_says_how_to_fix_it() throws IOException {
        Path file = Files.writeString(folder.resolve("a-file"), "x");
        Path notJson = Files.writeString(folder.resolve("not.geojson"), "{\"type\": ");
        Path point = Files.writeString(
                folder.resolve("point.geojson"), "{\"type\": \"Point\", \"coordinates\": [-93.5, 41.5]}");
        Path far = Files.writeString(
                folder.resolve("far.geojson"),
                "{\"type\": \"Polygon\", \"coordinates\": [[[10,50],[10.01,50],[10.01,50.01],[10,50.01],[10,50]]]}");
        Path badZone = Files.writeString(
                folder.resolve("zone.yaml"),
                Files.readString(rig).replaceFirst("job:", "job:\n  zone: Middle/Nowhere"));
        Path brokenTemplates = Files.createDirectories(folder.resolve("templates"));
        Files.writeString(brokenTemplates.resolve("pass-review.xhtml"), "<html><body>{{#passes}}</body></html>");
        Path shifted = Files.writeString(folder.resolve("shifted.geojson"), eastward(Files.readString(boundary), 0.02));
        Path deep = Files.writeString(folder.resolve("deep.yaml"), "rig: " + "[".repeat(20_000));
        Path results = Files.createDirectories(folder.resolve("results"));
        Files.writeString(results.resolve("diagnosis.json"), "{\"schema\": \"rowledger-diagnosis/2\"}");
        Path notResults = Files.createDirectories(folder.resolve("not-results"));
        Path broken = Files.createDirectories(folder.resolve("broken"));
        Files.writeString(broken.resolve("diagnosis.json"), "{\"schema\": ");
        Map<String, List<Object>> calls = new TreeMap<>();
        calls.put("compare nothing", List.of("compare"));
        calls.put("compare one folder", List.of("compare", results));
        calls.put("compare three folders", List.of("compare", results, notResults, broken));
        calls.put("compare a folder with itself", List.of("compare", results, results));
        calls.put("compare what is not there", List.of("compare", folder.resolve("nowhere"), results));
        calls.put("compare a file", List.of("compare", file, results));
        calls.put("compare a log", List.of("compare", log, results));
        calls.put("compare without results", List.of("compare", notResults, results));
        calls.put("compare broken results", List.of("compare", broken, results));
        calls.put("compare half results", List.of("compare", results, notResults));
        calls.put("compare in unknown units", List.of("compare", results, notResults, "--units", "imperial"));
        calls.put("setback without keep-out", report("--setback", "35 ft"));
        calls.put("setback without a unit", report("--keep-out", point, "--setback", "35"));
        calls.put("setback below zero", report("--keep-out", point, "--setback", "-35 ft"));
        calls.put("unknown command", List.of("reprot", log));
        calls.put("unknown option", List.of("report", log, "--rig", rig, "--color"));
        calls.put("no log", List.of("report", "--rig", rig));
        calls.put("no rig", List.of("report", log));
        calls.put("log not there", List.of("report", folder.resolve("nowhere.csv"), "--rig", rig));
        calls.put("log is a folder", List.of("report", folder, "--rig", rig));
        calls.put("rig not there", List.of("report", log, "--rig", folder.resolve("nowhere.yaml")));
        calls.put("rig is a folder", List.of("report", log, "--rig", folder));
        calls.put("rig is the log", List.of("report", log, "--rig", log));
        calls.put("log is the rig", List.of("report", rig, "--rig", rig));
        calls.put("boundary not there", report("--boundary", folder.resolve("nowhere.geojson")));
        calls.put("boundary not JSON", report("--boundary", notJson));
        calls.put("boundary a point", report("--boundary", point));
        calls.put("boundary far away", report("--boundary", far));
        calls.put("boundary of the field next door", report("--boundary", shifted));
        calls.put("boundary is a folder", report("--boundary", folder));
        calls.put("prescription not there", report("--prescription", folder.resolve("nowhere.geojson")));
        calls.put("prescription not JSON", report("--prescription", notJson));
        calls.put("prescription a point", report("--prescription", point));
        calls.put("prescription without rates", report("--prescription", boundary));
        calls.put("prescription is a folder", report("--prescription", folder));
        calls.put("keep-out not there", report("--keep-out", folder.resolve("nowhere.geojson")));
        calls.put("keep-out is a folder", report("--keep-out", folder));
        calls.put("keep-out without a file", report("--keep-out"));
        calls.put("rig nests without end", List.of("report", log, "--rig", deep));
        calls.put("output is a file", report("--out", file));
        calls.put("output below a file", report("--out", file.resolve("deeper")));
        calls.put("output where nobody may write", report("--out", Path.of("/proc/rowledger")));
        calls.put("unknown units", report("--units", "imperial"));
        calls.put("unknown paper", report("--paper", "legal"));
        calls.put("unknown reader", report("--for", "banker"));
        calls.put("nobody to print for", report("--for", ","));
        calls.put("no threads", report("--threads", "0"));
        calls.put("threads in words", report("--threads", "two"));
        calls.put("templates not there", report("--templates", folder.resolve("no-templates")));
        calls.put("templates broken", report("--templates", brokenTemplates));
        calls.put("unknown zone", List.of("report", log, "--rig", badZone));
        calls.put("inspect nothing", List.of("inspect"));
        calls.put("inspect what is not there", List.of("inspect", folder.resolve("nowhere.csv")));
        calls.put("season of nothing", List.of("season"));
        calls.put("season of what is not there", List.of("season", folder.resolve("nowhere")));
        calls.put("season of a file", List.of("season", log));
        calls.put("season without results", List.of("season", notResults));
        calls.put("season in unknown units", List.of("season", notResults, "--units", "imperial"));
        calls.put("record-fields in an unknown format", List.of("record-fields", "--format", "json"));
        calls.put("record-fields of a log", List.of("record-fields", log));
        calls.put("demo into a file", List.of("demo", "--out", file));
        return calls.entrySet().stream()
                .map(call -> DynamicTest.dynamicTest(call.getKey(), () -> refuses(call.getValue())));
    }

    /** The same boundary so many degrees further east. */
    private static String eastward(String geoJson, double deg) {
        return Pattern.compile("\\[(-?\\d+\\.\\d+),")
                .matcher(geoJson)
                .replaceAll(m -> String.format(Locale.ROOT, "[%.9f,", Double.parseDouble(m.group(1)) + deg));
    }

    @Test
    void a_result_never_replaces_what_was_handed_in() throws IOException {
        Path own = Files.createDirectories(folder.resolve("own/layers")).getParent();
        Path ownLog = Files.copy(log, own.resolve("rows.csv"));
        Path ownRig = Files.copy(rig, own.resolve("summary.json"));
        Path ownBoundary = Files.copy(boundary, own.resolve("layers/strips.geojson"));
        Path ownKeepOut = Files.writeString(
                own.resolve("layers/setbacks.geojson"),
                "{\"type\": \"Feature\", \"properties\": {\"setback[m]\": 9}, \"geometry\": "
                        + "{\"type\": \"Point\", \"coordinates\": [-93.5, 41.5]}}");
        refuses(List.of("report", ownLog, "--rig", rig, "--out", own));
        refuses(List.of("report", log, "--rig", ownRig, "--out", own));
        refuses(report("--boundary", ownBoundary, "--out", own.resolve("../own")));
        refuses(report("--keep-out", ownKeepOut, "--out", own));
        Path ownMap = Files.writeString(
                own.resolve("layers/zones.geojson"),
                Files.readString(boundary).replace("\"properties\": {", "\"properties\": {\"target[gal/ac]\": 42, "));
        refuses(report("--prescription", ownMap, "--out", own));
        assertTrue(Files.readString(ownMap).contains("target[gal/ac]"));
        assertEquals(-1, Files.mismatch(log, ownLog));
        assertEquals(-1, Files.mismatch(rig, ownRig));
        assertEquals(-1, Files.mismatch(boundary, ownBoundary));
        try (Stream<Path> files = Files.walk(own)) {
            assertEquals(7, files.count(), "two folders and the five files");
        }
    }

    private List<Object> report(Object... more) {
        List<Object> words = new ArrayList<>(List.of("report", log, "--rig", rig));
        words.addAll(List.of(more));
        return words;
    }

    private static void refuses(List<Object> words) {
        Calls call = Calls.of(words.toArray());
        assertAll(
                () -> assertEquals(2, call.status(), call.err()),
                () -> assertTrue(call.out().isEmpty() || words.get(0).equals("inspect"), call.out()),
                () -> assertTrue(call.err().startsWith("rowledger: "), call.err()),
                () -> assertTrue(call.err().contains("Hint: "), call.err()),
                () -> assertFalse(call.err().contains("\tat "), call.err()));
    }
}
